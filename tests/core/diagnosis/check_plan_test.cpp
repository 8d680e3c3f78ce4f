// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/check_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <string>
#include <tuple>

#include "diagnosis/ranking.h"
#include "invented_table.h"

// Expected minutes are from enumeration of all orders outside of this program, or worked by hand
// where the row says so.

namespace sw::diagnosis {
namespace {

using testing::inventedProblem;
using testing::inventedTable;
using testing::randomProblem;

struct SimpleCheck {
  double p, minutes, d = 1, f = 0, g = 0;
};

PlanProblem simple(const std::vector<SimpleCheck>& checks, double fallback) {
  PlanProblem problem;
  problem.fallback = fallback;
  double sum = 0;
  for (const SimpleCheck& one : checks) {
    problem.checks.push_back({{{problem.causes.size(), one.d}}, {0}, one.minutes, one.f, one.g});
    problem.causes.push_back(one.p);
    sum += one.p;
  }
  problem.causes.push_back(std::max(0.0, 1 - sum));
  return problem;
}

std::vector<std::size_t> orderOf(const CheckPlan& plan) {
  std::vector<std::size_t> order;
  for (const PlanStep& step : plan.steps) order.push_back(step.check + 1);
  return order;
}

/// The least over all orders and all stopping points, by walking them all.
class Enumeration {
 public:
  explicit Enumeration(const PlanProblem& problem)
      : m_problem(problem), m_done(problem.checks.size(), 0) {}
  double least() {
    walk(0, 0, 1);
    return m_least;
  }

 private:
  void walk(double minutes, std::size_t state, double left) {
    m_least = std::min(m_least, minutes + left * m_problem.fallback);
    for (std::size_t i = 0; i < m_done.size(); ++i) {
      if (m_done[i] != 0) continue;
      const auto& before = m_problem.checks[i].after;
      if (!std::all_of(before.begin(), before.end(),
                       [this](std::size_t one) { return m_done[one] != 0; })) {
        continue;
      }
      const PlannedCheck& check = m_problem.checks[i];
      const std::size_t to = check.setups.front();
      m_done[i] = 1;
      walk(minutes + left * (m_problem.moves(state, to) + check.minutes), to,
           left - m_problem.causes[check.finds.front().cause] * check.finds.front().chance);
      m_done[i] = 0;
    }
  }
  const PlanProblem& m_problem;
  std::vector<char> m_done;
  double m_least = std::numeric_limits<double>::infinity();
};

using Order = std::vector<std::size_t>;
constexpr double kSurely = 1000;  // giving up costs so much that every check pays

TEST(CheckPlan, ByProbabilityAndMinutes) {
  const auto problem = simple({{.4, 20}, {.3, 6}, {.2, 10}, {.1, 2}}, kSurely);
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_NEAR(plan->minutes, 21.4, 1e-9);
  EXPECT_NEAR(minutesOf(problem, Order{0, 1, 2, 3}), 26.8, 1e-9);  // the most probable first
  EXPECT_NEAR(minutesOf(problem, Order{0, 2, 1, 3}), 28.6, 1e-9);  // the worst
  EXPECT_NEAR(plan->notFound, 0, 1e-12);
}

TEST(CheckPlan, MinutesInProportionMakeAllOrdersEqual) {
  // Identity: 50 (1 + sum of p squared).
  const auto problem = simple({{.5, 50}, {.3, 30}, {.2, 20}}, kSurely);
  Order order{0, 1, 2};
  do {
    EXPECT_NEAR(minutesOf(problem, order), 69.0, 1e-9);
  } while (std::next_permutation(order.begin(), order.end()));
}

TEST(CheckPlan, OneCheckMayFindSeveralCauses) {
  PlanProblem problem;
  problem.causes = {.20, .25, .40, .15};
  problem.fallback = kSurely;
  problem.checks = {{{{0, 1}, {1, 1}}, {0}, 1, 0, 0},
                    {{{1, 1}, {2, 1}}, {0}, 1, 0, 0},
                    {{{2, 1}, {3, 1}}, {0}, 1, 0, 0}};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{3, 1}));
  EXPECT_NEAR(plan->minutes, 1.45, 1e-9);
  EXPECT_NEAR(minutesOf(problem, Order{1, 0, 2}), 1.50, 1e-9);  // the greedy one
  EXPECT_NEAR(minutesOf(problem, Order{1, 2, 0}), 1.55, 1e-9);
}

TEST(CheckPlan, ActionsThatCureSeveralFaultsWithSomeChance) {
  // A textbook exercise; the answer by enumeration.
  PlanProblem problem;
  problem.causes = {.8, .15, .05};
  problem.fallback = kSurely;
  problem.checks = {{{{0, 1}}, {0}, 1, 0, 0},
                    {{{1, .95}}, {0}, 2, 0, 0},
                    {{{0, .99}, {1, .99}}, {0}, 25, 0, 0},
                    {{{0, 1}, {1, 1}, {2, 1}}, {0}, 500, 0, 0}};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan).back(), 4U);
  EXPECT_NEAR(minutesOf(problem, Order{1, 0, 2, 3}), 29.3325, 1e-6);
  EXPECT_NEAR(minutesOf(problem, Order{0, 1, 3}), 30.15, 1e-6);
  EXPECT_NEAR(minutesOf(problem, Order{0, 1, 2, 3}), 27.875, 1e-6);
  EXPECT_NEAR(plan->minutes, 27.875, 1e-6);
}

TEST(CheckPlan, ImperfectChecksAndGivingUp) {
  const std::vector<SimpleCheck> checks{{.35, 15, .9}, {.25, 5, .6}, {.2, 20, .95}, {.1, 4, .8}};
  const auto dear = simple(checks, 120);
  const auto plan = bestPlan(dear);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{2, 1, 4, 3}));
  EXPECT_NEAR(plan->minutes, 60.79, 1e-6);
  EXPECT_NEAR(minutesOf(dear, Order{1, 3, 0, 2}), 60.85, 1e-6);
  const auto cheap = simple(checks, 30);
  const auto nothing = bestPlan(cheap);
  ASSERT_TRUE(nothing);
  EXPECT_TRUE(nothing->steps.empty());
  EXPECT_NEAR(nothing->minutes, 30, 1e-9);
  EXPECT_NEAR(minutesOf(cheap, Order{1}), 30.5, 1e-9);
}

TEST(CheckPlan, StoppingAtTheFirstCheckThatDoesNotPayIsWrong) {
  const auto problem = simple({{.2, 6}, {.2, 6}, {.2, 6}, {.2, 6}, {.2, 6}}, 20);
  const std::array<double, 6> minutes{20, 22, 22.8, 22.4, 20.8, 18};
  Order order;
  for (std::size_t made = 0; made < minutes.size(); ++made) {
    EXPECT_NEAR(minutesOf(problem, order), minutes[made], 1e-9) << made;
    order.push_back(made);
  }
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->steps.size(), 5U);
  EXPECT_NEAR(plan->minutes, 18, 1e-9);
}

TEST(CheckPlan, FalseAlarmsRaiseWhatACheckCosts) {
  const auto problem =
      simple({{.5, 10, .9, .4, 40}, {.3, 10, .9, .05, 20}, {.2, 10, .9, .05, 30}}, 0);
  // The repair of the true fault, p d g, is the same in every order and not counted by the plan.
  constexpr double kRepairs = .5 * .9 * 40 + .3 * .9 * 20 + .2 * .9 * 30;
  EXPECT_NEAR(minutesOf(problem, Order{1, 0, 2}) + kRepairs, 53.40, 1e-6);
  EXPECT_NEAR(minutesOf(problem, Order{0, 1, 2}) + kRepairs, 55.47, 1e-6);
  auto all = problem;
  all.fallback = kSurely;
  const auto plan = bestPlan(all);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{2, 1, 3}));
}

TEST(CheckPlan, ObserveThenRepairHasTheSameOrder) {
  const auto problem = simple({{.5, 5}, {.3, 2}, {.2, 4}}, 0);
  constexpr double kRepairs = .5 * 30 + .3 * 80 + .2 * 10;
  EXPECT_NEAR(minutesOf(problem, Order{1, 0, 2}) + kRepairs, 47.3, 1e-9);
  EXPECT_NEAR(minutesOf(problem, Order{0, 1, 2}) + kRepairs, 47.8, 1e-9);
  EXPECT_NEAR(minutesOf(problem, Order{2, 0, 1}) + kRepairs, 49.6, 1e-9);
}

TEST(CheckPlan, TheLastCauseIsNotLeftOutWhileAnotherMayBe) {
  // If the last cause were taken as proved by the others' absence, 1.95 would do.
  const auto problem = simple({{.9, 10}, {.05, 1}, {.05, 1}}, kSurely);
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->steps.size(), 3U);
}

TEST(CheckPlan, ASharedSetUpChangesTheOrder) {
  auto problem = simple({{.30, 4}, {.25, 4}, {.20, 4}, {.15, 10}, {.10, 6}}, kSurely);
  problem.moves = movesBetween(std::vector<SetupState>{{std::nullopt, 0, 0}, {0, 20, 0}});
  for (const std::size_t check : {0U, 1U, 2U}) problem.checks[check].setups = {1};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{1, 2, 3, 5, 4}));
  EXPECT_NEAR(plan->minutes, 31.6, 1e-6);
  EXPECT_NEAR(minutesOf(problem, Order{4, 3, 0, 1, 2}), 35.6, 1e-6);
}

TEST(CheckPlan, ADearSetUpWaits) {
  auto problem = simple({{.30, 2}, {.28, 10}, {.22, 10}, {.20, 12}}, kSurely);
  problem.moves = movesBetween(std::vector<SetupState>{{std::nullopt, 0, 0}, {0, 40, 0}});
  problem.checks[0].setups = {1};
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{2, 3, 4, 1}));
  EXPECT_NEAR(plan->minutes, 35.8, 1e-6);
  EXPECT_NEAR(minutesOf(problem, Order{0, 1, 2, 3}), 55.6, 1e-6);
}

TEST(CheckPlan, ATreeOfSetUpsThatNeedNotBeClosed) {
  auto problem =
      simple({{.18, 6}, {.16, 5}, {.16, 4}, {.14, 10}, {.14, 8}, {.12, 3}, {.10, 12}}, kSurely);
  problem.moves = movesBetween(
      std::vector<SetupState>{{std::nullopt, 0, 0}, {0, 10, 0}, {1, 8, 0}, {2, 30, 0}});
  // What stays open does not hinder: a check can be made in its state and in all deeper ones.
  const std::vector<std::size_t> needs{1, 1, 2, 2, 3, 3, 0};
  for (std::size_t check = 0; check < needs.size(); ++check) {
    problem.checks[check].setups.clear();
    for (std::size_t s = needs[check]; s < 4; ++s) problem.checks[check].setups.push_back(s);
  }
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{2, 1, 3, 4, 7, 6, 5}));
  EXPECT_NEAR(plan->minutes, 46.98, 1e-6);
}

struct RandomRow {
  std::size_t n;
  std::uint64_t seed;
  double fallback;
  double minutes;
};
const std::vector<RandomRow> kRandomRows{{3, 5, 200, 111.1225},
                                         {12, 7, 200, 144.2389},
                                         {12, 8, 200, 184.7379},
                                         {10, 9, 200, 191.0975},
                                         {11, 21, 150, 150.0}};

TEST(CheckPlan, RandomProblemsOfKnownCost) {
  for (const RandomRow& row : kRandomRows) {
    const auto plan = bestPlan(randomProblem(row.n, row.seed, row.fallback));
    ASSERT_TRUE(plan) << row.seed;
    EXPECT_NEAR(plan->minutes, row.minutes, 5e-5) << row.seed;
  }
}

TEST(CheckPlan, MovesCloseAndOpen) {
  const auto moves = movesBetween(testing::inventedSetups());
  const auto at = [&](char from, char to) {
    return moves(testing::kSetupLetters.find(from), testing::kSetupLetters.find(to));
  };
  EXPECT_EQ(at('W', 'A'), 23);
  EXPECT_EQ(at('B', 'G'), 18);
  EXPECT_EQ(at('K', 'B'), 30);
  EXPECT_EQ(at('A', 'B'), 30);
  constexpr std::array<std::array<double, 6>, 6> kAll{{{0, 10, 18, 28, 22, 10},
                                                       {5, 0, 8, 18, 12, 15},
                                                       {13, 8, 0, 10, 20, 23},
                                                       {18, 13, 5, 0, 25, 28},
                                                       {17, 12, 20, 30, 0, 27},
                                                       {2, 12, 20, 30, 24, 0}}};
  for (std::size_t from = 0; from < 6; ++from) {
    for (std::size_t to = 0; to < 6; ++to) EXPECT_EQ(moves(from, to), kAll[from][to]);
  }
}

/// Posterior of the invented table after yes and no answers, as letters.
std::vector<double> after(const std::string& yes, const std::string& no) {
  const auto table = inventedTable();
  std::vector<Evidence> evidence;
  for (const char letter : yes) {
    evidence.push_back(answered(table, testing::kFeatureLetters.find(letter), 0));
  }
  for (const char letter : no) {
    evidence.push_back(answered(table, testing::kFeatureLetters.find(letter), 1));
  }
  return probabilities(table, evidence);
}

struct TableRow {
  const char* yes;
  const char* no;
  double fallback;
  double minutes;
  Order order;
};

TEST(CheckPlan, PlansOfTheInventedTable) {
  const std::vector<TableRow> rows{
      {"", "", 240, 142.8157, {5, 7, 14, 6, 10, 15, 11, 4, 2, 8, 1, 3, 9}},
      {"SL", "B", 240, 91.7052, {2, 1, 4, 8, 15, 14, 5, 7, 6, 10}},
      {"B", "S", 240, 113.8197, {6, 3, 4, 8, 5, 14, 7, 10, 11, 9}},
      {"PH", "L", 240, 101.9157, {5, 7, 10, 6, 11, 8, 4, 9}},
      {"WPH", "", 240, 99.9082, {}},
      {"SLT", "B", 240, 83.8896, {}},
      {"US", "", 240, 129.6507, {}},
      {"L", "", 240, 118.5688, {}},
      {"", "L", 240, 130.8463, {}},
      {"", "", 60, 60.0, {}}};
  for (const TableRow& row : rows) {
    const auto problem = inventedProblem(after(row.yes, row.no), row.fallback);
    const auto plan = bestPlan(problem);
    ASSERT_TRUE(plan);
    EXPECT_NEAR(plan->minutes, row.minutes, 5e-5) << row.yes << "/" << row.no;
    if (row.order.empty()) continue;
    EXPECT_EQ(orderOf(*plan), row.order) << row.yes << "/" << row.no;
  }
  const auto none = bestPlan(inventedProblem(after("", ""), 60));
  EXPECT_TRUE(none->steps.empty());
}

TEST(CheckPlan, SafetyFirstIsNearlyFree) {
  for (const auto& [yes, no, minutes] : std::vector<std::tuple<std::string, std::string, double>>{
           {"", "", 142.9512}, {"PH", "L", 104.2924}}) {
    auto problem = inventedProblem(after(yes, no), 240);
    problem.first = {13};
    const auto plan = bestPlan(problem);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->steps.front().check, 13U);
    EXPECT_NEAR(plan->minutes, minutes, 5e-5);
  }
}

TEST(CheckPlan, EqualsTheLeastOverAllOrdersAndStoppingPoints) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const auto problem = randomProblem(8, seed);
    const auto plan = bestPlan(problem);
    ASSERT_TRUE(plan);
    EXPECT_NEAR(plan->minutes, Enumeration(problem).least(), 1e-9) << seed;
    Order order;
    for (const PlanStep& step : plan->steps) order.push_back(step.check);
    EXPECT_NEAR(minutesOf(problem, order), plan->minutes, 1e-9) << seed;
  }
}

TEST(CheckPlan, OneDriveAfterSeveralRepairs) {
  // Actions .5 .3 .2 of 6, 5 and 8 minutes, each group ended by a road test.
  struct Row {
    std::vector<std::vector<std::size_t>> groups;
    double of20, of4;
  };
  const std::vector<Row> rows{{{{0}, {1}, {2}}, 44.1, 16.9},
                              {{{0, 1}, {2}}, 36.6, 17.4},
                              {{{0}, {1, 2}}, 42.5, 18.5},
                              {{{0, 1, 2}}, 39, 23}};
  constexpr std::array<double, 3> kMinutes{6, 5, 8};
  for (const Row& row : rows) {
    for (const auto& [test, minutes] : {std::pair{20.0, row.of20}, std::pair{4.0, row.of4}}) {
      PlanProblem problem;
      problem.causes = {.5, .3, .2};
      Order order;
      for (const auto& group : row.groups) {
        PlannedCheck check;
        check.minutes = test;
        for (const std::size_t action : group) {
          check.finds.push_back({action, 1});
          check.minutes += kMinutes[action];
        }
        order.push_back(problem.checks.size());
        problem.checks.push_back(check);
      }
      EXPECT_NEAR(minutesOf(problem, order), minutes, 1e-9);
    }
  }
}

TEST(CheckPlan, WhatMustComeBeforeComesBefore) {
  for (std::uint64_t seed = 301; seed <= 330; ++seed) {
    auto problem = randomProblem(7, seed);
    problem.checks[2].after = {5};
    problem.checks[4].after = {0, 2};
    const auto plan = bestPlan(problem);
    ASSERT_TRUE(plan);
    EXPECT_NEAR(plan->minutes, Enumeration(problem).least(), 1e-9) << seed;
  }
}

TEST(CheckPlan, NoBeginningIsBetterThanThePlanItself) {
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    const auto plan = bestPlan(randomProblem(10, seed));
    ASSERT_TRUE(plan);
    ASSERT_EQ(plan->beginnings.size(), 10U);
    EXPECT_GE(plan->beginnings.front().minutes, plan->minutes - 1e-9);
    if (plan->steps.empty()) continue;
    EXPECT_EQ(plan->beginnings.front().check, plan->steps.front().check);
    EXPECT_NEAR(plan->beginnings.front().minutes, plan->minutes, 1e-9);
  }
}

TEST(CheckPlan, WhoIsUnderTheWheelAlreadyStaysThere) {
  auto problem = simple({{.4, 5}, {.4, 5}}, kSurely);
  problem.moves = movesBetween(std::vector<SetupState>{{std::nullopt, 0, 0}, {0, 20, 10}});
  problem.checks[1].setups = {1};
  EXPECT_EQ(bestPlan(problem)->steps.front().check, 0U);
  problem.start = 1;
  EXPECT_EQ(bestPlan(problem)->steps.front().check, 1U);
}

TEST(CheckPlan, EdgesOfWhatACheckCostsAndFinds) {
  // What costs nothing comes first; what cannot be, or cannot be found, is never looked for.
  const auto plan = bestPlan(simple({{.5, 5}, {.2, 0}, {0, 1}, {.2, 1, 0}}, kSurely));
  ASSERT_TRUE(plan);
  EXPECT_EQ(orderOf(*plan), (Order{2, 1}));
  const auto one = bestPlan(simple({{1, 7}}, kSurely));
  ASSERT_TRUE(one);
  EXPECT_NEAR(one->minutes, 7, 1e-9);
  // Weights are shares of their sum.
  auto doubled = simple({{.4, 20}, {.3, 6}, {.2, 10}, {.1, 2}}, kSurely);
  for (double& weight : doubled.causes) weight *= 2;
  EXPECT_NEAR(bestPlan(doubled)->minutes, 21.4, 1e-9);
}

TEST(CheckPlan, WhatIsNoProblemIsRefusedByName) {
  auto bad = simple({{.5, 5}, {.5, 5, 1.2}}, 10);
  const auto refused = bestPlan(bad);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().key, "plan.bad_check");
  bad = simple({{0, 5}}, 10);
  bad.causes = {0, 0};
  EXPECT_EQ(bestPlan(bad).error().key, "plan.no_weights");
  EXPECT_EQ(bestPlan(randomProblem(21, 3)).error().key, "plan.too_many_checks");
}

}  // namespace
}  // namespace sw::diagnosis
