// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/lists.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "job_fixture.h"

namespace sw::report {
namespace {

using testing::JobFixture;
using testing::quantity;

store::JobSummary summary(std::int64_t job, const char* opened,
                          std::optional<model::JobOutcome> outcome) {
  store::JobSummary one;
  one.job = {job};
  one.vehicle = {1};
  one.openedAt = *parseTimestamp(opened);
  one.outcome = outcome;
  if (outcome) one.closedAt = one.openedAt;
  return one;
}

TEST(Lists, VehiclesCountTheirJobs) {
  const JobFixture fixture;
  const std::vector jobs{summary(1, "2030-02-03T09:00Z", model::JobOutcome::SignedOff),
                         summary(2, "2031-01-05T09:00Z", std::nullopt)};
  const auto rows = vehicleRows(fixture.shopState(), jobs);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].jobs, 2U);
  EXPECT_EQ(rows[0].openJobs, 1U);
  EXPECT_EQ(
      toText(rows),
      "Registration  Make and model                          Owner      Jobs  Open  Last job\n"
      "TRX 318       Light four-wheel drive, long wheelbase  M. Keller  2     1     "
      "2031-01-05\n");
}

TEST(Lists, AnOpenJobSaysWhereItGoesOn) {
  JobFixture fixture;
  fixture.start("as-found-pull");
  const auto row = openJobRow(fixture.state());
  EXPECT_EQ(row.state, "open");
  EXPECT_EQ(row.registration, "TRX 318");
  EXPECT_EQ(row.step, "As-found pull, feel and end float: Check the scale");
}

TEST(Lists, AnOpenJobSaysWhatIsHandTight) {
  JobFixture fixture;
  fixture.start("as-found-pull");
  const testing::FixturePlace place{std::nullopt, {}, model::Side::Left};
  fixture.add(model::LedgerMove{"caliper", "Caliper bolts", model::LedgerKind::Removed,
                                model::LedgerState::HandTight, true, 1, 2, ""},
              place);
  fixture.add(model::LedgerMove{"track_rod", "Track rod", model::LedgerKind::Removed,
                                model::LedgerState::Off, true, std::nullopt, std::nullopt, ""},
              place);
  const std::vector rows{openJobRow(fixture.state())};
  EXPECT_THAT(rows[0].handTight, ::testing::ElementsAre("Caliper bolts (left)"));
  EXPECT_THAT(toText(rows), ::testing::HasSubstr("Caliper bolts (left)"));
  EXPECT_EQ(toJson(rows)[0]["hand_tight"][0], "Caliper bolts (left)");
}

TEST(Lists, AClosedJobIsItsSummary) {
  const auto row = closedJobRow(
      summary(4, "2030-02-03T09:00Z", model::JobOutcome::ClosedWithoutSignOff), nullptr);
  const std::vector rows{row};
  EXPECT_THAT(toText(rows), ::testing::HasSubstr("closed without sign off"));
  EXPECT_EQ(toJson(rows)[0]["state"], "closed_without_sign_off");
  EXPECT_FALSE(toJson(rows)[0].contains("step"));
}

TEST(Lists, RechecksAreDueByDateOrOdometer) {
  JobFixture fixture;
  fixture.add(
      model::RecheckDue{"Dressed pull", std::nullopt, quantity("149000 km", QuantityKind::Length)});
  fixture.add(model::RecheckDue{"Wheel nuts", Date{2031, 3, 1}, std::nullopt});
  const auto gone = fixture.add(model::RecheckDue{"Typed twice", Date{2031, 2, 1}, std::nullopt});
  fixture.add(model::RecheckDue{"Leak look", Date{2031, 2, 20}, std::nullopt});
  fixture.correct(gone, model::Withdrawal{""}, model::CorrectionReason::Withdrawn, "");
  const auto done = fixture.add(model::RecheckDue{"Hub seal", Date{2031, 2, 2}, std::nullopt});
  fixture.add(model::RecheckDone{done, "dry"});
  auto rows = dueRows(fixture.jobEntries(), {7}, "TRX 318", Date{2031, 2, 25});
  sortByDate(rows);
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0].what, "Leak look");
  EXPECT_EQ(rows[0].state, "overdue");
  EXPECT_EQ(rows[1].what, "Wheel nuts");
  EXPECT_EQ(rows[1].state, "coming");
  EXPECT_EQ(rows[2].state, "by odometer");
  EXPECT_EQ(toJson(rows)[2]["at_odometer"], "149000 km");
}

TEST(Lists, TypedTextCannotBreakTheLines) {
  DueRow row;
  row.what = "one\ntwo\x1b[31m";
  const std::vector rows{row};
  const std::string text = toText(rows);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 2);
  EXPECT_EQ(text.find('\x1b'), std::string::npos);
}

}  // namespace
}  // namespace sw::report
