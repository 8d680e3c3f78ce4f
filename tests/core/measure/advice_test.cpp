// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/advice.h"

#include <cmath>
#include <numbers>

#include "capability.h"
#include "measure/repeated.h"

namespace sw::measure {
namespace {

// Advice is checked by following it: a series with the same mean and scatter, but as many readings
// as advised (or the advised graduation), must be decided, and one step less must not.

const Advice* find(const SeriesOutcome& outcome, AdviceCode code) {
  for (const Advice& advice : outcome.advice) {
    if (advice.code == code) return &advice;
  }
  return nullptr;
}

SeriesInput fineScale(std::vector<double> readings) {
  SeriesInput input;
  input.readings = std::move(readings);
  input.instrument = test::capability(0.1, 0.1);
  return input;
}

/// `count` readings with the mean and the standard deviation of the series.
std::vector<double> alike(const std::vector<double>& readings, int count) {
  const auto wanted = describe(readings).value();
  std::vector<double> x;
  for (int i = 0; i < count; ++i) x.push_back(i % 2 == 0 ? i : -i);
  const auto got = describe(x).value();
  for (double& value : x) {
    value = wanted.mean + (value - got.mean) * *wanted.standardDeviation / *got.standardDeviation;
  }
  return x;
}

bool isDecided(Verdict verdict) {
  return verdict == Verdict::Within || verdict == Verdict::Outside;
}

Verdict verdictOfAlike(SeriesInput input, int count) {
  input.readings = alike(input.readings, count);
  input.extended = count > input.planned;
  input.planned = std::max(input.planned, count);
  return evaluateSeries(input).value().verdict;
}

TEST(Advice, AsManyMoreReadingsAsWouldDecide) {
  for (double max : {19.6, 19.65, 19.7, 19.8}) {
    SeriesInput input = fineScale({18.6, 19.6, 18.9});
    input.limit.max = max;
    const auto got = evaluateSeries(input).value();
    ASSERT_EQ(got.verdict, Verdict::Undecided) << max;
    const Advice* more = find(got, AdviceCode::MoreReadings);
    ASSERT_TRUE(more) << max;
    const int total = 3 + more->readings.value();
    EXPECT_TRUE(isDecided(verdictOfAlike(input, total))) << max << " with " << total;
    for (int fewer = 4; fewer < total; ++fewer) {
      EXPECT_FALSE(isDecided(verdictOfAlike(input, fewer))) << max << " with " << fewer;
    }
  }
}

TEST(Advice, NoNumberUpToTenHelpsTooCloseToTheLimit) {
  SeriesInput input = fineScale({18.6, 19.6, 18.9});
  input.limit.max = 19.1;
  const auto got = evaluateSeries(input).value();
  EXPECT_EQ(got.verdict, Verdict::Undecided);
  EXPECT_TRUE(find(got, AdviceCode::MoreCannotHelp));
  EXPECT_FALSE(find(got, AdviceCode::MoreReadings));
  EXPECT_FALSE(isDecided(verdictOfAlike(input, 10)));
}

TEST(Advice, ScatterFarBelowTheInstrumentMeansMoreCannotHelp) {
  SeriesInput input = fineScale({19.0, 19.0, 19.1});
  input.instrument = test::capability(0.1, 1.0);
  input.limit.max = 19.8;
  const auto got = evaluateSeries(input).value();
  EXPECT_EQ(got.verdict, Verdict::Undecided);
  EXPECT_TRUE(find(got, AdviceCode::MoreCannotHelp));
  EXPECT_TRUE(find(got, AdviceCode::FinerInstrument));
}

Verdict verdictWithGraduation(SeriesInput input, double graduation) {
  *input.instrument.permissibleError *= graduation / input.instrument.graduation;
  input.instrument.graduation = graduation;
  return evaluateSeries(input).value().verdict;
}

TEST(Advice, CoarsestGraduationThatWouldDecide) {
  SeriesInput input = fineScale({19.0, 19.0, 19.5, 19.0, 19.5});
  input.planned = 5;
  input.instrument = test::capability(0.5, 1.0);
  input.limit.max = 19.8;
  const auto got = evaluateSeries(input).value();
  ASSERT_EQ(got.verdict, Verdict::Undecided);
  const Advice* finer = find(got, AdviceCode::FinerInstrument);
  ASSERT_TRUE(finer);
  EXPECT_NEAR(finer->graduation.value(), 0.2, 1e-12) << "a step of 1, 2, 5";
  EXPECT_EQ(verdictWithGraduation(input, 0.2), Verdict::Within);
  EXPECT_EQ(verdictWithGraduation(input, 0.5), Verdict::Undecided);
}

TEST(Advice, GraduationForAnInstrumentThatIsTooCoarse) {
  SeriesInput input = fineScale({19.0, 19.0, 19.5});
  input.instrument = test::capability(1.0, 1.0);
  input.limit = {18.5, 19.9};
  const auto got = evaluateSeries(input).value();
  ASSERT_EQ(got.verdict, Verdict::InstrumentTooCoarse);
  const Advice* finer = find(got, AdviceCode::FinerInstrument);
  ASSERT_TRUE(finer);
  // u_B = d sqrt(1/12 + 1/3) = 0.6455 d; the band of 1.4 is 4 u_B for d = 0.542: the step is 0.5.
  EXPECT_NEAR(finer->graduation.value(), 0.5, 1e-12);
  EXPECT_NE(verdictWithGraduation(input, 0.5), Verdict::InstrumentTooCoarse);
}

TEST(Advice, AngleStepsAreInDegrees) {
  constexpr double kDegree = std::numbers::pi / 180;
  SeriesInput input;
  input.kind = QuantityKind::Angle;
  input.readings = {3.0 * kDegree, 3.0 * kDegree, 3.0 * kDegree};
  input.instrument = test::capability(0.5 * kDegree, 0.5 * kDegree);
  input.limit.max = 3.3 * kDegree;
  const auto got = evaluateSeries(input).value();
  const Advice* finer = find(got, AdviceCode::FinerInstrument);
  ASSERT_TRUE(finer);
  EXPECT_NEAR(finer->graduation.value() / kDegree, 0.2, 1e-12);
}

TEST(Advice, WhileProvisionalThePlanStillAsks) {
  SeriesInput input = fineScale({19.0, 19.1});
  input.planned = 5;
  input.limit.max = 30;
  const auto got = evaluateSeries(input).value();
  EXPECT_EQ(got.decisionSoFar, Verdict::Within);
  const Advice* more = find(got, AdviceCode::MoreReadings);
  ASSERT_TRUE(more);
  EXPECT_EQ(more->readings, 3);
  EXPECT_FALSE(find(got, AdviceCode::Settled));
}

TEST(Advice, SettledWhenDecidedAsPlanned) {
  SeriesInput input = fineScale({19.0, 19.1, 19.0});
  input.limit.max = 25;
  const auto got = evaluateSeries(input).value();
  ASSERT_EQ(got.verdict, Verdict::Within);
  ASSERT_EQ(got.advice.size(), 1U);
  EXPECT_EQ(got.advice.front().code, AdviceCode::Settled);
}

TEST(Advice, NoLimitNeedsNoAdvice) {
  EXPECT_EQ(evaluateSeries(fineScale({19.0, 19.1, 19.0})).value().advice.size(), 0U);
}

TEST(Advice, WithoutALimitNoReadingWouldDecideAnything) {
  SeriesInput input = fineScale({18.6});
  input.planned = 1;
  EXPECT_FALSE(find(evaluateSeries(input).value(), AdviceCode::MoreReadings));
}

TEST(Advice, PullsThatDisagreeAreRepeated) {
  SeriesInput input = fineScale({18.0, 19.0, 22.0});
  input.pooled = PooledScatter{0.35, 20};
  input.limit.max = 40;
  const auto three = evaluateSeries(input).value();
  const Advice* repeat = find(three, AdviceCode::RepeatInconsistent);
  ASSERT_TRUE(repeat);
  EXPECT_EQ(repeat->readings, 2) << "up to five";
  input.readings = {18.0, 19.0, 22.0, 19.0, 19.0};
  input.planned = 5;
  const auto five = evaluateSeries(input).value();
  EXPECT_EQ(five.consistency, Consistency::InconsistentMedianUsed);
  EXPECT_EQ(five.mean, 19.0);
  EXPECT_TRUE(find(five, AdviceCode::RepeatInconsistent));
}

TEST(Advice, CheckThatContradictsThePermissibleErrorIsQuestioned) {
  SeriesInput input = fineScale({19.0, 19.1, 19.0});
  input.limit.max = 25;
  input.instrument.check = OwnCheck{20.0, 18.0, 0.05};
  EXPECT_TRUE(find(evaluateSeries(input).value(), AdviceCode::CheckInstrument));
  input.instrument.check->shown = 19.9;
  EXPECT_FALSE(find(evaluateSeries(input).value(), AdviceCode::CheckInstrument));
}

}  // namespace
}  // namespace sw::measure
