// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/consistency.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "measure/distributions.h"

namespace sw::measure {

namespace {

constexpr int kGrubbsLeastReadings = 6;
/// Readings are decimal: 19.5 - 19.0 is one graduation although the doubles differ a little.
constexpr double kGraduationSlack = 1e-9;

double normalDensity(double x) {
  return std::exp(-x * x / 2) / std::sqrt(2 * std::numbers::pi);
}

struct RangeShare {
  double cumulative = 0;
  double density = 0;
};

/// Range w of n standard normals: P = n int phi(x) (Phi(x + w) - Phi(x))^(n-1) dx, and its
/// derivative. The trapezoid rule converges geometrically on such integrands; this step leaves
/// 1e-14.
RangeShare rangeShare(double w, int count) {
  constexpr double kStep = 0.2;
  constexpr int kSteps = 45;  // to 9 standard deviations on either side
  RangeShare share;
  for (int i = -kSteps; i <= kSteps; ++i) {
    const double x = i * kStep;
    const double inside = normalCdf(x + w) - normalCdf(x);
    const double others = std::pow(inside, count - 2) * normalDensity(x);
    share.cumulative += others * inside;
    share.density += others * normalDensity(x + w);
  }
  share.cumulative *= count * kStep;
  share.density *= count * (count - 1) * kStep;
  return share;
}

}  // namespace

double rangeFactor(int count, double probability) {
  double low = 0;
  double high = 20;
  double w = 3;
  for (int i = 0; i < 100; ++i) {
    const RangeShare share = rangeShare(w, count);
    const double excess = share.cumulative - probability;
    (excess < 0 ? low : high) = w;
    // Newton's step, or the middle where that leaves the bracket.
    double next = share.density > 0 ? w - excess / share.density : low;
    if (next <= low || next >= high) next = (low + high) / 2;
    if (std::abs(next - w) < 1e-13 * w) return next;
    w = next;
  }
  return w;
}

double largestAcceptedRange(int count, double repeatability) {
  return rangeFactor(count) * repeatability;
}

Result<Grubbs> grubbs(std::span<const double> readings) {
  if (readings.size() < 3) return fail(ErrorCode::OutOfRange, "measure.too_few", "readings");
  const auto series = describe(readings);
  if (!series) return failAs(series);
  if (!(series->standardDeviation.value_or(0) > 0)) {
    return fail(ErrorCode::Degenerate, "measure.no_scatter", "readings");
  }
  Grubbs result;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double g = std::abs(readings[i] - series->mean) / *series->standardDeviation;
    if (g > result.statistic) result = {g, i};
  }
  return result;
}

double grubbsCritical(int count, double alpha, Tail tail) {
  const double n = count;
  const double share = alpha / (tail == Tail::TwoSided ? 2 * n : n);
  const double t = studentQuantile(1 - share, n - 2);
  return (n - 1) / std::sqrt(n) * std::sqrt(t * t / (n - 2 + t * t));
}

bool grubbsApplies(const RepeatedReadings& series, double graduation) {
  return series.count >= kGrubbsLeastReadings &&
         series.range > 2 * graduation * (1 + kGraduationSlack);
}

ScatterTest scatterLargerThan(const Scatter& today, double sigma) {
  const double nu = today.degreesOfFreedom;
  const double statistic = nu * std::pow(today.standardDeviation / sigma, 2);
  return {statistic, chiSquaredQuantile(0.95, nu), chiSquaredCdf(statistic, nu)};
}

Interval scatterInterval(const Scatter& scatter, double probability) {
  const double nu = scatter.degreesOfFreedom;
  const double s = scatter.standardDeviation;
  return {s * std::sqrt(nu / chiSquaredQuantile((1 + probability) / 2, nu)),
          s * std::sqrt(nu / chiSquaredQuantile((1 - probability) / 2, nu))};
}

Result<VarianceRatio> compareScatter(const Scatter& first, const Scatter& second, double alpha) {
  if (!(second.standardDeviation > 0)) return fail(ErrorCode::Degenerate, "measure.no_scatter");
  const double nu1 = first.degreesOfFreedom;
  const double nu2 = second.degreesOfFreedom;
  VarianceRatio result;
  result.statistic = std::pow(first.standardDeviation / second.standardDeviation, 2);
  result.cumulative = fisherCdf(result.statistic, nu1, nu2);
  result.twoSidedProbability =
      2 * std::min(result.cumulative, fisherUpperTail(result.statistic, nu1, nu2));
  result.acceptance = {fisherQuantile(alpha / 2, nu1, nu2),
                       fisherQuantile(1 - alpha / 2, nu1, nu2)};
  return result;
}

Result<MeanDifference> compareMeans(const Sample& first, const Sample& second) {
  const double v1 = first.standardDeviation * first.standardDeviation / first.count;
  const double v2 = second.standardDeviation * second.standardDeviation / second.count;
  if (!(v1 + v2 > 0)) return fail(ErrorCode::Degenerate, "measure.no_scatter");
  MeanDifference result;
  result.statistic = (first.mean - second.mean) / std::sqrt(v1 + v2);
  result.degreesOfFreedom =
      (v1 + v2) * (v1 + v2) / (v1 * v1 / (first.count - 1) + v2 * v2 / (second.count - 1));
  result.twoSidedProbability = 2 * studentCdf(-std::abs(result.statistic), result.degreesOfFreedom);
  return result;
}

Result<GroupTest> compareGroups(std::span<const std::span<const double>> groups) {
  std::size_t total = 0;
  long double sum = 0;
  for (const auto& group : groups) {
    if (group.empty()) return fail(ErrorCode::OutOfRange, "measure.too_few", "readings");
    total += group.size();
    for (double x : group) sum += static_cast<long double>(x);
  }
  if (groups.size() < 2 || total <= groups.size()) {
    return fail(ErrorCode::OutOfRange, "measure.too_few", "readings");
  }
  const long double grand = sum / static_cast<long double>(total);
  long double between = 0;
  long double within = 0;
  for (const auto& group : groups) {
    long double mean = 0;
    for (double x : group) mean += static_cast<long double>(x) - grand;
    mean /= static_cast<long double>(group.size());
    between += static_cast<long double>(group.size()) * mean * mean;
    for (double x : group) {
      const long double deviation = static_cast<long double>(x) - grand - mean;
      within += deviation * deviation;
    }
  }
  if (!(within > 0)) return fail(ErrorCode::Degenerate, "measure.no_scatter", "readings");
  GroupTest result;
  result.degreesBetween = static_cast<double>(groups.size() - 1);
  result.degreesWithin = static_cast<double>(total - groups.size());
  const double meanSquare = static_cast<double>(within) / result.degreesWithin;
  result.statistic = static_cast<double>(between) / result.degreesBetween / meanSquare;
  result.standardDeviationWithin = std::sqrt(meanSquare);
  result.critical = fisherQuantile(0.95, result.degreesBetween, result.degreesWithin);
  return result;
}

}  // namespace sw::measure
