// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>

#include "diagnosis/learning.h"
#include "diagnosis/questions.h"
#include "diagnosis/second_looks.h"

// Where numbers run out: nothing, nought, one, and what cannot be. Expected values are worked by
// hand.

namespace sw::diagnosis {
namespace {

CauseTable tableOf(const std::vector<double>& weights, const std::vector<double>& yes = {}) {
  CauseTable table;
  if (!yes.empty()) table.features.push_back({"f", "", {{"yes", ""}, {"no", ""}}});
  for (std::size_t c = 0; c < weights.size(); ++c) {
    Cause cause{"c" + std::to_string(c + 1), "", weights[c], {}};
    if (!yes.empty()) cause.answers.push_back({yes[c], 1 - yes[c]});
    table.causes.push_back(cause);
  }
  table.other = weights.size() - 1;
  return table;
}

PlanProblem problemOf(const std::vector<double>& causes, std::vector<PlannedCheck> checks) {
  PlanProblem problem;
  problem.causes = causes;
  problem.checks = std::move(checks);
  problem.fallback = 100;
  return problem;
}

std::vector<std::size_t> orderOf(const CheckPlan& plan) {
  std::vector<std::size_t> order;
  for (const PlanStep& step : plan.steps) order.push_back(step.check);
  return order;
}

TEST(RankingEdges, WeightsAreSharesOfTheirSum) {
  const auto hundred = tableOf({30, 70}, {.9, .4}), two = tableOf({.6, 1.4}, {.9, .4});
  for (const std::size_t answer : {0U, 1U}) {
    EXPECT_NEAR(probabilities(hundred, std::vector{answered(hundred, 0, answer)})[0],
                probabilities(two, std::vector{answered(two, 0, answer)})[0], 1e-12);
  }
}

TEST(RankingEdges, OneCauseIsCertainWhateverIsAnswered) {
  const auto table = tableOf({5}, {.2});
  const auto ranking = rank(table, std::vector{answered(table, 0, 0), repaired(table, 0)});
  EXPECT_NEAR(ranking.causes.front().probability, 1, 1e-12);
  EXPECT_NEAR(ranking.evidenceChance, .2 * kRepairFails, 1e-12);
}

TEST(RankingEdges, ACauseOfNoWeightIsNeverMadeLikely) {
  const auto table = tableOf({0, 1, 1}, {1, .01, .01});
  EXPECT_EQ(probabilities(table, std::vector{answered(table, 0, 0)})[0], 0);
}

TEST(RankingEdges, AnswersThatCannotBeLeaveSharesThatAddUp) {
  // Neither cause can be answered so, twice; and a check that always finds the only cause did not.
  const auto table = tableOf({.5, .5}, {1, 1});
  auto ranking = rank(table, std::vector{answered(table, 0, 1), answered(table, 0, 1)});
  EXPECT_TRUE(ranking.surprising);
  EXPECT_NEAR(ranking.causes[0].probability, .5, 1e-12);
  EXPECT_NEAR(ranking.causes[1].probability, .5, 1e-12);
  const auto one = tableOf({1});
  ranking = rank(one, std::vector{nothingFound(one, "c", {{{0, 1}}, {0}, 5, 0, 0})});
  EXPECT_NEAR(ranking.causes[0].probability, 1, 1e-12);
}

TEST(RankingEdges, SurpriseBeginsBelowOneInTenThousand) {
  const auto at = [](double chance) {
    const auto table = tableOf({1, 1}, {chance, chance});
    return rank(table, std::vector{answered(table, 0, 0)}).surprising;
  };
  EXPECT_FALSE(at(1.01e-4));
  EXPECT_TRUE(at(.99e-4));
}

TEST(RankingEdges, ATraceThatSpeaksForNothingIsNoEvidence) {
  const auto table = tableOf({.3, .7}, {.9, .4});
  EXPECT_NEAR(probabilities(table, std::vector{supported(table, 0, std::vector{1.0, 1.0})})[0], .3,
              1e-12);
}

TEST(CheckPlanEdges, WithoutChecksOrWithFreeGivingUpThePlanIsEmpty) {
  const auto none = bestPlan(problemOf({1, 1}, {}));
  ASSERT_TRUE(none);
  EXPECT_TRUE(none->steps.empty());
  EXPECT_NEAR(none->minutes, 100, 1e-12);
  auto free = problemOf({1, 1}, {{{{0, 1}}, {0}, 5}});
  free.fallback = 0;
  EXPECT_TRUE(bestPlan(free)->steps.empty());
  EXPECT_EQ(bestPlan(free)->minutes, 0);
}

TEST(CheckPlanEdges, WhatCostsNothingAndFindsNothingIsNotTaken) {
  const auto plan = bestPlan(problemOf(
      {1, 0, 1}, {{{{1, 1}}, {0}, 0}, {{}, {0}, 0}, {{{0, 0}}, {0}, 0}, {{{0, 1}}, {0}, 4}}));
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (std::vector<std::size_t>{3}));
  EXPECT_NEAR(plan->minutes, 4 + .5 * 100, 1e-12);
}

TEST(CheckPlanEdges, WhatCostsNothingBehindADearSetUpWaits) {
  auto problem = problemOf({1, 1}, {{{{0, 1}}, {1}, 0}, {{{1, 1}}, {0}, 10}});
  problem.moves = movesBetween(std::vector<SetupState>{{std::nullopt, 0, 0}, {0, 30, 0}});
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (std::vector<std::size_t>{1, 0}));
  EXPECT_NEAR(plan->minutes, 10 + .5 * 30, 1e-12);
}

TEST(CheckPlanEdges, ChecksThatWaitForEachOtherAreNotPlanned) {
  auto problem = problemOf({1, 1, 1}, {{{{0, 1}}, {0}, 1}, {{{1, 1}}, {0}, 1}, {{{2, 1}}, {0}, 1}});
  problem.checks[0].after = {1};
  problem.checks[1].after = {0};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (std::vector<std::size_t>{2}));
}

TEST(CheckPlanEdges, WhatIsForcedIsMadeThoughItFindsNothing) {
  auto problem = problemOf({1, 1}, {{{}, {0}, 7}, {{{0, 1}}, {0}, 5}});
  problem.first = {0};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (std::vector<std::size_t>{0, 1}));
  EXPECT_NEAR(plan->minutes, 7 + 5 + .5 * 100, 1e-12);
  ASSERT_EQ(plan->beginnings.size(), 1U);
  EXPECT_NEAR(plan->beginnings[0].minutes, plan->minutes, 1e-12);
}

TEST(CheckPlanEdges, AFaultThatWasSurelyFoundLeavesNothingToPlan) {
  auto problem = problemOf({1}, {{{{0, 1}}, {0}, 3}, {{{0, .5}}, {0}, 1}});
  problem.first = {0};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (std::vector<std::size_t>{0}));
  EXPECT_NEAR(plan->minutes, 3, 1e-12);
  EXPECT_EQ(plan->notFound, 0);
}

TEST(CheckPlanEdges, WhatIsNoNumberIsRefused) {
  const double none = std::nan("");
  EXPECT_EQ(bestPlan(problemOf({1, none}, {})).error().key, "plan.no_weights");
  EXPECT_EQ(bestPlan(problemOf({1, -1}, {})).error().key, "plan.no_weights");
  EXPECT_EQ(bestPlan(problemOf({1}, {{{{0, none}}, {0}, 5}})).error().key, "plan.bad_check");
  EXPECT_EQ(bestPlan(problemOf({1}, {{{{0, 1}}, {0}, none}})).error().key, "plan.bad_check");
  EXPECT_EQ(bestPlan(problemOf({1}, {{{{0, 1}}, {}, 5}})).error().key, "plan.bad_check");
  EXPECT_EQ(bestPlan(problemOf({1}, {{{{1, 1}}, {0}, 5}})).error().key, "plan.bad_check");
}

TEST(QuestionEdges, AnAnswerThatIsSureBeforehandIsWorthNothing) {
  const auto table = tableOf({1, 1}, {1, 1});
  const auto problem = problemOf({}, {{{{0, 1}}, {0}, 5}});
  const auto values = questionValues(table, {}, problem, std::vector<std::size_t>{0});
  ASSERT_TRUE(values);
  EXPECT_NEAR(values->front().minutes, 0, 1e-12);
  EXPECT_EQ(values->front().chances, (std::vector<double>{1, 0}));
}

TEST(LearningEdges, WhereNothingWasAnsweredJobsAreForecastByTheWeights) {
  const auto table = tableOf({.25, .75}, {.9, .1});
  const std::vector<ClosedJob> jobs{{{0}, {std::nullopt}}};
  const auto scores = report(table, jobs);
  EXPECT_NEAR(scores.starting.brier, 2 * .75 * .75, 1e-12);
  EXPECT_NEAR(scores.starting.log, -std::log(.25), 1e-12);
  // A single job is forecast by the starting table: no other job is there to learn from.
  EXPECT_NEAR(scores.learned.log, scores.starting.log, 1e-12);
  EXPECT_FALSE(scores.useLearned());
}

TEST(SecondLookEdges, NothingToLookAtIsNoLook) {
  EXPECT_EQ(nextLook({}), std::nullopt);
  EXPECT_EQ(nextLook(std::vector<Look>{{1, 1, 5, 1}}),
            std::nullopt);  // looked, and surely not there
}

}  // namespace
}  // namespace sw::diagnosis
