// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "check_heuristics.h"
#include "invented_table.h"

// Expected minutes of the rules of thumb are from a separate program, rounded where the row says.

namespace sw::diagnosis {
namespace {

using testing::bestPrefix;
using testing::orderBy;
using testing::Rule;

struct OneCause {
  double p, minutes;
  std::vector<std::size_t> setups{0};
};

PlanProblem problemOf(const std::vector<OneCause>& checks, const std::vector<SetupState>& states) {
  PlanProblem problem;
  problem.fallback = 1000;
  problem.moves = movesBetween(states);
  for (const OneCause& one : checks) {
    problem.checks.push_back({{{problem.causes.size(), 1}}, one.setups, one.minutes, 0, 0});
    problem.causes.push_back(one.p);
  }
  return problem;
}

double whole(const PlanProblem& problem, Rule rule) {
  return minutesOf(problem, orderBy(problem, rule));
}

std::vector<std::size_t> numbered(std::vector<std::size_t> order) {
  for (std::size_t& check : order) ++check;
  return order;
}

TEST(CheckRace, ASharedSetUp) {
  const auto problem = problemOf({{.30, 4, {1}}, {.25, 4, {1}}, {.20, 4, {1}}, {.15, 10}, {.10, 6}},
                                 {{std::nullopt, 0, 0}, {0, 20, 0}});
  EXPECT_EQ(numbered(orderBy(problem, Rule::PerMinuteThere)),
            (std::vector<std::size_t>{5, 4, 1, 2, 3}));
  EXPECT_NEAR(whole(problem, Rule::PerMinuteThere), 35.6, 1e-9);
  // The block sees that three share what is opened: .75 / 32 is more than .10 / 6.
  EXPECT_NEAR(whole(problem, Rule::BlockOfOneSetUp), 31.6, 1e-9);
}

TEST(CheckRace, ADearSetUpForTheMostProbable) {
  const auto problem = problemOf({{.30, 2, {1}}, {.28, 10}, {.22, 10}, {.20, 12}},
                                 {{std::nullopt, 0, 0}, {0, 40, 0}});
  EXPECT_EQ(numbered(orderBy(problem, Rule::PerMinute)), (std::vector<std::size_t>{1, 2, 3, 4}));
  EXPECT_NEAR(whole(problem, Rule::PerMinute), 55.6, 1e-9);
  EXPECT_EQ(numbered(orderBy(problem, Rule::MostProbable)), (std::vector<std::size_t>{1, 2, 3, 4}));
}

TEST(CheckRace, ATreeOfSetUpsThatAreNeverClosed) {
  auto problem = problemOf({{.18, 6, {1, 2, 3}},
                            {.16, 5, {1, 2, 3}},
                            {.16, 4, {2, 3}},
                            {.14, 10, {2, 3}},
                            {.14, 8, {3}},
                            {.12, 3, {3}},
                            {.10, 12, {0, 1, 2, 3}}},
                           {{std::nullopt, 0, 0}, {0, 10, 0}, {1, 8, 0}, {2, 30, 0}});
  EXPECT_NEAR(whole(problem, Rule::PerMinuteThere), 47.58, 1e-6);
  EXPECT_NEAR(whole(problem, Rule::PerMinute), 63.32, 1e-6);
}

struct RaceRow {
  std::size_t n;
  std::uint64_t seed;
  Rule rule;
  double minutes;  ///< of the best prefix, to four places
};

TEST(CheckRace, BestPrefixesOnRandomProblems) {
  const std::vector<RaceRow> rows{
      {12, 7, Rule::PerMinuteThere, 153.6005},  {12, 7, Rule::BlockOfOneSetUp, 153.6005},
      {12, 7, Rule::PerMinute, 186.7962},       {12, 8, Rule::PerMinute, 189.3373},
      {10, 9, Rule::BlockOfOneSetUp, 194.4509}, {10, 9, Rule::PerMinute, 194.4509},
      {10, 9, Rule::PerMinuteThere, 195.5929}};
  for (const RaceRow& row : rows) {
    const auto problem = testing::randomProblem(row.n, row.seed);
    EXPECT_NEAR(bestPrefix(problem, orderBy(problem, row.rule)).minutes, row.minutes, 5e-5)
        << row.seed << " " << static_cast<int>(row.rule);
  }
}

TEST(CheckRace, NoRuleBeatsThePlan) {
  // On 200 random problems of 12 checks a separate program found on average 10.6 % more than the
  // least for p d / c, 2.2 % with the set-up, 2.7 % by blocks, each at its best prefix. Theirs are
  // other draws than these: the bounds are wide.
  struct Loss {
    Rule rule;
    double low, high, sum = 0;
  };
  std::vector<Loss> losses{{Rule::PerMinute, .09, .13},
                           {Rule::PerMinuteThere, .015, .03},
                           {Rule::BlockOfOneSetUp, .02, .035}};
  constexpr std::uint64_t kProblems = 200;
  for (std::uint64_t seed = 1; seed <= kProblems; ++seed) {
    const auto problem = testing::randomProblem(12, seed);
    const double least = bestPlan(problem)->minutes;
    for (Loss& loss : losses) {
      const double minutes = bestPrefix(problem, orderBy(problem, loss.rule)).minutes;
      EXPECT_GE(minutes, least - 1e-9) << seed;
      loss.sum += minutes / least - 1;
    }
  }
  for (const Loss& loss : losses) {
    EXPECT_GT(loss.sum / kProblems, loss.low) << static_cast<int>(loss.rule);
    EXPECT_LT(loss.sum / kProblems, loss.high) << static_cast<int>(loss.rule);
  }
}

TEST(CheckRace, RulesKeepToWhatMustComeBefore) {
  for (std::uint64_t seed = 301; seed <= 320; ++seed) {
    auto problem = testing::randomProblem(7, seed);
    problem.checks[2].after = {5};
    problem.first = {3};
    for (const Rule rule : testing::kAllRules) {
      const auto order = orderBy(problem, rule);
      ASSERT_EQ(order.size(), 7U);
      EXPECT_EQ(order.front(), 3U);
      const auto at = [&](std::size_t check) {
        return std::find(order.begin(), order.end(), check) - order.begin();
      };
      EXPECT_LT(at(5), at(2));
      EXPECT_GE(bestPrefix(problem, order).minutes, bestPlan(problem)->minutes - 1e-9);
    }
  }
}

}  // namespace
}  // namespace sw::diagnosis
