// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/two_faults.h"

#include "diagnosis/pair_guess.h"

#include <gtest/gtest.h>

#include <map>

// Worked by hand from the formula of the method card.

namespace sw::diagnosis {
namespace {

TEST(TwoFaults, NoisyOr) {
  EXPECT_NEAR(noisyOr(.05, {}), .05, 1e-12);
  EXPECT_NEAR(noisyOr(.05, std::vector{.8}), .81, 1e-12);
  EXPECT_NEAR(noisyOr(.05, std::vector{.3}), .335, 1e-12);
  EXPECT_NEAR(noisyOr(.05, std::vector{.8, .3}), .867, 1e-12);
}

double totalOf(const std::vector<FaultSet>& sets, std::size_t cause) {
  double sum = 0;
  for (const FaultSet& set : sets) {
    for (const std::size_t one : set.causes) sum += one == cause ? set.probability : 0;
  }
  return sum;
}

TEST(TwoFaults, OneSymptomAndTwoCausesThatComeIndependently) {
  const std::vector<double> priors{.2, .1};
  const auto sets = faultSets(priors, std::vector{SeenFeature{.05, {.8, .3}, true}});
  EXPECT_NEAR(totalOf(sets, 0), .722050, 1e-6);
  EXPECT_NEAR(totalOf(sets, 1), .195362, 1e-6);
  double both = 0, none = 0;
  for (const FaultSet& set : sets) {
    if (set.causes.size() == 2) both = set.probability;
    if (set.causes.empty()) none = set.probability;
  }
  EXPECT_NEAR(both, .076746, 1e-6);
  // One explains the other away.
  const double first = totalOf(sets, 0);
  EXPECT_NEAR(both / first, .106289, 1e-6);
  EXPECT_NEAR((totalOf(sets, 1) - both) / (1 - first), .426752, 1e-6);
  EXPECT_NEAR(none, .8 * .9 * .05 / .22594, 1e-6);
}

TEST(TwoFaults, WithoutAnswersThePriorsStay) {
  const auto sets = faultSets(std::vector{.2, .1}, {});
  EXPECT_TRUE(sets.front().causes.empty());
  EXPECT_NEAR(totalOf(sets, 0), .2, 1e-12);
  EXPECT_NEAR(totalOf(sets, 1), .1, 1e-12);
}

TEST(TwoFaults, WhatCannotBeLeavesSharesThatAddUp) {
  const auto sum = [](const std::vector<FaultSet>& sets) {
    double all = 0;
    for (const FaultSet& set : sets) all += set.probability;
    return all;
  };
  // Seen, though nothing brings it; not seen, though it always is; three that are surely there.
  EXPECT_NEAR(sum(faultSets(std::vector{.2, .1}, std::vector{SeenFeature{0, {0, 0}, true}})), 1,
              1e-12);
  EXPECT_NEAR(sum(faultSets(std::vector{.2, .1}, std::vector{SeenFeature{1, {1, 1}, false}})), 1,
              1e-12);
  EXPECT_NEAR(sum(faultSets(std::vector{1.0, 1.0, 1.0}, {})), 1, 1e-12);
  // A cause that is never there is in no set.
  for (const FaultSet& set : faultSets(std::vector{0.0, .5}, {})) {
    const bool first = !set.causes.empty() && set.causes.front() == 0;
    EXPECT_EQ(first && set.probability > 0, false);
  }
}

// Two causes of 45 in 100 each, one brings about each question. By hand, with the leak of 0.02:
// both yes: pair .45 .45 (1 - .98 .1 .99)^2 = .165, the first alone .45 .55 .902 .0298 = .0067;
// the first yes alone: pair .45 .45 .903 = .183, the first alone .45 .55 .902 = .223.
TEST(PairGuess, TwoAreSuspectedOnlyWhereNoneAloneExplainsIt) {
  CauseTable table;
  table.features = {{"f", "", {{"yes", ""}, {"no", ""}}},
                    {"g", "", {{"yes", ""}, {"no", ""}}},
                    {"done", "", {{"brakes", ""}, {"nothing", ""}}}};
  table.causes = {{"a", "", 45, {{.9, .1}, {.01, .99}, {.5, .5}}},
                  {"b", "", 45, {{.01, .99}, {.9, .1}, {.5, .5}}},
                  {"other", "", 10, {{.9, .1}, {.9, .1}, {.5, .5}}}};
  table.other = 2;
  const std::vector<GivenAnswer> both{{0, 0}, {1, 0}};
  const auto pair = likelyPair(table, both);
  ASSERT_TRUE(pair);
  EXPECT_EQ(pair->causes, (std::vector<std::size_t>{0, 1}));
  EXPECT_FALSE(likelyPair(table, std::vector<GivenAnswer>{{0, 0}}));
  EXPECT_FALSE(likelyPair(table, std::vector<GivenAnswer>{{0, 0}, {1, 1}}));
  EXPECT_FALSE(likelyPair(table, std::vector<GivenAnswer>{{2, 0}}));  // no symptom
  EXPECT_FALSE(likelyPair(table, {}));
}

}  // namespace
}  // namespace sw::diagnosis
