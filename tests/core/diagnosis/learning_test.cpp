// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/learning.h"

#include <gtest/gtest.h>

#include <cmath>

#include "diagnosis/scores.h"

// Scores and posteriors worked outside of this program from the formulas of the method card.

namespace sw::diagnosis {
namespace {

CauseTable tableOf(const std::vector<double>& weights, const std::vector<double>& yes = {}) {
  CauseTable table;
  if (!yes.empty()) table.features.push_back({"f", "", {{"yes", ""}, {"no", ""}}});
  for (std::size_t c = 0; c < weights.size(); ++c) {
    Cause cause{"c", "", weights[c], {}};
    if (!yes.empty()) cause.answers.push_back({yes[c], 1 - yes[c]});
    table.causes.push_back(cause);
  }
  table.other = weights.size() - 1;
  return table;
}

std::vector<ClosedJob> jobsOf(const std::vector<std::size_t>& causes,
                              const std::string& answers = {}) {
  std::vector<ClosedJob> jobs;
  for (std::size_t i = 0; i < causes.size(); ++i) {
    ClosedJob job{{causes[i] - 1}, {}};
    if (!answers.empty()) {
      job.answers.push_back(answers[i] == '?' ? std::nullopt
                                              : std::optional<std::size_t>(answers[i] == 'n'));
    }
    jobs.push_back(job);
  }
  return jobs;
}

TEST(Scores, OfForecasts) {
  const std::vector<Forecast> forecasts{
      {{.7, .2, .1}, {0}}, {{.1, .6, .3}, {1}}, {{.25, .25, .5}, {2}}, {{.6, .3, .1}, {1}}};
  const std::vector<double> each{.14, .26, .375, .86};
  for (std::size_t i = 0; i < each.size(); ++i) {
    EXPECT_NEAR(scoresOf(std::span(forecasts).subspan(i, 1)).brier, each[i], 1e-12);
  }
  const auto all = scoresOf(forecasts);
  EXPECT_NEAR(all.brier, .40875, 1e-12);
  EXPECT_NEAR(all.log, .691155, 1e-6);
  EXPECT_NEAR(all.firstRight, .75, 1e-12);
  const std::vector<Forecast> guess{{{1. / 3, 1. / 3, 1. / 3}, {0}}};
  EXPECT_NEAR(scoresOf(guess).brier, .666667, 1e-6);
  EXPECT_NEAR(scoresOf(guess).log, 1.098612, 1e-6);
  EXPECT_EQ(scoresOf({}).jobs, 0U);
}

TEST(Learning, WeightsOfCauses) {
  const auto table = tableOf({.22, .12, .66});
  const auto jobs = jobsOf({1, 1, 1, 2, 2, 2, 2, 2, 3, 3});
  const auto after = learned(table, jobs);
  EXPECT_NEAR(after.causes[0].weight, .246667, 1e-6);
  EXPECT_NEAR(after.causes[1].weight, .246667, 1e-6);
  EXPECT_NEAR(after.causes[2].weight, .506667, 1e-6);
  const auto first = learnedWeight(table, jobs, 0);
  EXPECT_NEAR(first.value, .246667, 1e-6);
  EXPECT_NEAR(first.deviation, .077423, 1e-6);
  EXPECT_LT(first.low, first.value);
  EXPECT_GT(first.high, first.value);
}

TEST(Learning, AnswersOfACause) {
  const auto table = tableOf({1, 1}, {.75, .5});
  const auto jobs = jobsOf({1, 1, 1, 1, 1, 1, 1, 1}, "yyyyyyn?");
  const auto number = learnedAnswer(table, jobs, 0, 0, 0);
  EXPECT_NEAR(number.value, .794118, 1e-6);
  EXPECT_NEAR(number.deviation, .095305, 1e-6);
  EXPECT_NEAR(learned(table, jobs).causes[0].answers[0][0], .794118, 1e-6);
  EXPECT_NEAR(learned(table, jobs).causes[0].answers[0][1], 1 - .794118, 1e-6);
  // Of a cause that was not seen nothing is learned.
  EXPECT_EQ(learned(table, jobs).causes[1].answers[0][0], .5);
}

TEST(Learning, LeftOutScoresAndNotThoseInSample) {
  const auto table = tableOf({.5, .3, .2});
  const auto jobs = jobsOf({1, 1, 2, 1, 3, 2, 1, 2, 1, 3});
  const LearningStrength strength{6, 4};
  const auto scores = report(table, jobs, strength);
  EXPECT_NEAR(scores.learned.brier, .705422, 1e-6);
  EXPECT_NEAR(scores.learned.log, 1.176903, 1e-6);
  EXPECT_NEAR(scores.starting.brier, .62, 1e-12);
  EXPECT_NEAR(scores.starting.log, 1.029653, 1e-6);
  EXPECT_NEAR(scores.uniform.brier, 1 - 1. / 3, 1e-12);
  EXPECT_FALSE(scores.useLearned());
}

TEST(Learning, LeftOutScoresWithAnAnswer) {
  const auto table = tableOf({.5, .3, .2}, {.8, .3, .5});
  const auto jobs = jobsOf({1, 1, 2, 1, 3, 2, 1, 2, 1, 3}, "yynynynnyy");
  const auto scores = report(table, jobs, {6, 4});
  EXPECT_NEAR(scores.learned.brier, .685842, 1e-6);
  EXPECT_NEAR(scores.learned.log, 1.220797, 1e-6);
  EXPECT_NEAR(scores.learned.firstRight, .6, 1e-12);
}

TEST(Learning, TwoCausesCountAHalfEachAndNoFaultFoundForTheOthers) {
  const auto table = tableOf({.5, .5});
  ClosedJob both{{0, 1}, {}};
  ClosedJob none{{}, {}};
  const auto after = learned(table, std::vector{both, none}, {2, 10});
  EXPECT_NEAR(after.causes[0].weight, (1 + .5) / 4, 1e-12);
  EXPECT_NEAR(after.causes[1].weight, (1 + .5 + 1) / 4, 1e-12);
}

TEST(Learning, WithoutJobsTheStartingTableStays) {
  const auto table = tableOf({2, 6}, {.3, .4});
  const auto after = learned(table, {});
  EXPECT_NEAR(after.causes[0].weight, .25, 1e-12);
  EXPECT_NEAR(after.causes[1].answers[0][0], .4, 1e-12);
  EXPECT_FALSE(report(table, {}).useLearned());
}

TEST(Learning, ANumberThatWasNoughtOrOneStaysSo) {
  const auto table = tableOf({0, 1}, {1, 0});
  const std::vector<ClosedJob> jobs{{{1}, {1U}}, {{1}, {std::nullopt}}};
  const auto never = learnedWeight(table, jobs, 0);
  EXPECT_EQ(never.value, 0);
  EXPECT_EQ(never.low, 0);
  EXPECT_EQ(never.high, 0);
  const auto always = learnedWeight(table, jobs, 1);
  EXPECT_EQ(always.value, 1);
  EXPECT_EQ(always.low, 1);
  EXPECT_EQ(always.high, 1);
  EXPECT_EQ(learnedAnswer(table, jobs, 0, 0, 0).high, 1);
  EXPECT_EQ(learnedAnswer(table, jobs, 0, 0, 1).high, 0);
  EXPECT_EQ(learnedAnswer(table, jobs, 1, 0, 1).low, 1);
}

TEST(Learning, WithoutStrengthTheJobsAloneCountAndWithoutEitherTheTable) {
  const auto table = tableOf({1, 3}, {.5, .5});
  const LearningStrength none{0, 0};
  const std::vector<ClosedJob> jobs{{{0}, {0U}}, {{1}, {0U}}};
  EXPECT_NEAR(learned(table, jobs, none).causes[0].weight, .5, 1e-12);
  EXPECT_NEAR(learned(table, {}, none).causes[0].weight, .25, 1e-12);
  EXPECT_NEAR(learnedWeight(table, {}, 0, none).value, .25, 1e-12);
  EXPECT_NEAR(learnedAnswer(table, {}, 0, 0, 0, none).value, .5, 1e-12);
}

/// `jobs` of this cause, all with the same answer to both questions.
void addTwice(std::vector<ClosedJob>& list, int jobs, std::size_t cause, std::size_t answer) {
  for (int i = 0; i < jobs; ++i) list.push_back({{cause}, {answer, answer}});
}

// Two questions that ask the same: each chance counts twice, and the power of one half is exactly
// right. Of 5 jobs with "yes" 4 are the first cause: log score -(0.8 ln 0.8 + 0.2 ln 0.2).
TEST(Learning, ADampingIsChosenByItsScore) {
  auto table = tableOf({.5, .5}, {.8, .2});
  table.features.push_back(table.features.front());
  for (Cause& cause : table.causes) cause.answers.push_back(cause.answers.front());
  std::vector<ClosedJob> jobs;
  addTwice(jobs, 16, 0, 0);
  addTwice(jobs, 4, 0, 1);
  addTwice(jobs, 4, 1, 0);
  addTwice(jobs, 16, 1, 1);
  const auto choice = chooseTable(table, jobs);
  EXPECT_FALSE(choice.report.useLearned());
  EXPECT_EQ(choice.damping, .5);
  EXPECT_NEAR(choice.chosen.log, -(.8 * std::log(.8) + .2 * std::log(.2)), 1e-12);
  EXPECT_NEAR(choice.report.starting.log, -(.8 * std::log(.64 / .68) + .2 * std::log(.04 / .68)),
              1e-12);
  // Few jobs choose none.
  EXPECT_EQ(chooseTable(table, std::span(jobs).first(kDampingJobs - 1)).damping, 1);
}

TEST(Learning, OneQuestionNeedsNoDamping) {
  const auto table = tableOf({.5, .5}, {.8, .2});
  std::vector<ClosedJob> jobs;
  for (int i = 0; i < 40; ++i) {
    jobs.push_back(
        {{static_cast<std::size_t>(i % 2)}, {std::size_t((i % 10 < 2) != (i % 2 == 1))}});
  }
  EXPECT_EQ(chooseTable(table, jobs).damping, 1);
}

}  // namespace
}  // namespace sw::diagnosis
