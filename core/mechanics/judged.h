// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "measure/decision.h"
#include "units/quantity.h"

// A value with its uncertainty, held against a limit by the one decision rule of measure/decision.h
// (conformance probability). The rules are there; this only keeps the types of the quantities.

namespace sw::mechanics {

template <class Q>
struct Limits {
  std::optional<Q> min, max;
};

template <class Q>
struct Judged {
  Q value;
  Q standardUncertainty;
  std::optional<double> degreesOfFreedom;  ///< empty = infinite
  double coverageFactor = 2;
  Q expandedUncertainty;
  std::optional<double> conformanceProbability;  ///< empty without a limit
  Verdict verdict = Verdict::NoLimit;
  LimitSide side = LimitSide::None;
};

struct JudgedNumber {
  double coverageFactor = 2;
  double expandedUncertainty = 0;
  std::optional<double> conformanceProbability;
  Verdict verdict = Verdict::NoLimit;
  LimitSide side = LimitSide::None;
};
[[nodiscard]] JudgedNumber judgedNumber(const measure::Estimate& estimate, const LimitBand& limit,
                                        double confidence);

/// Inside or outside by the value alone.
[[nodiscard]] LimitSide sideOfValue(double value, const LimitBand& limit);

template <class Q>
[[nodiscard]] LimitBand bandOf(const Limits<Q>& limits) {
  LimitBand band;
  if (limits.min) band.min = limits.min->si();
  if (limits.max) band.max = limits.max->si();
  return band;
}

template <class Q>
[[nodiscard]] Judged<Q> judged(const measure::Estimate& estimate, const Limits<Q>& limits,
                               double confidence) {
  const JudgedNumber number = judgedNumber(estimate, bandOf(limits), confidence);
  return {Q::fromSi(estimate.value),
          Q::fromSi(estimate.standardUncertainty),
          estimate.degreesOfFreedom,
          number.coverageFactor,
          Q::fromSi(number.expandedUncertainty),
          number.conformanceProbability,
          number.verdict,
          number.side};
}

/// A value whose scatter is not known: its uncertainty is a lower bound, so that no probability can
/// be told, and the answer is provisional.
template <class Q>
void takeAsProvisional(Judged<Q>& judged, const Limits<Q>& limits) {
  if (judged.verdict == Verdict::NoLimit) return;
  judged.conformanceProbability.reset();
  judged.side = sideOfValue(judged.value.si(), bandOf(limits));
  judged.verdict = Verdict::Provisional;
}

}  // namespace sw::mechanics
