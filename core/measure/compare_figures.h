// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/typed_quantity.h"

// METHOD CARD: do two figures of one limit, given in two units, agree?
// Formula: each figure stands for the interval of all values that round to it, x +/- half of its
// last
//   typed place ("25" is 24.5 to 25.5, "25.0" is 24.95 to 25.05). They agree when the two intervals
//   meet; the intervals are closed, so touching counts as agreeing.
// Source: common practice, no source; the factors are exact definitions (units/quantity.h).
// Assumptions: each figure was rounded to the places it shows. A figure rounded more coarsely (to
// the
//   nearest 5, say) may be queried although it was meant: it is a query, not an error.
// When not to use: a maximum in one unit against a minimum in the other.
// Degenerate cases: the same figure twice agrees; a kind or unit that differs is an error.
// Reference test: tests/core/measure/compare_figures_test.cpp.

namespace sw {

enum class FigureAgreement { Agree, Query };

struct FigureComparison {
  FigureAgreement agreement = FigureAgreement::Agree;
  double firstInSecondUnit = 0;  ///< the first figure converted, unrounded, in the second's unit
  double secondInFirstUnit = 0;
  /// Figures that would agree, rounded to the places the person typed: what should stand beside the
  /// first (in the second's unit) and beside the second (in the first's unit).
  TypedQuantity besideFirst;
  TypedQuantity besideSecond;
  double gapSi = 0;  ///< distance between the intervals, SI; 0 where they meet
};

/// Errors: InvalidInput "compare.kind_differs" (details: first, second); InvalidInput
/// "units.unknown_unit" (detail: unit).
[[nodiscard]] Result<FigureComparison> compareFigures(const TypedQuantity& first,
                                                      const TypedQuantity& second);

}  // namespace sw
