// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>

#include "measure/evaluation.h"
#include "measure/repeated.h"

// METHOD CARD: the value a series stands for, and its scatter
// Steps: (1) With a pooled scatter s_r (at least d / 2) the range rule is applied. In agreement:
// mean, and
//   the series' own scatter is pooled with the past one. Range too wide: below 5 readings the mean
//   with the scatter of today alone, and more readings are asked for; from 5 on the median with u_A
//   = 1.2 s / sqrt(n). (2) Without a pooled scatter there is nothing to hold the range against:
//   mean and own scatter. (3) From 6 readings on, where the range exceeds 2 graduations, Grubbs'
//   test at 5 % marks a reading. No reading is ever dropped.
// Source: ISO 5725-6 (from memory) for the range; the rest common practice, no source; 1.2 is the
// spread
//   of the median against the mean (simulation: 1.16, 1.09, 1.20, 1.21 for 3, 4, 5, 7).
// Reference test: tests/core/measure/series_centre_test.cpp.

namespace sw::measure {

struct SeriesCentre {
  double value = 0;
  std::optional<Scatter> scatter;  ///< empty: one reading and nothing pooled
  double spreadFactor = 1;         ///< 1.2 where the median stands for the series
  Consistency consistency = Consistency::TooFew;
  std::optional<std::size_t> outlier;
};

/// `series` describes input.readings. Never fails for an input that was validated.
[[nodiscard]] SeriesCentre centreOf(const SeriesInput& input, const RepeatedReadings& series);

}  // namespace sw::measure
