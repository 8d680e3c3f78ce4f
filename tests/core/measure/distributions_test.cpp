// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/distributions.h"

#include <cmath>
#include <limits>

#include "check_rows.h"
#include "measure/budget.h"

namespace sw::measure {
namespace {

using test::check;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

struct TRow {
  const char* id;
  double probability;
  double nu;
  double expected;
};

TEST(Distributions, TableOfTwoSidedStudentFactors) {
  const TRow rows[]{
      {"D1", 0.95, 1, 12.7062},   {"D1", 0.95, 2, 4.3027},    {"D1", 0.95, 3, 3.1824},
      {"D1", 0.95, 4, 2.7764},    {"D1", 0.95, 5, 2.5706},    {"D1", 0.95, 10, 2.2281},
      {"D1", 0.95, 20, 2.0860},   {"D1", 0.95, 50, 2.0086},   {"D2", 0.9545, 1, 13.9678},
      {"D2", 0.9545, 2, 4.5266},  {"D2", 0.9545, 3, 3.3068},  {"D2", 0.9545, 4, 2.8693},
      {"D2", 0.9545, 5, 2.6487},  {"D2", 0.9545, 10, 2.2837}, {"D2", 0.9545, 20, 2.1330},
      {"D2", 0.9545, 50, 2.0513}, {"D3", 0.99, 2, 9.9248},    {"D3", 0.99, 5, 4.0321},
      {"D3", 0.99, 11, 3.1058},   {"D3", 0.99, 16, 2.9208},   {"D4", 0.9973, 1, 235.7837},
      {"D4", 0.9973, 2, 19.2060}, {"D4", 0.9973, 5, 5.5070},  {"D5", 0.90, 10, 1.8125},
      {"D5", 0.90, 20, 1.7247},   {"D6", 0.6827, 1, 1.8374},  {"D6", 0.6827, kInfinity, 1.00002}};
  for (const TRow& row : rows) {
    check({{row.id, coverageFactor(row.probability, row.nu), row.expected, 5e-5,
            "SciPy 1.10.1; JCGM 100 table G.2 as quoted in suncal"}});
  }
  check({{"D2 inf", coverageFactor(0.9545, {}), 2.00, 5e-3, "suncal, JCGM 100 table G.2"}});
}

TEST(Distributions, InfiniteAndFractionalDegreesOfFreedom) {
  check({{"D7 infinity", coverageFactor(0.95, kInfinity), 1.959964, 1e-6, "SciPy 1.10.1"},
         {"D7 empty", coverageFactor(0.95, {}), 1.959964, 1e-6, "SciPy 1.10.1"},
         {"D9", coverageFactor(0.95, 18.998742), 2.093033, 1e-5, "SciPy 1.10.1"},
         {"D9 floored", coverageFactor(0.95, 18), 2.100922, 1e-5, "SciPy 1.10.1"}});
}

TEST(Distributions, OneSidedStudentPoints) {
  check({{"D8 nu 2", studentQuantile(0.95, 2), 2.9200, 5e-5, "SciPy 1.10.1"},
         {"D8 nu 4", studentQuantile(0.95, 4), 2.1318, 5e-5, "SciPy 1.10.1"},
         {"D8 nu 9", studentQuantile(0.95, 9), 1.8331, 5e-5, "SciPy 1.10.1"},
         {"D8 nu 30", studentQuantile(0.95, 30), 1.6973, 5e-5, "SciPy 1.10.1"},
         {"D8 inf", studentQuantile(0.95, {}), 1.6449, 5e-5, "SciPy 1.10.1"}});
}

TEST(Distributions, NormalPointsOfTheConformityGuide) {
  const std::string_view source = "SciPy 1.10.1; JCGM 106 table 1 prints two decimals (mem)";
  check({{"F1 0.80", normalQuantile(0.80), 0.8416, 5e-5, source},
         {"F1 0.90", normalQuantile(0.90), 1.2816, 5e-5, source},
         {"F1 0.95", normalQuantile(0.95), 1.6449, 5e-5, source},
         {"F1 0.99", normalQuantile(0.99), 2.3263, 5e-5, source},
         {"F1 0.999", normalQuantile(0.999), 3.0902, 5e-5, source}});
}

struct MeanLimitRow {
  const char* id;
  double count, mean, s, probability, low, high;
};

TEST(Distributions, LimitsOfAMean) {
  const MeanLimitRow rows[]{{"A12", 195, 9.261460, 0.02278881, 0.95, 9.25824, 9.26468},
                            {"A13 95 %", 3, 37.8, 0.964365, 0.95, 35.40438, 40.19562},
                            {"A13 99 %", 3, 37.8, 0.964365, 0.99, 32.27408, 43.32592}};
  for (const MeanLimitRow& row : rows) {
    const double half =
        coverageFactor(row.probability, row.count - 1) * row.s / std::sqrt(row.count);
    check({{row.id, row.mean - half, row.low, 5e-6, "Boost examples (NIST heat flow, mercury)"},
           {row.id, row.mean + half, row.high, 5e-6, "Boost examples (NIST heat flow, mercury)"}});
  }
}

TEST(Distributions, EndsOfTheProbabilityScaleAreTheEndsOfTheRange) {
  EXPECT_EQ(normalQuantile(0), -kInfinity);
  EXPECT_EQ(normalQuantile(1), kInfinity);
  EXPECT_EQ(studentQuantile(1.5, 3), kInfinity);
  EXPECT_EQ(chiSquaredQuantile(0, 3), 0);
  EXPECT_EQ(fisherQuantile(-1, 3, 4), 0);
  EXPECT_EQ(studentCdf(kInfinity, 3), 1);
  EXPECT_EQ(studentCdf(-kInfinity, 3), 0);
  EXPECT_EQ(chiSquaredCdf(-1, 3), 0);
  EXPECT_EQ(fisherUpperTail(0, 3, 4), 1);
}

TEST(Distributions, QuantilesInvertTheDistributionFunctions) {
  for (double p = 0.01; p < 1; p += 0.07) {
    for (double nu : {0.7, 1.0, 2.5, 18.998742, 400.0}) {
      EXPECT_NEAR(studentCdf(studentQuantile(p, nu), nu), p, 1e-12);
      EXPECT_NEAR(chiSquaredCdf(chiSquaredQuantile(p, nu), nu), p, 1e-12);
      EXPECT_NEAR(fisherCdf(fisherQuantile(p, nu, 3.0), nu, 3.0), p, 1e-12);
      EXPECT_NEAR(studentCdf(-1.3, nu), 1 - studentCdf(1.3, nu), 1e-14);
    }
    EXPECT_NEAR(normalCdf(normalQuantile(p)), p, 1e-14);
  }
}

TEST(Distributions, QuantilesOfAShare) {
  // Closed forms: Beta(1, 1) is uniform, Beta(1, n) has the distribution 1 - (1 - x)^n, and
  // Beta(2, 1) the distribution x^2.
  EXPECT_NEAR(betaQuantile(.3, 1, 1), .3, 1e-12);
  EXPECT_NEAR(betaQuantile(.975, 1, 4), 1 - std::pow(.025, .25), 1e-12);
  EXPECT_NEAR(betaQuantile(.5, 2, 1), std::sqrt(.5), 1e-12);
  EXPECT_NEAR(betaQuantile(.1, 3, 7), 1 - betaQuantile(.9, 7, 3), 1e-12);
  EXPECT_EQ(betaQuantile(0, 3, 7), 0);
  EXPECT_EQ(betaQuantile(1, 3, 7), 1);
}

}  // namespace
}  // namespace sw::measure
