// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document_text.h"
#include "job_fixture.h"
#include "report/job_sheet.h"

// Corrections are printed as chains: what was, struck through, what is, why, and by whom.

namespace sw::report {
namespace {

using ::testing::HasSubstr;
using testing::JobFixture;
using ::testing::Not;
using testing::quantity;
using testing::sectionText;

const SheetOptions kWorkshop{SheetCopy::Workshop, Paper::A4, {}};

struct Taken {
  model::EntryId series;
  std::vector<model::EntryId> readings;
};

Taken takePull(JobFixture& fixture, const std::vector<std::string>& values) {
  const auto run = fixture.start("as-found-pull");
  procedures::MeasureSpec spec;
  spec.limit = "swivel.starting_force";
  spec.state = model::PullState{};
  Taken taken;
  taken.series = fixture.takeSeries({run, "pull_ahead", model::Side::Left}, spec.limit, values,
                                    QuantityKind::Force, spec);
  for (const auto& entry : fixture.jobEntries()) {
    if (model::as<model::Reading>(entry) != nullptr) taken.readings.push_back(entry.id);
  }
  return taken;
}

Document sheetOf(const JobFixture& fixture) {
  return jobSheet(fixture.state(), fixture.shopState(), kWorkshop);
}

TEST(SheetChain, ACorrectedReadingIsStruckThroughBesideTheNewOne) {
  JobFixture fixture;
  const auto taken = takePull(fixture, {"20 N", "205 N", "20 N"});
  const auto once = fixture.correct(
      taken.readings[1],
      model::Reading{taken.series, quantity("25 N", QuantityKind::Force), model::ReadingUse::Used},
      model::CorrectionReason::TypingSlip, "decimal point");
  fixture.correct(once,
                  model::Reading{taken.series, quantity("20.5 N", QuantityKind::Force),
                                 model::ReadingUse::Used},
                  model::CorrectionReason::TypingSlip, "still wrong");
  const auto text = sectionText(sheetOf(fixture), "Measurements");
  const auto first = text.find("[[205\u00A0N]] typing slip, decimal point; AS, ");
  const auto second = text.find("[[25\u00A0N]] typing slip, still wrong; AS, ");
  const auto now = text.find("\n20.5\u00A0N");
  ASSERT_NE(first, std::string::npos);
  EXPECT_LT(first, second);
  EXPECT_LT(second, now);
  const auto corrections =
      sectionText(sheetOf(fixture), "Corrections, in the order they were made");
  EXPECT_THAT(corrections, HasSubstr("[[205\u00A0N]]\n25\u00A0N\ntyping slip: decimal point"));
  EXPECT_THAT(corrections, HasSubstr("[[25\u00A0N]]\n20.5\u00A0N\ntyping slip: still wrong"));
}

TEST(SheetChain, AWithdrawnReadingStaysReadable) {
  JobFixture fixture;
  const auto taken = takePull(fixture, {"20 N", "31.5 N", "20 N", "20 N"});
  fixture.correct(taken.readings[1], model::Withdrawal{"hook slipped"},
                  model::CorrectionReason::BadPull, "hook slipped");
  const auto text = sectionText(sheetOf(fixture), "Measurements");
  EXPECT_THAT(text, HasSubstr("[[31.5\u00A0N]] bad pull, hook slipped; AS, "));
  EXPECT_THAT(sectionText(sheetOf(fixture), "Corrections, in the order they were made"),
              HasSubstr("withdrawn"));
}

TEST(SheetChain, AVerdictThatWasOvertakenIsShownToo) {
  JobFixture fixture;
  const auto taken = takePull(fixture, {"35 N", "35.5 N", "35 N"});
  for (const auto& reading : taken.readings) {
    fixture.correct(reading,
                    model::Reading{taken.series, quantity("20 N", QuantityKind::Force),
                                   model::ReadingUse::Used},
                    model::CorrectionReason::WrongUnit, "read the other scale");
  }
  fixture.judge(taken.series);
  const auto text = sectionText(sheetOf(fixture), "Measurements");
  EXPECT_THAT(text, HasSubstr("within"));
  EXPECT_THAT(text, HasSubstr("earlier: [[OUTSIDE]]"));
}

TEST(SheetChain, JudgingAgainAloneIsNoCorrection) {
  JobFixture fixture;
  const auto taken = takePull(fixture, {"20 N", "20.5 N", "20 N"});
  fixture.judge(taken.series);
  EXPECT_EQ(sectionText(sheetOf(fixture), "Corrections, in the order they were made"), "");
}

TEST(SheetChain, OtherFactsAreCorrectedFieldByField) {
  JobFixture fixture;
  model::ShimPack pack;
  pack.shims = "0.50 + 0.25";
  pack.count = 2;
  pack.total = quantity("0.75 mm", QuantityKind::Length);
  const auto run = fixture.start("cap-off-and-pack");
  const auto found = fixture.add(pack, {run, "pack", model::Side::Left});
  pack.shims = "0.50 + 0.20";
  pack.total = quantity("0.7 mm", QuantityKind::Length);
  fixture.correct(found, pack, model::CorrectionReason::TypingSlip, "");
  const auto text = sectionText(sheetOf(fixture), "Corrections, in the order they were made");
  EXPECT_THAT(text, HasSubstr("[[shims: 0.50 + 0.25; total: 0.75\u00A0mm]]"));
  EXPECT_THAT(text, HasSubstr("shims: 0.50 + 0.20; total: 0.7\u00A0mm"));
  EXPECT_THAT(text, Not(HasSubstr("count")));
  EXPECT_THAT(sectionText(sheetOf(fixture), "Shim packs"), HasSubstr("0.50 + 0.20 (2 shims)"));
}

}  // namespace
}  // namespace sw::report
