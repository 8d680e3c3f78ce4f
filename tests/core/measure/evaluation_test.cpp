// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/evaluation.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "capability.h"
#include "check_rows.h"
#include "units/format.h"

namespace sw {
namespace {

using test::check;

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kKilogramForce = 9.80665;  // N, exact: 3rd CGPM 1901

/// Spring scale to 50 N, 0.5 N graduation, +/-0.5 N; direction within +/-10 degrees.
SeriesInput springScale() {
  SeriesInput input;
  input.readings = {18.5, 19.0, 18.5, 19.5, 19.0};
  input.instrument.graduation = 0.5;
  input.instrument.permissibleError = 0.5;
  input.instrument.rangeMin = 0;
  input.instrument.rangeMax = 50;
  input.pullAngleWithin = 10 * kDegree;
  input.planned = 5;
  return input;
}

SeriesOutcome evaluated(const SeriesInput& input) {
  return evaluateSeries(input).value();
}

double lineOf(const SeriesOutcome& outcome, std::string_view source) {
  for (const BudgetLine& line : outcome.budget) {
    if (line.source == source) return line.standardUncertainty;
  }
  ADD_FAILURE() << "no line " << source;
  return -1;
}

bool hasLine(const SeriesOutcome& outcome, std::string_view source) {
  for (const BudgetLine& line : outcome.budget) {
    if (line.source == source) return true;
  }
  return false;
}

bool advises(const SeriesOutcome& outcome, AdviceCode code) {
  for (const Advice& advice : outcome.advice) {
    if (advice.code == code) return true;
  }
  return false;
}

// Budgets: half-widths are common practice, no source; results computed with SciPy 1.10.1.

TEST(Evaluation, SpringScaleBudget) {
  const auto got = evaluated(springScale());
  const std::string_view source = "SciPy 1.10.1";
  check({{"C5 factor", got.correctionFactor, 0.994931, 1e-6, source},
         {"C5 scatter", lineOf(got, "scatter"), 0.186135, 1e-6, source},
         {"C5 graduation", lineOf(got, "graduation"), 0.143606, 1e-6, source},
         {"C5 permissible", lineOf(got, "permissible_error"), 0.287212, 1e-6, source},
         {"C5 angle", lineOf(got, "angle"), 0.085638, 1e-6, source},
         {"C5 F", got.correctedMean, 18.80419, 1e-5, source},
         {"C5 u", got.standardUncertainty, 0.380911, 1e-5, source},
         {"C5 nu", got.degreesOfFreedom.value(), 70.153, 1e-3, source},
         {"C5 k", got.coverageFactor, 1.99436, 1e-5, source},
         {"C5 U", got.expandedUncertainty, 0.759674, 1e-5, source}});
  EXPECT_EQ(got.budget.front().degreesOfFreedom, 4.0);
  EXPECT_EQ(got.verdict, Verdict::NoLimit);
  EXPECT_EQ(got.conformanceProbability, std::nullopt);
  const RoundedPair shown = roundToUncertainty(got.correctedMean, got.expandedUncertainty);
  EXPECT_EQ(shown.value + " +- " + shown.uncertainty, "18.80 +- 0.76");  // E1: JCGM 100 7.2.6
}

TEST(Evaluation, KilogramForceScaleBudget) {
  SeriesInput input;
  input.readings = {1.9 * kKilogramForce, 2.0 * kKilogramForce, 1.9 * kKilogramForce};
  input.instrument.graduation = 0.1 * kKilogramForce;
  input.pullAngleWithin = 15 * kDegree;
  const auto got = evaluated(input);
  const std::string_view source = "SciPy 1.10.1";
  check({{"C6 factor", got.correctionFactor, 0.988616, 1e-6, source},
         {"C6 scatter", lineOf(got, "scatter"), 0.323167, 1e-6, source},
         {"C6 graduation", lineOf(got, "graduation"), 0.279871, 1e-6, source},
         {"C6 angle", lineOf(got, "angle"), 0.192767, 1e-6, source},
         {"C6 F", got.correctedMean, 18.74369, 1e-5, source},
         {"C6 u", got.standardUncertainty, 0.46896, 1e-5, source},
         {"C6 nu", got.degreesOfFreedom.value(), 8.86881, 1e-4, source},
         {"C6 k", got.coverageFactor, 2.26727, 1e-5, source},
         {"C6 U", got.expandedUncertainty, 1.06326, 1e-5, source}});
  EXPECT_FALSE(got.instrumentErrorKnown);
  EXPECT_TRUE(advises(got, AdviceCode::CheckInstrument));
  const RoundedPair shown = roundToUncertainty(got.correctedMean, got.expandedUncertainty);
  EXPECT_EQ(shown.value + " +- " + shown.uncertainty, "18.7 +- 1.1");  // E2: JCGM 100 7.2.6
}

TEST(Evaluation, DifferencesOfTwoReadings) {
  SeriesInput runout;
  runout.kind = QuantityKind::Length;
  runout.readings = {0.04, 0.04, 0.04};
  runout.instrument = test::differenceOfTwo(0.01, 0.005);
  runout.rule = DecisionRule::GuardBandK2;
  const auto dial = evaluated(runout);
  check({{"C8 graduation", lineOf(dial, "graduation"), 0.0040825, 1e-7, "NumPy"},
         {"C8 local", lineOf(dial, "local_error"), 0.0028868, 1e-7, "NumPy"},
         {"C8 u", dial.standardUncertainty, 0.005, 1e-6, "NumPy"},
         {"C8 U", dial.expandedUncertainty, 0.010, 1e-6, "k = 2"}});
  SeriesInput toe = runout;
  toe.readings = {2.0, 2.0};
  toe.instrument = test::differenceOfTwo(1.0, 0.4);
  const auto rule = evaluated(toe);
  check({{"C11 u", rule.standardUncertainty, 0.469042, 1e-5, "local error UK SI 2016/1153"},
         {"C11 U", rule.expandedUncertainty, 0.938083, 1e-5, "k = 2"}});
  EXPECT_TRUE(dial.instrumentErrorKnown) << "the own error of the dial cancels";
  toe.instrument.permissibleError = 3;
  EXPECT_FALSE(hasLine(evaluated(toe), "permissible_error"));
}

// SciPy from the readings; the row F10 of decision_test.cpp starts from the rounded result instead.
TEST(Evaluation, SpringScaleAgainstLimits) {
  struct Row {
    double max, probability;
    Verdict verdict;
  };
  for (const Row& row :
       {Row{20, 0.998761, Verdict::Within}, Row{19.5, 0.964000, Verdict::Within},
        Row{19, 0.695585, Verdict::Undecided}, Row{18, 0.019158, Verdict::Outside}}) {
    SeriesInput input = springScale();
    input.limit.max = row.max;
    const auto got = evaluated(input);
    check({{"F10", got.conformanceProbability.value(), row.probability, 1e-6, "SciPy 1.10.1"}});
    EXPECT_EQ(got.verdict, row.verdict) << row.max;
    EXPECT_EQ(got.decisionSoFar, row.verdict) << row.max;
  }
}

TEST(Evaluation, EqualReadingsKeepTheGraduation) {
  SeriesInput input = springScale();
  input.readings = std::vector<double>(5, 19.0);
  input.pullAngleWithin = 0;
  input.instrument.permissibleError.reset();
  const auto got = evaluated(input);
  EXPECT_EQ(got.scatter, 0);
  EXPECT_EQ(lineOf(got, "scatter"), 0);
  check({{"A16 u", got.standardUncertainty, 0.5 / std::sqrt(12.0), 1e-15, "d / sqrt(12)"}});
  EXPECT_EQ(got.degreesOfFreedom, std::nullopt);
  EXPECT_TRUE(std::isfinite(got.expandedUncertainty));
}

TEST(Evaluation, GraduationDoesNotAverageOut) {
  SeriesInput input = springScale();
  input.readings.assign(100, 18.5);
  input.pullAngleWithin = 0;
  EXPECT_NEAR(lineOf(evaluated(input), "graduation"), 0.5 / std::sqrt(12.0), 1e-15);
}

TEST(Evaluation, ErrorShapes) {
  SeriesInput input = springScale();
  input.pullAngleWithin = 0;
  input.instrument.permissibleError = 0.6;
  EXPECT_NEAR(lineOf(evaluated(input), "permissible_error"), 0.6 / std::sqrt(3.0), 1e-12);
  input.instrument.errorShape = ErrorShape::Triangular;
  EXPECT_NEAR(lineOf(evaluated(input), "permissible_error"), 0.6 / std::sqrt(6.0), 1e-12);
  input.instrument.errorShape = ErrorShape::Certificate;
  input.instrument.coverageFactor = 3;
  EXPECT_NEAR(lineOf(evaluated(input), "permissible_error"), 0.2, 1e-12);
}

TEST(Evaluation, OwnCheckCorrectsAndReplacesThePermissibleError) {
  SeriesInput input = springScale();
  // 2 kg, good to 5 g rectangular, read as 19.0 N: the scale shows 0.6133 N too little.
  input.instrument.check =
      OwnCheck{2 * kKilogramForce, 19.0, 0.005 / std::sqrt(3.0) * kKilogramForce};
  const auto got = evaluated(input);
  const double m = got.correctionFactor;
  EXPECT_NEAR(got.correctionOffset, 0.6133, 1e-9);
  EXPECT_NEAR(got.correctedMean, m * (18.9 + 0.6133), 1e-9);
  EXPECT_NEAR(lineOf(got, "own_check"), m * std::hypot(0.0283094, 0.144338), 1e-6);
  EXPECT_FALSE(hasLine(got, "permissible_error"));
  EXPECT_TRUE(got.instrumentErrorKnown);
}

TEST(Evaluation, CheckMadeFarFromTheReadingsDoesNotCount) {
  SeriesInput input = springScale();
  input.instrument.permissibleError.reset();
  input.instrument.check = OwnCheck{5, 4.5, 0.01};
  const auto got = evaluated(input);
  EXPECT_EQ(got.correctionOffset, 0);
  EXPECT_FALSE(got.instrumentErrorKnown);
  EXPECT_FALSE(hasLine(got, "own_check"));
  EXPECT_TRUE(advises(got, AdviceCode::CheckInstrument));
}

TEST(Evaluation, OneReadingWithoutPastScatterIsNeverDecided) {
  SeriesInput input = springScale();
  input.readings = {19.0};
  for (double max : {18.0, 18.9, 20.0, 1000.0}) {
    input.limit.max = max;
    input.planned = 5;
    auto got = evaluated(input);
    EXPECT_EQ(got.verdict, Verdict::Provisional) << max;
    EXPECT_EQ(got.decisionSoFar, Verdict::Undecided) << max;
    EXPECT_EQ(got.conformanceProbability, std::nullopt);
    EXPECT_FALSE(got.scatterKnown);
    EXPECT_EQ(got.side, max > 18.9 ? LimitSide::InsideLikely : LimitSide::OutsideLikely);
    input.planned = 1;
    got = evaluated(input);
    EXPECT_EQ(got.verdict, Verdict::Undecided) << max;
    EXPECT_TRUE(advises(got, AdviceCode::MoreReadings));
    EXPECT_FALSE(provesWithin(got));
  }
}

TEST(Evaluation, OneReadingWithPastScatterCanBeDecided) {
  SeriesInput input = springScale();
  input.readings = {19.0};
  input.pullAngleWithin = 0;
  input.planned = 1;
  input.pooled = PooledScatter{0.4117038, 10};
  input.limit.max = 22;
  const auto got = evaluated(input);
  EXPECT_NEAR(lineOf(got, "scatter"), 0.4117038, 1e-12) << "u_A = s_p / sqrt(1)";
  EXPECT_EQ(got.budget.front().degreesOfFreedom, 10.0);
  EXPECT_EQ(got.verdict, Verdict::Within);
  EXPECT_TRUE(got.scatterKnown);
}

TEST(Evaluation, FewerThanPlannedIsProvisional) {
  SeriesInput input = springScale();
  input.limit.max = 25;
  input.planned = 6;
  auto got = evaluated(input);
  EXPECT_EQ(got.verdict, Verdict::Provisional);
  EXPECT_EQ(got.decisionSoFar, Verdict::Within);
  EXPECT_FALSE(provesWithin(got));
  input.planned = 5;
  got = evaluated(input);
  EXPECT_EQ(got.verdict, Verdict::Within);
  EXPECT_TRUE(provesWithin(got));
}

TEST(Evaluation, ExtensionRaisesTheBar) {
  SeriesInput input = springScale();
  input.limit.max = 19.5;  // p_c 0.964
  EXPECT_EQ(evaluated(input).verdict, Verdict::Within);
  input.extended = true;
  const auto five = evaluated(input);
  EXPECT_DOUBLE_EQ(five.bar, 0.975);
  EXPECT_EQ(five.verdict, Verdict::Undecided);
  input.planned = 8;
  EXPECT_DOUBLE_EQ(evaluated(input).bar, 0.987) << "the bar of the number it is extended to";
}

TEST(Evaluation, TooCoarseIsTheInstrumentsOwnFault) {
  SeriesInput input = springScale();
  input.instrument.permissibleError = 0.8;
  input.limit = {18.0, 19.6};
  const auto got = evaluated(input);
  EXPECT_EQ(got.verdict, Verdict::InstrumentTooCoarse);
  EXPECT_TRUE(advises(got, AdviceCode::FinerInstrument));
  EXPECT_TRUE(advises(got, AdviceCode::MoreCannotHelp));
  input.planned = 7;
  EXPECT_EQ(evaluated(input).verdict, Verdict::InstrumentTooCoarse) << "known before the last pull";
}

TEST(Evaluation, FewScatteredReadingsNeverCondemnAGoodScale) {
  SeriesInput input = springScale();
  input.readings = {15.0, 20.0, 22.5};
  input.planned = 3;
  input.instrument = test::capability(0.1, 0.1);
  input.limit = {18.0, 20.0};
  EXPECT_EQ(evaluated(input).verdict, Verdict::Undecided);
}

TEST(Evaluation, CoarseInstrumentMayStillProveOutside) {
  SeriesInput input = springScale();
  input.instrument.permissibleError = 0.8;
  input.limit = {28.0, 29.6};
  const auto got = evaluated(input);
  EXPECT_EQ(got.verdict, Verdict::Outside);
  EXPECT_EQ(got.side, LimitSide::Below);
}

TEST(Evaluation, UnknownInstrumentErrorProvesNothing) {
  SeriesInput input = springScale();
  input.instrument.permissibleError.reset();
  input.limit.max = 30;
  const auto got = evaluated(input);
  EXPECT_EQ(got.verdict, Verdict::Within);
  EXPECT_FALSE(got.instrumentErrorKnown);
  EXPECT_FALSE(provesWithin(got));
}

TEST(Evaluation, ReadingOutsideTheRangeProvesNothing) {
  SeriesInput input = springScale();
  input.instrument.rangeMax = 19.0;
  input.limit.max = 30;
  const auto got = evaluated(input);
  EXPECT_FALSE(got.withinInstrumentRange);
  EXPECT_TRUE(advises(got, AdviceCode::OutOfRange));
  EXPECT_FALSE(provesWithin(got));
}

TEST(Evaluation, ClassicGuardBandIsTwoStandardUncertainties) {
  SeriesInput input = springScale();
  input.rule = DecisionRule::GuardBandK2;
  const auto plain = evaluated(input);
  EXPECT_EQ(plain.coverageFactor, 2.0);
  input.limit.max = plain.correctedMean + 2.001 * plain.standardUncertainty;
  EXPECT_EQ(evaluated(input).verdict, Verdict::Within);
  input.limit.max = plain.correctedMean + 1.999 * plain.standardUncertainty;
  EXPECT_EQ(evaluated(input).verdict, Verdict::Undecided);
}

TEST(Evaluation, SettingTheUnitOfTheReadingsChangesNothing) {
  std::mt19937_64 random(8);
  std::uniform_real_distribution<double> spread(10, 30);
  for (int i = 0; i < 100; ++i) {
    SeriesInput input = springScale();
    for (double& x : input.readings) x = spread(random);
    input.limit = {15.0, spread(random) + 10};
    SeriesInput scaled = input;
    const double c = 0.001;
    for (double& x : scaled.readings) x *= c;
    scaled.instrument.graduation *= c;
    *scaled.instrument.permissibleError *= c;
    *scaled.limit.min *= c;
    *scaled.limit.max *= c;
    const auto a = evaluated(input);
    const auto b = evaluated(scaled);
    EXPECT_NEAR(a.conformanceProbability.value(), b.conformanceProbability.value(), 1e-9);
    EXPECT_NEAR(a.standardUncertainty * c, b.standardUncertainty, 1e-12 * c);
    EXPECT_EQ(a.verdict, b.verdict);
  }
}

TEST(Evaluation, DriftShowsInTheCorrelation) {
  SeriesInput input = springScale();
  input.readings = {24.0, 23.0, 22.0, 21.0, 20.0, 19.0};
  EXPECT_GT(evaluated(input).lagOne.value(), 0.4);
  input.readings = {19.0, 19.0};
  EXPECT_EQ(evaluated(input).lagOne, std::nullopt);
}

std::string problemWith(void (*change)(SeriesInput&)) {
  SeriesInput input = springScale();
  change(input);
  const auto got = evaluateSeries(input);
  return got ? "accepted" : got.error().key + " " + got.error().field;
}

TEST(Evaluation, RefusesImpossibleInputsByName) {
  struct Row {
    void (*change)(SeriesInput&);
    const char* expected;
  };
  static constexpr double kInfinity = std::numeric_limits<double>::infinity();
  const Row rows[]{
      {[](SeriesInput& i) { i.readings.clear(); }, "measure.no_readings readings"},
      {[](SeriesInput& i) { i.readings[1] = std::nan(""); }, "measure.not_finite readings"},
      {[](SeriesInput& i) { i.instrument.graduation = 0; }, "measure.not_positive graduation"},
      {[](SeriesInput& i) { i.instrument.graduation = kInfinity; },
       "measure.not_finite graduation"},
      {[](SeriesInput& i) { i.instrument.permissibleError = -1; },
       "measure.not_positive permissible_error"},
      {[](SeriesInput& i) { i.instrument.localError = 0; }, "measure.not_positive local_error"},
      {[](SeriesInput& i) { i.instrument.coverageFactor = 0; },
       "measure.not_positive coverage_factor"},
      {[](SeriesInput& i) {
         i.instrument.check = OwnCheck{20, kInfinity, 0};
       },
       "measure.not_finite shown"},
      {[](SeriesInput& i) {
         i.instrument.check = OwnCheck{20, 20, -1};
       },
       "measure.not_positive applied_uncertainty"},
      {[](SeriesInput& i) { i.pullAngleWithin = -0.1; },
       "measure.angle_too_large pull_angle_within"},
      {[](SeriesInput& i) { i.pullAngleWithin = 1.6; },
       "measure.angle_too_large pull_angle_within"},
      {[](SeriesInput& i) {
         i.pooled = PooledScatter{0, 4};
       },
       "measure.not_positive pooled_scatter"},
      {[](SeriesInput& i) {
         i.pooled = PooledScatter{1, 0};
       },
       "measure.not_positive pooled_scatter"},
      {[](SeriesInput& i) {
         i.limit = {20.0, 19.0};
       },
       "measure.empty_limit limit"},
      {[](SeriesInput& i) { i.limit.max = kInfinity; }, "measure.not_finite limit_max"},
      {[](SeriesInput& i) { i.confidence = 1; }, "measure.bad_confidence confidence"},
      {[](SeriesInput& i) { i.confidence = 0.5; }, "measure.bad_confidence confidence"},
      {[](SeriesInput& i) { i.planned = 0; }, "measure.not_positive planned"}};
  for (const Row& row : rows) EXPECT_EQ(problemWith(row.change), row.expected);
}

TEST(Evaluation, WordsRoundTrip) {
  for (Verdict v : {Verdict::Within, Verdict::Outside, Verdict::Undecided, Verdict::Provisional,
                    Verdict::InstrumentTooCoarse, Verdict::NoLimit}) {
    EXPECT_EQ(verdictFromWord(word(v)), v);
  }
  for (ErrorShape s : {ErrorShape::Rectangular, ErrorShape::Triangular, ErrorShape::Certificate}) {
    EXPECT_EQ(errorShapeFromWord(word(s)), s);
  }
  for (DecisionRule r : {DecisionRule::ConformanceProbability, DecisionRule::GuardBandK2}) {
    EXPECT_EQ(decisionRuleFromWord(word(r)), r);
  }
  EXPECT_EQ(verdictFromWord("fine"), std::nullopt);
  EXPECT_EQ(word(Verdict::InstrumentTooCoarse), "instrument_too_coarse");
  EXPECT_EQ(word(LimitSide::OutsideLikely), "outside_likely");
  EXPECT_EQ(word(Consistency::InconsistentMedianUsed), "inconsistent_median_used");
  EXPECT_EQ(word(AdviceCode::MoreCannotHelp), "more_cannot_help");
}

}  // namespace
}  // namespace sw
