// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "base/result.h"
#include "measure/distributions.h"

// METHOD CARD: the straight line through points of equal weight
// Formula: y = a + k x; k = Sxy / Sxx, a = ym - k xm about the centre, s^2 = SSR / (n - 2),
//   u(k) = s / sqrt(Sxx), u(a) = s sqrt(1/n + xm^2 / Sxx), r(a, k) = -xm / sqrt(Sxx) / sqrt(1/n +
//   xm^2 / Sxx); line at x: u = s sqrt(1/n + (x - xm)^2 / Sxx), one new reading adds s^2.
//   Inverse: x = (y0 - a) / k, u = u(line at x) / |k|, with the target's own u(y0) in quadrature.
// Source: JCGM 100:2008 H.3 (from memory); checked on NIST Norris (StRD).
// Assumptions: x without error, y of equal scatter, independent.
// Valid range: from 3 points with at least two different x. x is centred before summing, so that
//   large offsets lose no digits.
// Degenerate cases: two points leave no scatter to judge by: refused, never 0; all x equal:
//   refused; k = 0 has no inverse.
// Reference test: tests/core/measure/straight_line_test.cpp.

namespace sw::measure {

struct LinePoint {
  double x = 0;
  double y = 0;
};

struct LineEstimate {
  double value = 0;
  double standardUncertainty = 0;     ///< of the line
  double standardUncertaintyNew = 0;  ///< of one new reading
};

struct StraightLine {
  double intercept = 0, slope = 0;
  double interceptUncertainty = 0, slopeUncertainty = 0;
  double correlation = 0;  ///< of intercept and slope
  double scatter = 0;      ///< s
  double squares = 0;      ///< SSR, of the residuals
  double squaresOfRegression = 0;
  double degreesOfFreedom = 0;  ///< n - 2
  double centre = 0;            ///< mean x
  double spread = 0;            ///< Sxx
  double count = 0;

  [[nodiscard]] LineEstimate at(double x) const;
  /// Share of the sum of squares that the line explains; F of the regression.
  [[nodiscard]] double determination() const;
  [[nodiscard]] double fisher() const;
};

/// Errors: Degenerate "line.too_few" (fewer than 3 points), "line.one_place" (all x equal);
/// OutOfRange "measure.not_finite".
[[nodiscard]] Result<StraightLine> fitLine(std::span<const LinePoint> points);

/// The x at which the line reaches a value known with `valueUncertainty`. Errors: Degenerate
/// "line.flat".
[[nodiscard]] Result<LineEstimate> placeOf(const StraightLine& line, double value,
                                           double valueUncertainty);

}  // namespace sw::measure
