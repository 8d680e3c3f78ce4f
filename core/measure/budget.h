// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>

#include "base/result.h"
#include "measure/distributions.h"

// METHOD CARD: combining uncertainties, effective degrees of freedom, coverage
// Formula: u_c^2 = sum (c_i u_i)^2 + 2 sum_{i<j} c_i c_j u_i u_j r_ij;
//   nu_eff = u_c^4 / sum((c_i u_i)^4 / nu_i), infinite terms dropped (Welch-Satterthwaite);
//   k = t_{(1+p)/2}(nu_eff); U = k u_c.
//   Weighted mean: weights 1 / u_i^2, u = 1 / sqrt(sum 1 / u_i^2), chi^2 = sum ((x_i - x) / u_i)^2.
// Source: JCGM 100:2008 5.1, 5.2, G.4 (from memory).
// nu_eff stays a real number: rounding it down changes k in the third digit.
// Assumptions: linear in the inputs over their uncertainty; terms with finite nu uncorrelated.
// When not to use: if one rectangular term outweighs the rest, k from t overstates (rectangle 1.65,
//   trapezoid 1.83); see type_b.h.
// Degenerate cases: no component, or all zero: u = 0 with infinite nu; full correlation may give 0.
// Reference test: tests/core/measure/budget_test.cpp.

namespace sw::measure {

struct Component {
  double standardUncertainty = 0;  ///< >= 0
  DegreesOfFreedom degreesOfFreedom;
  double sensitivity = 1;
};

/// Correlation r between two components, by index.
struct Correlation {
  std::size_t first = 0;
  std::size_t second = 0;
  double coefficient = 0;  ///< -1 ... 1
};

struct Combined {
  double standardUncertainty = 0;
  DegreesOfFreedom degreesOfFreedom;
};

/// Independent components.
[[nodiscard]] Combined combine(std::span<const Component> components);
/// With correlations. Errors: OutOfRange "measure.bad_correlation" for an index or r out of range.
[[nodiscard]] Result<Combined> combine(std::span<const Component> components,
                                       std::span<const Correlation> correlations);

/// Two-sided factor: t_{(1+p)/2}(nu), nu real or infinite.
[[nodiscard]] double coverageFactor(double probability, DegreesOfFreedom nu);

struct ValueWithUncertainty {
  double value = 0;
  double standardUncertainty = 0;  ///< > 0
};

struct WeightedMean {
  double value = 0;
  double standardUncertainty = 0;
  double chiSquared = 0;
  double degreesOfFreedom = 0;
};
/// Independent results of one quantity. Errors: Missing "measure.no_readings"; OutOfRange
/// "measure.not_positive" where an uncertainty is not positive.
[[nodiscard]] Result<WeightedMean> weightedMean(std::span<const ValueWithUncertainty> results);

}  // namespace sw::measure
