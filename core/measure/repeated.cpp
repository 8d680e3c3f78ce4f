// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/repeated.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sw::measure {

namespace {

struct Moments {
  long double mean = 0;
  long double squares = 0;  ///< sum of squared deviations from the mean
};

Moments momentsOf(std::span<const double> readings) {
  const auto n = static_cast<long double>(readings.size());
  long double sum = 0;
  for (double x : readings) sum += static_cast<long double>(x);
  const long double first = sum / n;
  long double rest = 0;
  for (double x : readings) rest += static_cast<long double>(x) - first;
  Moments result{first + rest / n, 0};
  for (double x : readings) {
    const long double deviation = static_cast<long double>(x) - result.mean;
    result.squares += deviation * deviation;
  }
  return result;
}

}  // namespace

std::optional<double> RepeatedReadings::standardUncertainty() const {
  if (!standardDeviation) return std::nullopt;
  return *standardDeviation / std::sqrt(static_cast<double>(count));
}

std::optional<double> RepeatedReadings::degreesOfFreedom() const {
  if (!standardDeviation) return std::nullopt;
  return static_cast<double>(count - 1);
}

Result<RepeatedReadings> describe(std::span<const double> readings) {
  if (readings.empty()) return fail(ErrorCode::Missing, "measure.no_readings", "readings");
  const auto finite = [](double x) { return std::isfinite(x); };
  if (!std::all_of(readings.begin(), readings.end(), finite)) {
    return fail(ErrorCode::OutOfRange, "measure.not_finite", "readings");
  }
  const auto [low, high] = std::minmax_element(readings.begin(), readings.end());
  const Moments moments = momentsOf(readings);
  RepeatedReadings result;
  result.count = static_cast<int>(readings.size());
  result.range = *high - *low;
  // Equal readings have exactly their own value as mean and no scatter, whatever the rounding did.
  result.mean = result.range == 0 ? *low : static_cast<double>(moments.mean);
  if (result.count > 1) {
    const auto nu = static_cast<long double>(result.count - 1);
    result.standardDeviation =
        result.range == 0 ? 0.0 : static_cast<double>(std::sqrt(moments.squares / nu));
  }
  return result;
}

double median(std::span<const double> readings) {
  std::vector<double> sorted(readings.begin(), readings.end());
  std::sort(sorted.begin(), sorted.end());
  const std::size_t middle = sorted.size() / 2;
  if (sorted.size() % 2 == 1) return sorted[middle];
  return sorted[middle - 1] + (sorted[middle] - sorted[middle - 1]) / 2;
}

std::optional<double> lagOneCorrelation(std::span<const double> readings) {
  if (readings.size() < 2) return std::nullopt;
  const auto [low, high] = std::minmax_element(readings.begin(), readings.end());
  if (*low == *high) return std::nullopt;
  const Moments moments = momentsOf(readings);
  long double products = 0;
  for (std::size_t i = 0; i + 1 < readings.size(); ++i) {
    products += (static_cast<long double>(readings[i]) - moments.mean) *
                (static_cast<long double>(readings[i + 1]) - moments.mean);
  }
  return static_cast<double>(products / moments.squares);
}

Result<Scatter> pool(std::span<const Scatter> estimates) {
  double weighted = 0;
  double nu = 0;
  for (const Scatter& estimate : estimates) {
    weighted += estimate.degreesOfFreedom * estimate.standardDeviation * estimate.standardDeviation;
    nu += estimate.degreesOfFreedom;
  }
  if (!(nu > 0)) return fail(ErrorCode::Degenerate, "measure.nothing_to_pool", "pooled_scatter");
  return Scatter{std::sqrt(weighted / nu), nu};
}

double relativeSpreadOfScatter(int count) {
  // E(s) = c4 sigma, E(s^2) = sigma^2.
  const double n = count;
  const double c4 =
      std::sqrt(2.0 / (n - 1)) * std::exp(std::lgamma(n / 2) - std::lgamma((n - 1) / 2));
  return std::sqrt(1 - c4 * c4) / c4;
}

}  // namespace sw::measure
