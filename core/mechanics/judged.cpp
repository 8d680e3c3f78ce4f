// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/judged.h"

#include "measure/budget.h"

namespace sw::mechanics {

JudgedNumber judgedNumber(const measure::Estimate& estimate, const LimitBand& limit,
                          double confidence) {
  JudgedNumber number;
  number.coverageFactor = measure::coverageFactor(confidence, estimate.degreesOfFreedom);
  number.expandedUncertainty = number.coverageFactor * estimate.standardUncertainty;
  if (!limit.any()) return number;
  const measure::Decision decision = measure::decide(estimate, limit, {.bar = confidence});
  number.conformanceProbability = decision.conformance.inside;
  number.verdict = decision.verdict;
  number.side = decision.side;
  return number;
}

LimitSide sideOfValue(double value, const LimitBand& limit) {
  const measure::Conformance at = measure::conformance({value, 0, {}}, limit);
  return at.inside > 0 ? LimitSide::InsideLikely : LimitSide::OutsideLikely;
}

}  // namespace sw::mechanics
