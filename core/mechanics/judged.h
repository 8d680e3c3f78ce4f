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

template <class Q>
[[nodiscard]] Judged<Q> judged(const measure::Estimate& estimate, const Limits<Q>& limits,
                               double confidence) {
  LimitBand band;
  if (limits.min) band.min = limits.min->si();
  if (limits.max) band.max = limits.max->si();
  const JudgedNumber number = judgedNumber(estimate, band, confidence);
  return {Q::fromSi(estimate.value),
          Q::fromSi(estimate.standardUncertainty),
          estimate.degreesOfFreedom,
          number.coverageFactor,
          Q::fromSi(number.expandedUncertainty),
          number.conformanceProbability,
          number.verdict,
          number.side};
}

}  // namespace sw::mechanics
