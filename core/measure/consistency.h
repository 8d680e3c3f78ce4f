// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>

#include "base/result.h"
#include "measure/repeated.h"

// METHOD CARD: do the readings agree?
// Range rule: n readings of repeatability s_r agree when max - min <= f(n) s_r, f(n) the 95 % point
// of
//   the range of n standard normals. Source: ISO 5725-6 (from memory); f by integration.
// Grubbs: G = max|x - mean| / s against (n-1)/sqrt(n) sqrt(t^2 / (n - 2 + t^2)),
//   t = t_{1-alpha/(2n)}(n-2) two-sided, t_{1-alpha/n} one-sided. Source: ASTM E178 (restated
//   tables). When NOT to use: fewer than 6 readings, or a range of 2 graduations or less. With
//   three readings of which two are equal G is always 2 / sqrt(3), with n - 1 equal always (n - 1)
//   / sqrt(n), both above the limit: on a coarse scale it would call one graduation an outlier.
// Chi-squared: nu s^2 / sigma^2 against its 95 % point: is today's scatter larger than usual?
// F: s1^2 / s2^2, two-sided: do two sides scatter alike? Then Welch's t on the means.
// One-way F: mean square between groups over mean square within. All: NIST/SEMATECH handbook.
// Degenerate cases: no scatter gives "measure.no_scatter"; too few readings "measure.too_few".
// Reference test: tests/core/measure/consistency_test.cpp.

namespace sw::measure {

/// f(n): the range of n >= 2 standard normal values is below it with this probability.
[[nodiscard]] double rangeFactor(int count, double probability = 0.95);
/// Largest range that n readings of this repeatability may show.
[[nodiscard]] double largestAcceptedRange(int count, double repeatability);

enum class Tail { OneSided, TwoSided };

struct Grubbs {
  double statistic = 0;
  std::size_t index = 0;  ///< the reading farthest from the mean
};
/// Errors: OutOfRange "measure.too_few" below 3 readings; Degenerate "measure.no_scatter".
[[nodiscard]] Result<Grubbs> grubbs(std::span<const double> readings);
[[nodiscard]] double grubbsCritical(int count, double alpha, Tail tail);
/// Whether Grubbs' test says anything for this series on this scale (see the card).
[[nodiscard]] bool grubbsApplies(const RepeatedReadings& series, double graduation);

struct ScatterTest {
  double statistic = 0;   ///< nu s^2 / sigma^2
  double critical = 0;    ///< 95 % point
  double cumulative = 0;  ///< distribution function at the statistic
  [[nodiscard]] bool larger() const { return statistic > critical; }
};
/// Is the scatter of `today` larger than sigma (> 0)?
[[nodiscard]] ScatterTest scatterLargerThan(const Scatter& today, double sigma);

struct Interval {
  double low = 0;
  double high = 0;
};
/// Interval that holds the true standard deviation with this probability.
[[nodiscard]] Interval scatterInterval(const Scatter& scatter, double probability);

struct VarianceRatio {
  double statistic = 0;   ///< s1^2 / s2^2
  double cumulative = 0;  ///< distribution function at the statistic
  double twoSidedProbability = 0;
  Interval acceptance;  ///< points between which the two scatter alike (two-sided)
  [[nodiscard]] bool alike() const {
    return statistic >= acceptance.low && statistic <= acceptance.high;
  }
};
/// Errors: Degenerate "measure.no_scatter" when the second scatter is 0.
[[nodiscard]] Result<VarianceRatio> compareScatter(const Scatter& first, const Scatter& second,
                                                   double alpha = 0.05);

struct Sample {
  double mean = 0;
  double standardDeviation = 0;
  int count = 0;  ///< >= 2
};
struct MeanDifference {
  double statistic = 0;
  double degreesOfFreedom = 0;
  double twoSidedProbability = 0;  ///< small = the means differ
};
/// Welch's t: means of two samples of unequal scatter. Errors: Degenerate "measure.no_scatter".
[[nodiscard]] Result<MeanDifference> compareMeans(const Sample& first, const Sample& second);

struct GroupTest {
  double statistic = 0;
  double degreesBetween = 0;
  double degreesWithin = 0;
  double standardDeviationWithin = 0;
  double critical = 0;  ///< 95 % point
  [[nodiscard]] bool agree() const { return statistic <= critical; }
};
/// One-way analysis of variance. Errors: OutOfRange "measure.too_few" below two groups, an empty
/// group or no reading to spare; Degenerate "measure.no_scatter" when all groups are without
/// scatter.
[[nodiscard]] Result<GroupTest> compareGroups(std::span<const std::span<const double>> groups);

}  // namespace sw::measure
