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

}  // namespace sw::mechanics
