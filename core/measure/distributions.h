// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

// METHOD CARD: distribution functions and quantiles
// Formula: normal, Student t, chi-squared and F distribution functions and their inverses.
// Source: Boost.Math (the only place of the program that uses it).
// Valid range: degrees of freedom > 0, real, never rounded to a whole number; for t an empty value
//   or infinity means the normal distribution. Probabilities 0..1.
// Degenerate cases: a probability at or below 0 gives the lower end of the range (minus infinity,
// or
//   0 for chi-squared and F), at or above 1 plus infinity. Nothing here throws.
// Accuracy: about 1e-14 relative; checked to the digits of the printed tables.
// Reference test: tests/core/measure/distributions_test.cpp (tables of JCGM 100 G.2, JCGM 106).

namespace sw::measure {

/// Effective degrees of freedom; empty = infinitely many.
using DegreesOfFreedom = std::optional<double>;

[[nodiscard]] double normalCdf(double x);
[[nodiscard]] double normalQuantile(double probability);

/// Student t; for the upper tail use studentCdf(-x, nu), which keeps its digits.
[[nodiscard]] double studentCdf(double x, DegreesOfFreedom nu);
[[nodiscard]] double studentQuantile(double probability, DegreesOfFreedom nu);

[[nodiscard]] double chiSquaredCdf(double x, double nu);
[[nodiscard]] double chiSquaredUpperTail(double x, double nu);
[[nodiscard]] double chiSquaredQuantile(double probability, double nu);

[[nodiscard]] double fisherCdf(double x, double nu1, double nu2);
[[nodiscard]] double fisherUpperTail(double x, double nu1, double nu2);
[[nodiscard]] double fisherQuantile(double probability, double nu1, double nu2);

/// Of a share with weights above 0 for and against it.
[[nodiscard]] double betaQuantile(double probability, double weightFor, double weightAgainst);

}  // namespace sw::measure
