// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "measure/decision.h"
#include "measure/series_budget.h"

// METHOD CARD: budget and decision of a series in one go, as it is or as it would be
// The verdict is Within, Outside, Undecided, InstrumentTooCoarse or NoLimit; whether it is
// provisional is the caller's to say. A coarse instrument replaces "undecided" only: it may still
// prove "outside". Formulas, source, assumptions: evaluation.h, decision.h. Reference test:
// tests/core/measure/evaluation_test.cpp, advice_test.cpp.

namespace sw::measure {

struct Judgement {
  std::vector<BudgetLine> lines;
  Estimate estimate;
  double bar = 0.95;
  bool tooCoarse = false;
  Decision decision;  ///< the decision by probability or guard band, before "too coarse"
  Verdict verdict = Verdict::NoLimit;
};

/// How many readings the judgement supposes and whether they were fixed beforehand.
struct Supposition {
  int readings = 1;
  SeriesPlan plan = SeriesPlan::FixedBeforehand;
};

/// Errors: as pullAngleFactor. More readings than the series has: same mean and scatter, more
/// degrees of freedom.
[[nodiscard]] Result<Judgement> judge(const SeriesInput& input, const SeriesCentre& centre,
                                      const Supposition& supposed);

}  // namespace sw::measure
