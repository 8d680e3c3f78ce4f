// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/ranking.h"

#include <gtest/gtest.h>

#include <map>
#include <numeric>

#include "invented_table.h"

// Posteriors are Bayes' rule on the numbers given, worked outside of this program.

namespace sw::diagnosis {
namespace {

using testing::inventedTable;

/// Causes with weights and the chance of yes for each feature.
CauseTable tableOf(const std::vector<double>& weights,
                   const std::vector<std::vector<double>>& yes) {
  CauseTable table;
  for (std::size_t f = 0; f < yes.size(); ++f) {
    table.features.push_back({"f" + std::to_string(f + 1), "", {{"yes", ""}, {"no", ""}}});
  }
  for (std::size_t c = 0; c < weights.size(); ++c) {
    Cause cause{"c" + std::to_string(c + 1), "", weights[c], {}};
    for (const auto& row : yes) cause.answers.push_back({row[c], 1 - row[c]});
    table.causes.push_back(cause);
  }
  table.other = weights.size() - 1;
  return table;
}

std::vector<Evidence> told(const CauseTable& table, const std::string& yes, const std::string& no) {
  std::vector<Evidence> evidence;
  for (const char letter : yes) {
    evidence.push_back(answered(table, *table.feature(std::string(1, letter)), 0));
  }
  for (const char letter : no) {
    evidence.push_back(answered(table, *table.feature(std::string(1, letter)), 1));
  }
  return evidence;
}

TEST(Ranking, TwoCausesByHand) {
  const auto table = tableOf({.3, .7}, {{.9, .4}, {.2, .6}});
  const auto yes = answered(table, 0, 0);
  EXPECT_NEAR(probabilities(table, std::vector{yes, answered(table, 1, 0)})[0], .243243, 1e-6);
  EXPECT_NEAR(probabilities(table, std::vector{yes, answered(table, 1, 1)})[0], .658537, 1e-6);
  // Not known is not no: nothing is added.
  EXPECT_NEAR(probabilities(table, std::vector{yes})[0], .490909, 1e-6);
}

TEST(Ranking, ATraceThatSpeaksForAnAnswer) {
  const auto table = tableOf({.3, .7}, {{.9, .4}});
  const std::vector<double> ratios{4, 1};
  EXPECT_NEAR(probabilities(table, std::vector{supported(table, 0, ratios)})[0], .418868, 1e-6);
}

struct LeaderRow {
  const char* yes;
  const char* no;
  std::vector<std::pair<std::size_t, double>> causes;  ///< numbered from 1
};

TEST(Ranking, TheInventedTable) {
  const std::vector<LeaderRow> rows{{"SL", "B", {{1, .521359}, {2, .241121}, {15, .085102}}},
                                    {"B", "S", {{3, .573721}, {6, .116152}, {5, .052514}}},
                                    {"PH", "L", {{9, .236305}, {10, .198946}, {5, .135031}}},
                                    {"US", "", {{2, .381422}, {1, .121158}, {6, .109939}}}};
  const auto table = inventedTable();
  for (const LeaderRow& row : rows) {
    const auto ranking = rank(table, told(table, row.yes, row.no));
    for (std::size_t place = 0; place < row.causes.size(); ++place) {
      EXPECT_EQ(ranking.causes[place].cause + 1, row.causes[place].first) << row.yes << place;
      EXPECT_NEAR(ranking.causes[place].probability, row.causes[place].second, 1e-6);
    }
  }
}

TEST(Ranking, ACheckThatFoundNothingMovesTheOthersUp) {
  const auto table = inventedTable();
  auto evidence = told(table, "PH", "L");
  evidence.push_back(nothingFound(table, "rod", {{{4, .85}}, {0}, 6, 0, 0}));
  const auto after = probabilities(table, evidence);
  EXPECT_NEAR(after[4], .022881, 1e-6);
  EXPECT_NEAR(after[8], .266943, 1e-6);
}

TEST(Ranking, ACheckThatFoundACause) {
  // Bayes by hand: .2 found with .9, the rest alarms falsely with .1.
  const auto table = tableOf({.2, .8}, {});
  const PlannedCheck check{{{0, .9}}, {0}, 5, .1, 0};
  EXPECT_NEAR(probabilities(table, std::vector{causeFound(table, "c", check, 0)})[0],
              .18 / (.18 + .08), 1e-12);
  EXPECT_NEAR(probabilities(table, std::vector{nothingFound(table, "c", check)})[0],
              .02 / (.02 + .72), 1e-12);
}

TEST(Ranking, ProbabilitiesSumToOneAndShiftsSayWhatEachAnswerDid) {
  const auto table = inventedTable();
  const auto evidence = told(table, "PHW", "LB");
  const auto ranking = rank(table, evidence);
  double sum = 0;
  for (const RankedCause& one : ranking.causes) {
    sum += one.probability;
    ASSERT_EQ(one.shifts.size(), evidence.size());
    for (std::size_t piece = 0; piece < evidence.size(); ++piece) {
      auto others = evidence;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(piece));
      EXPECT_NEAR(one.shifts[piece].without, probabilities(table, others)[one.cause], 1e-12);
    }
  }
  EXPECT_NEAR(sum, 1, 1e-12);
}

TEST(Ranking, NothingKnownGivesTheWeights) {
  const auto table = inventedTable();
  const auto ranking = rank(table, {});
  EXPECT_EQ(ranking.causes.front().cause, 0U);
  EXPECT_NEAR(ranking.causes.front().probability, .20, 1e-12);
  EXPECT_NEAR(ranking.evidenceChance, 1, 1e-12);
  EXPECT_FALSE(ranking.surprising);
}

TEST(Ranking, ContradictingAnswersStillAddUpAndAreCalledSurprising) {
  const auto table = tableOf({.5, .5}, {{.99, .99}, {.99, .99}, {.99, .99}});
  const auto ranking =
      rank(table, std::vector{answered(table, 0, 1), answered(table, 1, 1), answered(table, 2, 1)});
  EXPECT_TRUE(ranking.surprising);  // a chance of 1e-6
  EXPECT_NEAR(ranking.causes[0].probability + ranking.causes[1].probability, 1, 1e-12);
}

TEST(Ranking, DampingBringsRelatedAnswersCloserToNoEvidence) {
  const auto table = inventedTable();
  const auto evidence = told(table, "PH", "");
  const double none = probabilities(table, {})[8];
  const double half = probabilities(table, evidence, 0.5)[8];
  const double full = probabilities(table, evidence)[8];
  EXPECT_LT(none, half);
  EXPECT_LT(half, full);
}

TEST(Ranking, WhatWasRepairedIsUnlikelyAfterwards) {
  const auto table = tableOf({.5, .5}, {});
  EXPECT_NEAR(probabilities(table, std::vector{repaired(table, 0)})[0], .05 / 1.05, 1e-12);
}

}  // namespace
}  // namespace sw::diagnosis
