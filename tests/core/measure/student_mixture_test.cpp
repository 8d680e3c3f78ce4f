// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/student_mixture.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace sw::measure {
namespace {

TEST(StudentTables, AgreeWithBoostEverywhere) {
  for (const double nu : {1.0, 2.0, 3.7, 9.0, 30.0, 200.0}) {
    const StudentTable table(nu);
    double worst = 0;
    for (double x = -60; x <= 60; x += 0.0137) {
      worst = std::max(worst, std::abs(table.cdf(x) - studentCdf(x, nu)));
    }
    EXPECT_LT(worst, 2e-8) << nu;
  }
}

TEST(StudentTables, KeepTheirPromisesAtTheEnds) {
  const StudentTable table(4.0);
  EXPECT_DOUBLE_EQ(table.cdf(0), 0.5);
  EXPECT_NEAR(table.cdf(1e6), 1.0, 1e-12);
  EXPECT_NEAR(table.cdf(-1e6), 0.0, 1e-12);
  double before = -1;
  for (double x = -400; x <= 400; x += 0.37) {
    EXPECT_GE(table.cdf(x), before) << x;
    before = table.cdf(x);
  }
}

TEST(StudentMixtures, OnePartIsThePlainDistribution) {
  const StudentTable table(9.0);
  const StudentMixture mixture(table, {{3.0, {18.0, 1.5}}});
  // t(0.975, 9) = 2.262157 (JCGM 100 table G.2: 2.26).
  EXPECT_NEAR(mixture.quantile(0.975), 18.0 + 1.5 * 2.262157, 1e-4);
  EXPECT_NEAR(mixture.quantile(0.5), 18.0, 1e-4);
  EXPECT_DOUBLE_EQ(mixture.mean(), 18.0);
}

TEST(StudentMixtures, QuantilesInvertTheDistribution) {
  const StudentTable table(5.0);
  const StudentMixture mixture(table, {{0.2, {2.0, 0.1}}, {0.5, {9.0, 3.0}}, {0.3, {40.0, 0.01}}});
  for (const double p : {0.001, 0.025, 0.1, 0.19, 0.5, 0.69, 0.72, 0.975, 0.999}) {
    constexpr double kTolerance = 2e-3;  // 1e-4 of the spread, which is about 16
    constexpr double kProbability = 2e-6;
    EXPECT_LE(mixture.cdf(mixture.quantile(p) - kTolerance), p + kProbability) << p;
    EXPECT_GE(mixture.cdf(mixture.quantile(p) + kTolerance), p - kProbability) << p;
  }
  EXPECT_NEAR(mixture.mean(), 0.2 * 2 + 0.5 * 9 + 0.3 * 40, 1e-12);
}

TEST(StudentMixtures, MixtureOfTwoAgainstSciPy) {
  // scipy.stats.t, nu = 7: 0.3 T((x - 10) / 1) + 0.7 T((x - 14) / 2) at x = 13.
  const StudentTable table(7.0);
  const StudentMixture mixture(table, {{3.0, {10.0, 1.0}}, {7.0, {14.0, 2.0}}});
  const double byHand = 0.3 * studentCdf(3.0, 7.0) + 0.7 * studentCdf(-0.5, 7.0);
  EXPECT_NEAR(mixture.cdf(13.0), byHand, 1e-7);
  // t.cdf(3, 7) = 0.990029, t.cdf(-0.5, 7) = 0.316204 (SciPy 1.10.1).
  EXPECT_NEAR(mixture.cdf(13.0), 0.3 * 0.990029 + 0.7 * 0.316204, 2e-6);
}

TEST(StudentMixtures, NoSpreadIsAStep) {
  const StudentTable table(5.0);
  const StudentMixture mixture(table, {{1.0, {4.0, 0.0}}});
  EXPECT_EQ(mixture.quantile(0.3), 4.0);
  EXPECT_EQ(mixture.cdf(3.999), 0.0);
  EXPECT_EQ(mixture.cdf(4.0), 1.0);
}

}  // namespace
}  // namespace sw::measure
