// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/judgement.h"

#include <algorithm>

namespace sw::measure {

namespace {

SeriesCentre supposing(const SeriesInput& input, SeriesCentre centre, int readings) {
  const int more = readings - static_cast<int>(input.readings.size());
  if (centre.scatter && more > 0) centre.scatter->degreesOfFreedom += more;
  return centre;
}

LimitSide sideByPosition(double value, const LimitBand& limit) {
  const Conformance at = conformance({value, 0, {}}, limit);
  return at.inside > 0 ? LimitSide::InsideLikely : LimitSide::OutsideLikely;
}

void decideInto(Judgement& judgement, const SeriesInput& input, bool scatterKnown,
                SeriesPlan plan) {
  if (!input.limit.any()) return;
  judgement.tooCoarse = instrumentTooCoarse(input.limit, instrumentUncertainty(judgement.lines),
                                            input.confidence, input.rule);
  if (scatterKnown) {
    judgement.decision = decide(judgement.estimate, input.limit, {judgement.bar, input.rule, plan});
  } else {
    judgement.decision.side = sideByPosition(judgement.estimate.value, input.limit);
  }
  judgement.verdict = judgement.decision.verdict;
  if (judgement.verdict == Verdict::Undecided && judgement.tooCoarse) {
    judgement.verdict = Verdict::InstrumentTooCoarse;
  }
}

}  // namespace

Result<Judgement> judge(const SeriesInput& input, const SeriesCentre& centre,
                        const Supposition& supposed) {
  const auto correction = correctionOf(input, centre.value);
  if (!correction) return failAs(correction);
  Judgement judgement;
  judgement.lines =
      budgetOf(input, supposing(input, centre, supposed.readings), *correction, supposed.readings);
  const Combined combined = combineLines(judgement.lines);
  judgement.estimate = {correction->angle.factor * (centre.value + correction->offset),
                        combined.standardUncertainty, combined.degreesOfFreedom};
  judgement.bar =
      decisionBar(input.confidence, std::max(supposed.readings, input.planned), supposed.plan);
  decideInto(judgement, input, centre.scatter.has_value(), supposed.plan);
  return judgement;
}

}  // namespace sw::measure
