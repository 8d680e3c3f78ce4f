// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/unit.h"

// METHOD CARD: judging a series of repeated readings against a limit
// (the card is completed where the formulas stand: uncertainty.h, decision.h, consistency.h)
// All numbers of one evaluation are SI values of one quantity kind.

namespace sw {

/// The six answers. "Provisional" = fewer used readings than planned; the bare decision stands beside it.
enum class Verdict { Within, Outside, Undecided, Provisional, InstrumentTooCoarse, NoLimit };
[[nodiscard]] std::string_view word(Verdict verdict);
[[nodiscard]] std::optional<Verdict> verdictFromWord(std::string_view word);

/// Where an undecided or outside value lies.
enum class LimitSide { None, Below, Above, InsideLikely, OutsideLikely };
[[nodiscard]] std::string_view word(LimitSide side);

enum class ErrorShape { Rectangular, Triangular, Certificate };
[[nodiscard]] std::string_view word(ErrorShape shape);

enum class DecisionRule { ConformanceProbability, GuardBandK2 };
[[nodiscard]] std::string_view word(DecisionRule rule);

/// The user's own check of an instrument against a known mass or gauge.
struct OwnCheck {
  double applied = 0;               ///< what was hung on or put between, SI
  double shown = 0;                 ///< what the instrument showed, SI
  double appliedStandardUncertainty = 0;
};

/// What is known about an instrument, SI of its kind.
struct InstrumentCapability {
  double graduation = 0;                       ///< smallest step, > 0
  std::optional<double> permissibleError;      ///< half-width, > 0
  ErrorShape errorShape = ErrorShape::Rectangular;
  double coverageFactor = 2.0;                 ///< for a certificate
  std::optional<double> rangeMin, rangeMax;
  std::optional<OwnCheck> check;               ///< gives correction and error where there is no certificate
  bool differenceOfTwo = false;                ///< e.g. runout max - min: own error cancels, graduation twice
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
  std::vector<double> readings;           ///< used readings only (no settling pull), SI
  InstrumentCapability instrument;
  double pullAngleWithin = 0;             ///< rad, half-width of the unknown angle off the line, 0 = none
  std::optional<PooledScatter> pooled;
  LimitBand limit;
  double confidence = 0.95;
  int planned = 3;                        ///< readings fixed beforehand, >= 1
  bool extended = false;                  ///< more readings were added after a look: the bar rises
  DecisionRule rule = DecisionRule::ConformanceProbability;
};

struct BudgetLine {
  std::string_view source;                 ///< "scatter", "graduation", "permissible_error", "angle", "own_check"
  double standardUncertainty = 0;
  std::optional<double> degreesOfFreedom;  ///< empty = infinite
};

enum class Consistency { TooFew, Consistent, RangeTooWide, Outlier, InconsistentMedianUsed };
[[nodiscard]] std::string_view word(Consistency consistency);

enum class AdviceCode { MoreReadings, FinerInstrument, MoreCannotHelp, CheckInstrument, RepeatInconsistent, OutOfRange, Settled };
[[nodiscard]] std::string_view word(AdviceCode code);
struct Advice {
  AdviceCode code;
  std::optional<int> readings;        ///< how many more would probably decide
  std::optional<double> graduation;   ///< the graduation that would decide, SI
};

struct SeriesOutcome {
  int used = 0;
  double mean = 0, scatter = 0;            ///< uncorrected mean (median where inconsistent), s (0 for one reading)
  double correctionFactor = 1, correctionOffset = 0;
  double correctedMean = 0;
  std::vector<BudgetLine> budget;
  double standardUncertainty = 0;
  std::optional<double> degreesOfFreedom;  ///< empty = infinite
  double coverageFactor = 2, expandedUncertainty = 0;
  std::optional<double> conformanceProbability;  ///< empty where there is no limit
  double bar = 0.95;                       ///< the probability asked for, after extension 0.975 / 0.987
  Verdict verdict = Verdict::NoLimit;
  Verdict decisionSoFar = Verdict::NoLimit;  ///< what it would be if this were the planned number
  LimitSide side = LimitSide::None;
  Consistency consistency = Consistency::TooFew;
  std::vector<Advice> advice;
};

/// The whole chain: mean, correction, budget, effective degrees of freedom, decision, advice.
/// Errors: Missing "measure.no_readings"; OutOfRange "measure.not_positive" (field named),
/// "measure.not_finite", "measure.empty_limit" (min > max), "measure.one_reading_needs_scatter" is NOT an
/// error: one reading without pooled scatter is Provisional/Undecided with advice.
[[nodiscard]] Result<SeriesOutcome> evaluateSeries(const SeriesInput& input);

}  // namespace sw
