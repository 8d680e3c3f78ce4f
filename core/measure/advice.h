// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "measure/judgement.h"

// METHOD CARD: what would decide
// More readings: the smallest total, up to 10, at which the decision would fall with the present
// mean
//   and scatter; beyond the planned number with the raised bar. None when u_A < u_B / 3, or when no
//   number up to 10 does it: then more readings cannot help.
// Finer instrument: the coarsest graduation of the steps 1, 2, 5 (in SI; degrees for angles, km/h
// for
//   speeds) below the present one, down to a thousandth of it, with which the decision would fall,
//   permissible error taken in proportion. For an instrument that is too coarse: with which the
//   band is at least 4 u_B wide (C_m >= 1).
// Source: JCGM 106:2012 (from memory) for C_m; the rest common practice, no source.
// Assumptions: the mean and the scatter stay as they are. It is advice, never a promise.
// Reference test: tests/core/measure/advice_test.cpp.

namespace sw::measure {

inline constexpr int kMostReadings = 10;

/// Total number of readings at which the series would probably be decided; empty = none helps.
[[nodiscard]] std::optional<int> readingsToDecide(const SeriesInput& input,
                                                  const SeriesCentre& centre);
/// Graduation, SI, with which the present readings would probably decide; empty = none helps.
[[nodiscard]] std::optional<double> graduationToDecide(const SeriesInput& input,
                                                       const SeriesCentre& centre);

/// All advice, the most urgent first. `outcome` is complete but for its advice.
[[nodiscard]] std::vector<Advice> adviceFor(const SeriesInput& input, const SeriesCentre& centre,
                                            const SeriesOutcome& outcome);

}  // namespace sw::measure
