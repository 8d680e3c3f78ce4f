// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/job_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document_text.h"
#include "job_fixture.h"
#include "report/html.h"
#include "report/quantity_text.h"
#include "workshop/rules.h"

namespace sw::report {
namespace {

using ::testing::HasSubstr;
using testing::JobFixture;
using ::testing::Not;
using testing::quantity;
using testing::sectionText;
using testing::textOf;

SheetOptions workshopCopy() {
  return {SheetCopy::Workshop, Paper::A4, QStringLiteral("Yard Four")};
}
SheetOptions customerCopy() {
  return {SheetCopy::Customer, Paper::A4, QStringLiteral("Yard Four")};
}

/// One job worked through, shared by the tests that only look at it.
struct WholeJob {
  JobFixture fixture;
  workshop::ShopState shop{{}};
  workshop::JobState job;

  WholeJob() {
    model::Complaint complaint;
    complaint.words = "Shakes at seventy, worse after a pothole";
    complaint.onsetRising = quantity("72 km/h", QuantityKind::Speed);
    complaint.speedSource = model::SpeedSource::Gps;
    complaint.braking = model::BrakingAnswer::No;
    fixture.add(complaint);
    fixture.add(model::CauseChecked{"tyre_bulge", true, "looked at all four, turned by hand"});
    fixture.add(model::CauseChecked{"swivel_preload_low", false, "pull below the sheet's figure"});
    fixture.startPlan();
    fixture.workThrough();
    model::PartUsed grease;
    grease.name = "Swivel grease";
    grease.number = "C-7";
    grease.quantity = quantity("0.4 l", QuantityKind::Volume);
    grease.unitPriceMinor = 1250;
    grease.currency = "EUR";
    grease.consumable = true;
    fixture.add(grease);
    fixture.add(model::Labour{95, "Both sides", 7200, "EUR"});
    fixture.add(model::RecheckDue{"Wheel nuts and leak look", Date{2031, 4, 1}, std::nullopt});
    fixture.add(model::Note{"Owner will bring the spare"});
    shop = fixture.shopState();
    const auto open = fixture.state();
    if (workshop::againstSignOff(open).empty()) {
      fixture.add(model::JobClosed{model::JobOutcome::SignedOff, ""});
    }
    job = fixture.state();
  }
};

const WholeJob& whole() {
  static const WholeJob kWhole;
  return kWhole;
}

TEST(JobSheet, AWholeJobCanBeSignedOff) {
  ASSERT_TRUE(whole().job.closed.has_value())
      << (workshop::againstSignOff(whole().job).empty()
              ? std::string{}
              : workshop::againstSignOff(whole().job).front().step);
  const auto sheet = jobSheet(whole().job, whole().shop, workshopCopy());
  EXPECT_THAT(sectionText(sheet, "How the job ended"), HasSubstr("Signed off – AS, "));
}

TEST(JobSheet, EveryReadingStandsOnTheWorkshopCopy) {
  const auto sheet = jobSheet(whole().job, whole().shop, workshopCopy());
  const std::string readings = sectionText(sheet, "Measurements");
  std::size_t count = 0;
  for (const auto& series : whole().job.series) {
    for (const auto& reading : series.readings) {
      EXPECT_THAT(readings, HasSubstr(typed(reading.fact.value).toStdString()));
      ++count;
    }
  }
  EXPECT_GT(count, 50U);
  EXPECT_THAT(readings, HasSubstr("settling, not used"));
  EXPECT_THAT(readings, HasSubstr("seal off, rods off, damper off, no sealant"));
  EXPECT_THAT(readings, HasSubstr("with Spring scale 2"));
}

TEST(JobSheet, EveryKindOfFactHasItsSection) {
  const auto sheet = jobSheet(whole().job, whole().shop, workshopCopy());
  for (const char* title :
       {"Vehicle", "Complaint", "Causes looked at", "Road tests", "Measurements", "Shim packs",
        "Torque checks", "Work, in order", "Seen and felt", "Hold points",
        "What came off, and what was put on for the work", "Parts, consumables and labour",
        "Rechecks due", "Notes", "Instruments used", "Cautions of the steps done",
        "How the job ended"}) {
    EXPECT_NE(sectionText(sheet, title), "") << title;
  }
  EXPECT_THAT(sectionText(sheet, "Vehicle"), HasSubstr("Drag link on the right side; "));
  EXPECT_THAT(sectionText(sheet, "Vehicle"), HasSubstr("235/85 R16 fitted, built with 7.50 R16"));
  EXPECT_THAT(sectionText(sheet, "Torque checks"),
              HasSubstr("set value reached with a wrench in range and in calibration"));
  EXPECT_THAT(sectionText(sheet, "Road tests"), HasSubstr("before the work"));
  EXPECT_THAT(sectionText(sheet, "Road tests"), HasSubstr("after the work"));
}

TEST(JobSheet, HoldsShowWhatWasSeenByWhomAndWhen) {
  const auto sheet = jobSheet(whole().job, whole().shop, workshopCopy());
  const std::string holds = sectionText(sheet, "Hold points");
  EXPECT_THAT(holds, HasSubstr("A chock in front of and behind both wheels"));
  EXPECT_THAT(holds, HasSubstr("AS, 2031-"));
  EXPECT_THAT(holds, Not(HasSubstr("not answered")));
}

// 95 min at 72.00 an hour = 114.00; 0.4 l at 12.50 a litre = 5.00.
TEST(JobSheet, CostsAddUp) {
  const auto sheet = jobSheet(whole().job, whole().shop, workshopCopy());
  const std::string money = sectionText(sheet, "Parts, consumables and labour");
  EXPECT_THAT(money, HasSubstr("114.00\u00A0EUR"));
  EXPECT_THAT(money, HasSubstr("5.00\u00A0EUR"));
  std::int64_t parts = 500;
  for (const auto* entry : whole().job.valid) {
    const auto* part = model::as<model::PartUsed>(*entry);
    if (part != nullptr && part->unitPriceMinor == 145) {
      parts += 145 * static_cast<std::int64_t>(part->quantity.si);
    }
  }
  EXPECT_THAT(money, HasSubstr(moneyText(parts + 11400, "EUR").toStdString()));
}

TEST(JobSheet, TheFooterNamesTheRuleAndClearsNothing) {
  for (const auto& options : {workshopCopy(), customerCopy()}) {
    const auto sheet = jobSheet(whole().job, whole().shop, options);
    ASSERT_EQ(sheet.footer.size(), 2U);
    EXPECT_THAT(sheet.footer[0].toStdString(), HasSubstr("95 % (ISO 14253-1:2017, JCGM 106"));
    EXPECT_THAT(sheet.footer[1].toStdString(),
                HasSubstr("does not clear the vehicle for the road"));
    const std::string text = textOf(sheet);
    for (const char* claim : {"is safe", "roadworthy", "cleared for"}) {
      EXPECT_THAT(text, Not(HasSubstr(claim)));
    }
  }
}

TEST(JobSheet, TheCustomersCopyIsShorterAndHoldsNoBudget) {
  const auto full = textOf(jobSheet(whole().job, whole().shop, workshopCopy()));
  const auto shorter = textOf(jobSheet(whole().job, whole().shop, customerCopy()));
  EXPECT_LT(shorter.size() * 3, full.size());
  for (const char* budget : {"u\u00A0=", "ν", "k\u00A0=", "probability of conformance 0",
                             "probability of conformance >", "graduation", "SHA-256"}) {
    EXPECT_THAT(shorter, Not(HasSubstr(budget))) << budget;
  }
  EXPECT_THAT(full, HasSubstr("ν"));
  for (const char* kept : {"Signed off", "Measured before and after", "In all", "Rechecks due",
                           "Shakes at seventy", "Found: "}) {
    EXPECT_THAT(shorter, HasSubstr(kept)) << kept;
  }
}

TEST(JobSheet, ItLooksAtNoClockAndAtNothingThatCameLater) {
  JobFixture fixture;
  fixture.start("as-found-pull");
  fixture.workThrough();
  fixture.add(model::JobClosed{model::JobOutcome::ClosedWithoutSignOff, "parts not in stock"});
  const auto shop = fixture.shopState();
  const auto before = toHtml(jobSheet(fixture.state(), shop, workshopCopy()));
  // Later entries push the fixture's clock on; the shop as of the closing stays what it was.
  fixture.correct(fixture.person, model::Person{{1}, "Ada Winter", "AW", true},
                  model::CorrectionReason::Other, "married");
  fixture.shopFact(model::Person{{2}, "Someone Else", "SE", true});
  const auto after = toHtml(jobSheet(fixture.state(), shop, workshopCopy()));
  EXPECT_EQ(before, after);
  EXPECT_TRUE(before.contains(QStringLiteral("AS = Ada Sommer")));
  EXPECT_TRUE(before.contains(QStringLiteral("parts not in stock")));
}

TEST(JobSheet, AnOpenJobListsWhatStandsAgainstSignOff) {
  JobFixture fixture;
  fixture.start("as-found-pull");
  fixture.add(model::WorkDeclined{"New swivel seals", "next year"});
  const auto sheet = jobSheet(fixture.state(), fixture.shopState(), workshopCopy());
  const auto end = sectionText(sheet, "How the job ended");
  EXPECT_THAT(end, HasSubstr("Still open: not signed off."));
  EXPECT_THAT(end, HasSubstr("work was declined: New swivel seals"));
  EXPECT_THAT(end, HasSubstr("step not done"));
  EXPECT_THAT(sectionText(sheet, "Declined work"), HasSubstr("next year"));
}

TEST(JobSheet, AnEmptyJobStillHasASheet) {
  JobFixture fixture;
  for (const auto& options : {workshopCopy(), customerCopy()}) {
    const auto text = textOf(jobSheet(fixture.state(), fixture.shopState(), options));
    EXPECT_THAT(text, HasSubstr("Job sheet 7"));
    EXPECT_THAT(text, HasSubstr("still open"));
  }
}

}  // namespace
}  // namespace sw::report
