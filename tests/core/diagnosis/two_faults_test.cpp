// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/two_faults.h"

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

}  // namespace
}  // namespace sw::diagnosis
