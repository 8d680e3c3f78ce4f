// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/budget.h"

#include <algorithm>
#include <cmath>

namespace sw::measure {

namespace {

double contribution(const Component& component) {
  return component.sensitivity * component.standardUncertainty;
}

DegreesOfFreedom effectiveDegrees(std::span<const Component> components, double combined) {
  double sum = 0;
  for (const Component& component : components) {
    const DegreesOfFreedom nu = component.degreesOfFreedom;
    if (!nu || std::isinf(*nu)) continue;
    sum += std::pow(contribution(component), 4) / *nu;
  }
  if (!(sum > 0)) return std::nullopt;
  return std::pow(combined, 4) / sum;
}

}  // namespace

Combined combine(std::span<const Component> components) {
  double squares = 0;
  for (const Component& component : components) {
    squares += contribution(component) * contribution(component);
  }
  const double u = std::sqrt(squares);
  return {u, effectiveDegrees(components, u)};
}

Result<Combined> combine(std::span<const Component> components,
                         std::span<const Correlation> correlations) {
  double squares = 0;
  for (const Component& component : components) {
    squares += contribution(component) * contribution(component);
  }
  for (const Correlation& pair : correlations) {
    const bool indexed = pair.first < components.size() && pair.second < components.size();
    if (!indexed || pair.first == pair.second || !(std::abs(pair.coefficient) <= 1)) {
      return fail(ErrorCode::OutOfRange, "measure.bad_correlation", "correlation");
    }
    squares += 2 * contribution(components[pair.first]) * contribution(components[pair.second]) *
               pair.coefficient;
  }
  const double u = std::sqrt(std::max(0.0, squares));
  return Combined{u, effectiveDegrees(components, u)};
}

double coverageFactor(double probability, DegreesOfFreedom nu) {
  return studentQuantile((1 + probability) / 2, nu);
}

Result<WeightedMean> weightedMean(std::span<const ValueWithUncertainty> results) {
  if (results.empty()) return fail(ErrorCode::Missing, "measure.no_readings", "readings");
  double weights = 0;
  double sum = 0;
  for (const ValueWithUncertainty& result : results) {
    if (!(result.standardUncertainty > 0)) {
      return fail(ErrorCode::OutOfRange, "measure.not_positive", "standard_uncertainty");
    }
    const double weight = 1 / (result.standardUncertainty * result.standardUncertainty);
    weights += weight;
    sum += weight * result.value;
  }
  WeightedMean mean{sum / weights, 1 / std::sqrt(weights), 0,
                    static_cast<double>(results.size() - 1)};
  for (const ValueWithUncertainty& result : results) {
    mean.chiSquared += std::pow((result.value - mean.value) / result.standardUncertainty, 2);
  }
  return mean;
}

}  // namespace sw::measure
