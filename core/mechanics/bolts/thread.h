// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: the diameters and the stress area of a screw thread
// Formula: H = P sqrt(3) / 2; d2 = d - 3/4 H; D1 = d - 5/4 H (of the nut).
//   Metric: d3 = d - 17/12 H; d0 = (d2 + d3) / 2, which is d - 0.938194 P; As = pi/4 d0^2.
//   Inch: root of the UNR thread d - 1.190785 P; As = pi/4 (d - 0.974279 P)^2, 0.974279 being
//   9 sqrt(3) / 16; d0 = d - 0.974279 P, so that As = pi/4 d0^2 in both.
// Source: ISO 68-1 and ISO 724 (d2, D1), ISO 898-1 (d3, As), ASME B1.1 (inch); from memory, held
//   against published values of these standards.
// Trap: the metric constant on an inch thread makes its area 0.8 to 1.8 % too large; ISO 724 has no
//   d3; tables of areas in circulation hold errors, so areas are computed.
// Valid range: 60 degree threads with d / 200 <= P <= d / 4, which holds all made. Nominal size:
// tolerances are left out. When not to use: Whitworth (55 degrees), BA, trapezoidal and pipe
// threads. Accuracy: exact formulas; published areas are rounded to three digits. Reference test:
// tests/core/mechanics/bolts/thread_test.cpp.

namespace sw::mechanics {

enum class ThreadStandard { IsoMetric, UnifiedInch };
/// Where the pitch comes from: written, or looked up in a series.
enum class PitchFrom { Designation, CoarseSeries, FineSeries };

struct Thread {
  ThreadStandard standard = ThreadStandard::IsoMetric;
  Length diameter;  ///< nominal
  Length pitch;
  PitchFrom pitchFrom = PitchFrom::Designation;
  std::string name;  ///< "M10x1.25", "7/16-20 UNF"
};

struct ThreadGeometry {
  Length pitchDiameter;   ///< d2
  Length nutMinor;        ///< D1, of the internal thread
  Length root;            ///< d3 of a metric bolt, UNR root of an inch bolt
  Length stressDiameter;  ///< d0
  Area stressArea;        ///< As
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (field diameter or pitch),
/// "bolts.bad_pitch" (details: text).
[[nodiscard]] Result<ThreadGeometry> threadGeometry(const Thread& thread);

[[nodiscard]] constexpr Area squareMillimetres(double value) {
  return Area::fromSi(value / 1e6);
}
[[nodiscard]] constexpr double inSquareMillimetres(Area value) {
  return value.si() * 1e6;
}

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::ThreadStandard> {
  static constexpr std::array<std::pair<mechanics::ThreadStandard, std::string_view>, 2> table{
      {{mechanics::ThreadStandard::IsoMetric, "iso_metric"},
       {mechanics::ThreadStandard::UnifiedInch, "unified_inch"}}};
};

template <>
struct Words<mechanics::PitchFrom> {
  static constexpr std::array<std::pair<mechanics::PitchFrom, std::string_view>, 3> table{
      {{mechanics::PitchFrom::Designation, "designation"},
       {mechanics::PitchFrom::CoarseSeries, "coarse_series"},
       {mechanics::PitchFrom::FineSeries, "fine_series"}}};
};

}  // namespace sw
