// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document_text.h"
#include "job_fixture.h"
#include "report/job_sheet.h"

// How verdicts are printed: as stored, and what is said where the bare verdict would mislead.

namespace sw::report {
namespace {

using ::testing::HasSubstr;
using testing::JobFixture;
using ::testing::Not;
using testing::quantity;
using testing::sectionText;

const SheetOptions kWorkshop{SheetCopy::Workshop, Paper::A4, {}};

procedures::MeasureSpec bareUpperPull() {
  procedures::MeasureSpec spec;
  spec.quantity = QuantityKind::Force;
  spec.limit = "swivel.starting_force";
  spec.planned = 3;
  spec.state = model::PullState{};
  spec.safety = true;
  return spec;
}

model::SpecItem limitOfPull(const std::optional<std::string>& min, const std::string& max) {
  model::SpecItem item;
  item.vehicle = {1};
  item.key = "swivel.starting_force";
  item.type = model::SpecKind::Limit;
  if (min) item.min = quantity(*min, QuantityKind::Force);
  item.max = quantity(max, QuantityKind::Force);
  item.source = "Shop notes, invented";
  return item;
}

testing::FixturePlace pullPlace(model::RunId run) {
  return {run, "pull_ahead", model::Side::Left};
}

std::string measurements(const JobFixture& fixture) {
  return sectionText(jobSheet(fixture.state(), fixture.shopState(), kWorkshop), "Measurements");
}

TEST(SheetVerdict, OutsideNamesTheSideAndTheProbability) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  fixture.takeSeries(pullPlace(run), "swivel.starting_force", {"9 N", "9.5 N", "9 N"},
                     QuantityKind::Force, bareUpperPull());
  const auto text = measurements(fixture);
  EXPECT_THAT(text, HasSubstr("OUTSIDE"));
  EXPECT_THAT(text, HasSubstr("below the limit"));
  EXPECT_THAT(text, HasSubstr("probability of conformance < 0.001 (asked 0.95)"));
  EXPECT_THAT(text, HasSubstr("limit 16\u00A0N to 24\u00A0N (1.63\u00A0kgf to 2.45\u00A0kgf)"));
}

TEST(SheetVerdict, ProvisionalSaysHowManyOfHowMany) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  fixture.takeSeries(pullPlace(run), "swivel.starting_force", {"20 N", "20.5 N"},
                     QuantityKind::Force, bareUpperPull());
  EXPECT_THAT(measurements(fixture), HasSubstr("provisional\n2 of 3 readings, so far "));
}

TEST(SheetVerdict, AnExtendedSeriesShowsItsHigherBar) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  fixture.takeSeries(pullPlace(run), "swivel.starting_force",
                     {"20 N", "20.5 N", "20 N", "20.5 N", "20 N"}, QuantityKind::Force,
                     bareUpperPull());
  const auto text = measurements(fixture);
  EXPECT_THAT(text, HasSubstr("extended from 3 to 5 readings"));
  // The bar after an extension: simulation repeated in the tests of the decision rule.
  EXPECT_THAT(text, HasSubstr("(asked 0.975)"));
}

TEST(SheetVerdict, AnUpperFigureAloneDoesNotPassALooseHub) {
  JobFixture fixture;
  fixture.shopFact(limitOfPull(std::nullopt, "24 N"));
  const auto run = fixture.start("as-found-pull");
  fixture.takeSeries(pullPlace(run), "swivel.starting_force", {"6 N", "6.5 N", "6 N"},
                     QuantityKind::Force, bareUpperPull());
  EXPECT_THAT(measurements(fixture), HasSubstr("\nwithin\n"));
  fixture.add(model::Observation{"stays_put", "swings", ""}, {run, "stays", model::Side::Left});
  const auto text = measurements(fixture);
  EXPECT_THAT(text, HasSubstr("within the figure, but the hub is loose: not within"));
  EXPECT_THAT(text, Not(HasSubstr("\nwithin\n")));
}

TEST(SheetVerdict, ALaterRoundDoesNotMakeAnEarlierPullLoose) {
  JobFixture fixture;
  const auto first = fixture.start("as-found-pull");
  fixture.add(model::Observation{"stays_put", "stays", ""}, {first, "stays", model::Side::Left});
  fixture.takeSeries(pullPlace(first), "swivel.starting_force", {"20 N", "20.5 N", "20 N"},
                     QuantityKind::Force, bareUpperPull());
  const auto second = fixture.start("as-found-pull", {model::Side::Left}, 2, "chosen");
  fixture.takeSeries(pullPlace(second), "swivel.starting_force", {"20 N", "20.5 N", "20 N"},
                     QuantityKind::Force, bareUpperPull());
  fixture.add(model::Observation{"stays_put", "swings", ""}, {second, "stays", model::Side::Left});
  const auto text = measurements(fixture);
  EXPECT_THAT(text, HasSubstr("\nwithin\n"));
  EXPECT_THAT(text, HasSubstr("but the hub is loose"));
}

TEST(SheetVerdict, ClosedByOverrideReadsNotProvedWithTheReason) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  fixture.takeSeries(pullPlace(run), "swivel.starting_force", {"20 N", "20.5 N", "20 N"},
                     QuantityKind::Force, bareUpperPull());
  fixture.add(model::Override{"not_proved", "pull", "scale broke, owner waits"}, pullPlace(run));
  const auto text = measurements(fixture);
  EXPECT_THAT(text, HasSubstr("not proved"));
  EXPECT_THAT(text, HasSubstr("closed so: scale broke, owner waits (AS)"));
  EXPECT_THAT(text, HasSubstr("by the figures: within"));
  EXPECT_THAT(sectionText(jobSheet(fixture.state(), fixture.shopState(), kWorkshop), "Overrides"),
              HasSubstr("scale broke, owner waits"));
}

TEST(SheetVerdict, ReadingsInAnotherUnitShowBoth) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  fixture.takeSeries(pullPlace(run), "swivel.starting_force", {"2.1 kgf", "2,0 kgf", "4.6 lbf"},
                     QuantityKind::Force, bareUpperPull());
  const auto text = measurements(fixture);
  EXPECT_THAT(text, HasSubstr("2.1\u00A0kgf (20.6\u00A0N)"));  // 1 kgf = 9.80665 N
  EXPECT_THAT(text, HasSubstr("2.0\u00A0kgf (19.6\u00A0N)"));
  EXPECT_THAT(text, HasSubstr("4.6\u00A0lbf (20.5\u00A0N)"));  // 1 lbf = 4.44822 N
}

TEST(SheetVerdict, NoLimitOnFileIsSaid) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  auto spec = bareUpperPull();
  spec.limit.clear();
  fixture.takeSeries({run, "pull_left_15", model::Side::Right}, "", {"20 N", "21 N", "20 N"},
                     QuantityKind::Force, spec);
  EXPECT_THAT(measurements(fixture), HasSubstr("no limit on file"));
}

}  // namespace
}  // namespace sw::report
