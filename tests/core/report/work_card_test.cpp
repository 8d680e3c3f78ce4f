// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/work_card.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document_text.h"
#include "job_fixture.h"

namespace sw::report {
namespace {

using ::testing::HasSubstr;
using testing::JobFixture;
using ::testing::Not;
using testing::textOf;

Document cardOf(const JobFixture& fixture) {
  return workCard(fixture.state(), fixture.shopState(), {Paper::A4, {}, fixture.planProcedures()});
}

TEST(WorkCard, AJobWithoutRunsIsCardedFromThePlan) {
  const JobFixture fixture;
  const auto text = textOf(cardOf(fixture));
  for (const auto* procedure : fixture.planProcedures()) {
    EXPECT_THAT(text, HasSubstr(procedure->title));
  }
  EXPECT_THAT(text, HasSubstr("Work card, job 7"));
  EXPECT_THAT(text, HasSubstr("TRX 318"));
}

TEST(WorkCard, FiguresCountsAndPatternsStandBesideTheirSteps) {
  const auto text = textOf(cardOf(JobFixture{}));
  EXPECT_THAT(text, HasSubstr("16\u00A0N to 24\u00A0N (1.63\u00A0kgf to 2.45\u00A0kgf)"));
  EXPECT_THAT(text, HasSubstr("118\u00A0N\u00A0m (87\u00A0lbf\u00A0ft)"));
  EXPECT_THAT(text, HasSubstr("M10x1.5, cross, first 50 %"));
  EXPECT_THAT(text, HasSubstr("L ____ of 5   R ____ of 5"));
  // One settling pull and the three that are planned.
  EXPECT_THAT(text, HasSubstr("L (_____) _____ _____ _____\n"));
  EXPECT_THAT(text, HasSubstr("R (_____) _____ _____ _____\n"));
}

TEST(WorkCard, EveryHoldStatementHasAPlaceForInitials) {
  const JobFixture fixture;
  std::size_t statements = 0;
  for (const auto* procedure : fixture.planProcedures()) {
    for (const auto& step : procedure->steps) {
      if (step.hold) statements += step.hold->statements.size();
    }
  }
  const auto text = textOf(cardOf(fixture));
  std::size_t initials = 0;
  for (auto at = text.find("init. ___"); at != std::string::npos;
       at = text.find("init. ___", at + 1)) {
    ++initials;
  }
  EXPECT_EQ(initials, statements);
}

TEST(WorkCard, TheSupportInUseLeavesTheOthersOut) {
  JobFixture fixture;
  EXPECT_THAT(textOf(cardOf(fixture)), HasSubstr("How do the pads sit on the lifting points?"));
  fixture.add(model::SupportChosen{model::SupportKind::Stands});
  const auto text = textOf(cardOf(fixture));
  EXPECT_THAT(text, Not(HasSubstr("How do the pads sit on the lifting points?")));
  EXPECT_THAT(text, HasSubstr("What is at the rear wheels?"));
}

TEST(WorkCard, WhatIsDoneIsTickedAndFinishedProceduresAreOneLine) {
  JobFixture fixture;
  fixture.start("wheels-off");
  fixture.workThrough();
  const auto run = fixture.start("as-found-pull");
  fixture.add(model::StepMark{model::StepAction::Done, ""}, {run, "scale", std::nullopt});
  const auto text = textOf(cardOf(fixture));
  EXPECT_THAT(text, HasSubstr("Done already: "));
  EXPECT_THAT(text, HasSubstr("☑\n\n\nCheck the scale"));
  EXPECT_THAT(text, HasSubstr("\n☐\n☐\nPull, straight ahead"));
  EXPECT_THAT(text, Not(HasSubstr("Wheel nuts, first")));
}

}  // namespace
}  // namespace sw::report
