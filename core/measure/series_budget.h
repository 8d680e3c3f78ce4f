// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "measure/budget.h"
#include "measure/evaluation.h"
#include "measure/series_centre.h"
#include "measure/type_b.h"

// METHOD CARD: the budget of a series; formulas and source in evaluation.h
// The graduation is counted once: a coarse scale repeats its reading error, so it is not divided by
// sqrt(n). A check by the user that covers the readings replaces the permissible error. A
// difference of two readings of one instrument: its own error cancels, the graduation counts twice,
// a stated local error stays. Reference test: tests/core/measure/evaluation_test.cpp (budgets 1 to
// 4).

namespace sw::measure {

/// y = factor * (x + offset).
struct Correction {
  AngleFactor angle;
  double offset = 0;
};
/// The own check counts only where it covers the centre of the series.
[[nodiscard]] bool ownCheckCounts(const InstrumentCapability& instrument, double centre);
[[nodiscard]] bool instrumentErrorKnown(const InstrumentCapability& instrument, double centre);
/// Errors: as pullAngleFactor.
[[nodiscard]] Result<Correction> correctionOf(const SeriesInput& input, double centre);

/// The lines, `readings` being how many the scatter is averaged over.
[[nodiscard]] std::vector<BudgetLine> budgetOf(const SeriesInput& input, const SeriesCentre& centre,
                                               const Correction& correction, int readings);
[[nodiscard]] Combined combineLines(const std::vector<BudgetLine>& lines);
/// Root of squares of the lines that belong to the instrument alone: graduation and its error.
[[nodiscard]] double instrumentUncertainty(const std::vector<BudgetLine>& lines);
/// Of the scatter line and of all others; no scatter line counts as 0.
[[nodiscard]] double scatterUncertainty(const std::vector<BudgetLine>& lines);
[[nodiscard]] double otherUncertainty(const std::vector<BudgetLine>& lines);

}  // namespace sw::measure
