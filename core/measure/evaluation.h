// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/unit.h"

// METHOD CARD: judging a series of repeated readings against a limit
// Formula: value y = m (x + c): x the mean (the median where readings disagree), c the correction
// from an
//   own check (applied - shown), m = sin(a) / a for a pull anywhere within +/-a of the line.
//   Budget, each line after its sensitivity: scatter m s / sqrt(n) (nu of s), graduation
//   m d / sqrt(12) once and never divided by sqrt(n), because a coarse scale repeats its reading
//   error (twice for a difference of two readings), permissible error or own check, angle |x + c|
//   u(m). Then u, nu_eff, k, U (budget.h), p_c and the verdict (decision.h), agreement
//   (consistency.h).
// Source: JCGM 100:2008, JCGM 106:2012, ISO 14253-1:2017, ISO 5725-6 (from memory); the cards of
// the
//   headers named. Common practice, no source: the own check counts for readings between half and
//   twice the mass or gauge it was made with; 10 readings are the most that are asked for.
// Valid range: all numbers SI of one quantity kind, finite.
// Assumptions: independent readings of one unchanging quantity; instrument error shared by all
//   readings of the series; scatter normal.
// Degenerate cases: equal readings: s = 0, the graduation stays. One reading without a pooled
// scatter:
//   u is a lower bound, there is no probability, and the answer is at most "undecided".
// When not to use: readings taken in different states; the settling pull is left out by the caller.
// Accuracy: the interval claimed at 95 % holds the truth 94 to 96 % of the time from 5 readings on,
// or when
//   the instrument dominates; with 3 readings whose u_A is 2 to 5 times u_B only 92 to 93 %, a
//   known weakness of effective degrees of freedom (simulation). A pooled scatter cures it.
// Reference test: tests/core/measure/evaluation_test.cpp, verdict_boundary_test.cpp (SciPy),
//   coverage_simulation_test.cpp.

namespace sw {

/// The six answers. "Provisional" = fewer used readings than planned; the bare decision stands
/// beside it.
enum class Verdict { Within, Outside, Undecided, Provisional, InstrumentTooCoarse, NoLimit };
[[nodiscard]] std::string_view word(Verdict verdict);
[[nodiscard]] std::optional<Verdict> verdictFromWord(std::string_view text);

/// Where an undecided or outside value lies.
enum class LimitSide { None, Below, Above, InsideLikely, OutsideLikely };
[[nodiscard]] std::string_view word(LimitSide side);

enum class ErrorShape { Rectangular, Triangular, Certificate };
[[nodiscard]] std::string_view word(ErrorShape shape);
[[nodiscard]] std::optional<ErrorShape> errorShapeFromWord(std::string_view text);

enum class DecisionRule { ConformanceProbability, GuardBandK2 };
[[nodiscard]] std::string_view word(DecisionRule rule);
[[nodiscard]] std::optional<DecisionRule> decisionRuleFromWord(std::string_view text);

/// The user's own check of an instrument against a known mass or gauge.
struct OwnCheck {
  double applied = 0;  ///< what was hung on or put between, SI
  double shown = 0;    ///< what the instrument showed, SI
  double appliedStandardUncertainty = 0;
};

/// What is known about an instrument, SI of its kind.
struct InstrumentCapability {
  double graduation = 0;                   ///< smallest step, > 0
  std::optional<double> permissibleError;  ///< half-width, > 0
  ErrorShape errorShape = ErrorShape::Rectangular;
  double coverageFactor = 2.0;  ///< for a certificate
  std::optional<double> rangeMin, rangeMax;
  std::optional<OwnCheck> check;     ///< gives correction and error where there is no certificate
  bool differenceOfTwo = false;      ///< e.g. runout max - min: own error cancels, graduation twice
  std::optional<double> localError;  ///< half-width > 0 that a difference of two does not cancel
};

struct LimitBand {
  std::optional<double> min, max;
  [[nodiscard]] bool any() const { return min || max; }
};

/// Scatter known from past series of the same scale and hand.
struct PooledScatter {
  double standardDeviation = 0;  ///< SI, > 0
  double degreesOfFreedom = 0;   ///< >= 1
};

struct SeriesInput {
  QuantityKind kind = QuantityKind::Force;
  std::vector<double> readings;  ///< used readings only (no settling pull), SI
  InstrumentCapability instrument;
  double pullAngleWithin = 0;  ///< rad, half-width of the unknown angle off the line, 0 = none
  std::optional<PooledScatter> pooled;
  LimitBand limit;
  double confidence = 0.95;
  int planned = 3;        ///< readings fixed beforehand, >= 1
  bool extended = false;  ///< more readings were added after a look: the bar rises
  DecisionRule rule = DecisionRule::ConformanceProbability;
};

struct BudgetLine {
  std::string_view source;  ///< "scatter", "graduation", "permissible_error", "angle", "own_check",
                            ///< "local_error"
  double standardUncertainty = 0;
  std::optional<double> degreesOfFreedom;  ///< empty = infinite
};

enum class Consistency { TooFew, Consistent, RangeTooWide, Outlier, InconsistentMedianUsed };
[[nodiscard]] std::string_view word(Consistency consistency);

enum class AdviceCode {
  MoreReadings,
  FinerInstrument,
  MoreCannotHelp,
  CheckInstrument,
  RepeatInconsistent,
  OutOfRange,
  Settled
};
[[nodiscard]] std::string_view word(AdviceCode code);
struct Advice {
  AdviceCode code{};
  std::optional<int>
      readings;  ///< how many more would probably decide; at least what the plan still asks for
  std::optional<double> graduation;  ///< the graduation that would decide, SI
};

struct SeriesOutcome {
  int used = 0;
  double mean = 0,
         scatter = 0;  ///< uncorrected mean (median where inconsistent), s (0 for one reading)
  double correctionFactor = 1, correctionOffset = 0;
  double correctedMean = 0;
  std::vector<BudgetLine> budget;
  double standardUncertainty = 0;
  std::optional<double> degreesOfFreedom;  ///< empty = infinite
  double coverageFactor = 2, expandedUncertainty = 0;
  std::optional<double>
      conformanceProbability;  ///< empty where there is no limit or no known scatter
  double bar = 0.95;           ///< the probability asked for, after extension 0.975 / 0.987
  Verdict verdict = Verdict::NoLimit;
  Verdict decisionSoFar = Verdict::NoLimit;  ///< what it would be if this were the planned number
  LimitSide side = LimitSide::None;
  Consistency consistency = Consistency::TooFew;
  std::vector<Advice> advice;
  bool instrumentErrorKnown =
      true;  ///< permissible error, a check that covers the readings, or it cancels
  bool withinInstrumentRange = true;  ///< every reading inside the instrument's range
  bool scatterKnown = true;      ///< false: one reading without pooled scatter, u is a lower bound
  std::optional<double> lagOne;  ///< lag-1 autocorrelation; large and positive = drift
  std::optional<std::size_t>
      outlier;  ///< index of the reading marked by Grubbs' test; it stays in the mean
};

/// Whether the outcome proves a safety reading within its limits: the verdict alone is not enough
/// when the scale's own error is unknown or a reading lies outside its range.
[[nodiscard]] bool provesWithin(const SeriesOutcome& outcome);

/// The whole chain: mean, correction, budget, effective degrees of freedom, decision, advice.
/// Errors: Missing "measure.no_readings"; OutOfRange "measure.not_positive" (field named),
/// "measure.not_finite", "measure.empty_limit" (min > max), "measure.angle_too_large" (a quarter
/// turn), "measure.bad_confidence" (not between 0.5 and 1); "measure.one_reading_needs_scatter" is
/// NOT an error: one reading without pooled scatter is Provisional/Undecided with advice.
[[nodiscard]] Result<SeriesOutcome> evaluateSeries(const SeriesInput& input);

}  // namespace sw
