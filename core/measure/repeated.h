// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include "base/result.h"

// METHOD CARD: repeated readings (type A evaluation)
// Formula: mean = sum x / n; s^2 = sum (x - mean)^2 / (n - 1); u_A = s / sqrt(n); nu = n - 1;
//   lag-1 autocorrelation r1 = sum (x_t - m)(x_{t+1} - m) / sum (x_t - m)^2;
//   pooled s_p = sqrt(sum nu_i s_i^2 / sum nu_i), nu = sum nu_i.
// Source: JCGM 100:2008 4.2 (from memory); NIST StRD for r1.
// Method: two passes with a correction of the mean; the shortcut sum x^2 - (sum x)^2 / n loses all
//   digits on large equal offsets and is not used anywhere.
// Assumptions: independent readings of one unchanging quantity. A large positive r1 means drift
// (grease
//   that warms up): s / sqrt(n) is then too small.
// Degenerate cases: one reading has no s; equal readings have s = 0 and an undefined r1 (empty).
// Accuracy: the univariate NIST sets to 1e-13 relative or as stated in the test.
// Reference test: tests/core/measure/repeated_test.cpp.

namespace sw::measure {

struct RepeatedReadings {
  int count = 0;
  double mean = 0;
  std::optional<double> standardDeviation;  ///< empty for one reading
  double range = 0;                         ///< largest minus smallest

  /// s / sqrt(n), empty for one reading.
  [[nodiscard]] std::optional<double> standardUncertainty() const;
  /// n - 1, empty for one reading.
  [[nodiscard]] std::optional<double> degreesOfFreedom() const;
};

/// Errors: Missing "measure.no_readings"; OutOfRange "measure.not_finite".
[[nodiscard]] Result<RepeatedReadings> describe(std::span<const double> readings);

/// The middle value; the mean of the two middle ones for an even count. Needs at least one reading.
[[nodiscard]] double median(std::span<const double> readings);

/// Lag-1 autocorrelation; empty for fewer than two readings or equal readings.
[[nodiscard]] std::optional<double> lagOneCorrelation(std::span<const double> readings);

/// A standard deviation and what it rests on.
struct Scatter {
  double standardDeviation = 0;
  double degreesOfFreedom = 0;
};

/// Several estimates of one repeatability taken together.
/// Errors: Degenerate "measure.nothing_to_pool" where no degrees of freedom are left.
[[nodiscard]] Result<Scatter> pool(std::span<const Scatter> estimates);

/// How uncertain s itself is from n readings: sigma(s) / E(s) of normal readings, 0.52 for n = 3.
/// Source: JCGM 100:2008 table E.1 (from memory). Needs n >= 2.
[[nodiscard]] double relativeSpreadOfScatter(int count);

}  // namespace sw::measure
