// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/questions.h"

#include <gtest/gtest.h>

#include <numeric>

#include "invented_table.h"

// Minutes are from enumeration outside of this program.

namespace sw::diagnosis {
namespace {

TEST(Questions, DoesTheBeatFollowTheSpeedIsWorthMostBeforeAnythingIsKnown) {
  const auto table = testing::inventedTable();
  const auto problem = testing::inventedProblem({}, 240);
  std::vector<std::size_t> all(table.features.size());
  std::iota(all.begin(), all.end(), 0U);
  const auto values = questionValues(table, {}, problem, all);
  ASSERT_TRUE(values) << values.error().key;
  const QuestionValue& first = values->front();
  EXPECT_EQ(table.features[first.feature].key, "L");
  EXPECT_NEAR(first.chances[0], .5495, 1e-4);
  EXPECT_NEAR(first.planMinutes[0], 118.5688, 5e-5);
  EXPECT_NEAR(first.planMinutes[1], 130.8463, 5e-5);
  EXPECT_NEAR(first.minutes, 142.8157 - 124.0999, 1e-4);
  // By how much each question shortens the plan, to a tenth of a minute.
  const std::vector<std::pair<std::string, double>> saved{{"L", 18.7}, {"P", 13.5}, {"H", 9.4},
                                                          {"W", 8.7},  {"B", 7.4},  {"T", 7.2},
                                                          {"S", 5.9},  {"U", 2.1}};
  for (std::size_t place = 0; place < saved.size(); ++place) {
    EXPECT_EQ(table.features[(*values)[place].feature].key, saved[place].first);
    EXPECT_NEAR((*values)[place].minutes, saved[place].second, 0.051);
  }
}

TEST(Questions, ChancesOfTheAnswersAddUpAndNoAnswerMakesThePlanWorseOnAverage) {
  const auto table = testing::inventedTable();
  const std::vector<Evidence> known{answered(table, 2, 0)};
  const std::vector<std::size_t> ask{0, 1, 4, 7};
  const auto values = questionValues(table, known, testing::inventedProblem({}, 240), ask);
  ASSERT_TRUE(values);
  for (const QuestionValue& value : *values) {
    EXPECT_NEAR(value.chances[0] + value.chances[1], 1, 1e-12);
    EXPECT_GE(value.minutes, 0);
  }
}

}  // namespace
}  // namespace sw::diagnosis
