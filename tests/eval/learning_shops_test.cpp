// SPDX-License-Identifier: GPL-3.0-or-later
#include "learning_shops.h"

#include <gtest/gtest.h>

#include <utility>

#include "diagnosis/shipped_causes.h"

// Where the truth is drawn from the belief itself, an interval of 95 % holds it in 95 of a hundred
// cases (Bayes' rule), within sampling error.

namespace sw::eval {
namespace {

const diagnosis::CauseFile& file() {
  return diagnosis::shippedCauses();
}

TEST(LearningShops, TheIntervalOfAWeightHoldsTheTruthAsOftenAsItSays) {
  for (const auto& [jobs, shops] : {std::pair{20, 200}, {200, 100}, {2000, 30}}) {
    ShopTerms terms;
    terms.jobs = jobs;
    terms.shops = shops;
    const auto means = learnInShops(file(), terms);
    EXPECT_GT(means.held, .925) << jobs;
    EXPECT_LT(means.held, .975) << jobs;
    EXPECT_LT(means.learnedBrier, means.startingBrier) << jobs;
    EXPECT_LT(means.learnedLog, means.startingLog) << jobs;
    EXPECT_GT(means.used, jobs > 20 ? .9 : .5) << jobs;
  }
}

TEST(LearningShops, WhereTheStartingTableIsRightItIsKept) {
  for (const auto& [jobs, most] : {std::pair{20, .3}, {200, .05}}) {
    ShopTerms terms;
    terms.truth = Truth::AsStarted;
    terms.jobs = jobs;
    terms.shops = 60;
    const auto means = learnInShops(file(), terms);
    EXPECT_GT(means.learnedLog, means.startingLog) << jobs;
    EXPECT_LE(means.used, most) << jobs;
  }
}

TEST(LearningShops, WhereTheStartingTableIsWrongTwoHundredJobsAreEnough) {
  ShopTerms terms;
  terms.truth = Truth::Moved;
  terms.shops = 40;
  const auto means = learnInShops(file(), terms);
  EXPECT_GT(means.used, .9);
  EXPECT_LT(means.learnedBrier, means.startingBrier - .03);
}

}  // namespace
}  // namespace sw::eval
