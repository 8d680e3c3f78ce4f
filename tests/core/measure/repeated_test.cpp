// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/repeated.h"

#include <algorithm>
#include <array>
#include <limits>
#include <random>

#include "check_rows.h"
#include "data_file.h"
#include "measure/distributions.h"

namespace sw::measure {
namespace {

using test::check;
using test::relative;

const std::vector<double> kPulls{18.5, 19.0, 18.5, 19.5, 19.0};

/// NIST StRD NumAcc2 to 4: a first value, then 500 pairs around it.
std::vector<double> numAcc(double first, double low, double high) {
  std::vector<double> x{first};
  for (int i = 0; i < 500; ++i) {
    x.push_back(low);
    x.push_back(high);
  }
  return x;
}

/// The first digits of pi by the Rabinowitz and Wagon spigot (American Mathematical Monthly 1995).
std::vector<double> piDigits(std::size_t count) {
  std::vector<int> rest(10 * (count + 10) / 3 + 1, 2);
  std::vector<double> digits;
  int held = 0;
  int nines = 0;
  const auto push = [&](int digit) { digits.push_back(digit); };
  while (digits.size() < count + 1) {
    int carry = 0;
    for (std::size_t i = rest.size() - 1; i > 0; --i) {
      const int odd = static_cast<int>(2 * i + 1);
      const int x = 10 * rest[i] + carry * static_cast<int>(i + 1);
      rest[i] = x % odd;
      carry = x / odd;
    }
    const int x = 10 * rest[0] + carry;
    rest[0] = x % 10;
    const int digit = x / 10;
    if (digit == 9) {
      ++nines;
      continue;
    }
    push(held + digit / 10);
    for (; nines > 0; --nines) push(digit == 10 ? 0 : 9);
    held = digit % 10;
  }
  digits.erase(digits.begin());  // the 0 held before the first digit
  digits.resize(count);
  return digits;
}

TEST(Repeated, TemperaturesOfTheGuide) {
  const std::vector<double> x{96.90,  98.18,  98.25,  98.61,  99.03,  99.49,  99.56,
                              99.74,  99.89,  100.07, 100.33, 100.42, 100.68, 100.95,
                              101.11, 101.20, 101.57, 101.84, 102.36, 102.72};
  const auto got = describe(x).value();
  const std::string_view source = "JCGM 100 table 1 and 4.4.3 (mem), prints 100.14, 1.49, 0.33";
  check({{"A1 mean", got.mean, 100.145, relative(100.145, 1e-6), source},
         {"A1 s", *got.standardDeviation, 1.488844, relative(1.488844, 1e-6), source},
         {"A1 u_A", *got.standardUncertainty(), 0.3329157, relative(0.3329157, 1e-6), source}});
}

TEST(Repeated, NumericalAccuracySetsOfNist) {
  struct Row {
    const char* id;
    std::vector<double> x;
    double mean, s, lag, meanTolerance, sTolerance;
  };
  const std::vector<Row> rows{
      {"A2", {10000001, 10000003, 10000002}, 10000002, 1, -0.5, 1e-15, 1e-15},
      {"A3", numAcc(1.2, 1.1, 1.3), 1.2, 0.1, -0.999, 1e-14, 1e-14},
      {"A4", numAcc(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, -0.999, 1e-15, 1e-9},
      {"A5", numAcc(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, -0.999, 1e-15, 1e-7}};
  for (const Row& row : rows) {
    const auto got = describe(row.x).value();
    check({{row.id, got.mean, row.mean, relative(row.mean, row.meanTolerance), "GSL mean"},
           {row.id, *got.standardDeviation, row.s, relative(row.s, row.sTolerance), "GSL s"},
           {row.id, *lagOneCorrelation(row.x), row.lag, relative(row.lag, row.sTolerance),
            "GSL lag-1"}});
  }
}

TEST(Repeated, ShortcutFormulaLosesTheVarianceThatOursKeeps) {
  const auto x = numAcc(10000000.2, 10000000.1, 10000000.3);
  double sum = 0;
  double squares = 0;
  for (double value : x) {
    sum += value;
    squares += value * value;
  }
  const double n = static_cast<double>(x.size());
  const double shortcut = (squares - sum * sum / n) / (n - 1);
  check({{"A6 trap", shortcut, -2.0, 0.1, "NumPy in double precision"}});
  EXPECT_NEAR(*describe(x).value().standardDeviation, 0.1, 1e-8);
}

TEST(Repeated, SpeedOfLight) {
  const auto rows = test::readReference("michelso.txt");
  std::vector<double> x;
  for (const auto& row : rows) {
    for (double speed : row) x.push_back(299 + speed / 1000);
  }
  ASSERT_EQ(x.size(), 100U);
  const auto got = describe(x).value();
  check({{"A7 mean", got.mean, 299.852400000000, relative(299.8524, 1e-12), "GSL"},
         {"A7 s", *got.standardDeviation, 0.0790105478190518, 0.079 * 1e-12, "GSL"},
         {"A7 lag-1", *lagOneCorrelation(x), 0.535199668621283, 0.535 * 1e-12, "GSL"}});
}

TEST(Repeated, DigitsOfPi) {
  auto digits = piDigits(5000);
  ASSERT_EQ(digits[956], 8) << "digit 957 of pi, the leading 3 being digit 1";
  const auto real = describe(digits).value();
  const std::string_view numpy = "NumPy, from computed digits";
  check({{"A9 mean", real.mean, 4.5358, 1e-9, numpy},
         {"A9 s", *real.standardDeviation, 2.86767555218761, 1e-9, numpy},
         {"A9 lag-1", *lagOneCorrelation(digits), -0.00380209763, 1e-9, numpy}});
  // The certified set carries a 3 in that place.
  digits[956] = 3;
  const auto certified = describe(digits).value();
  check({{"A8 mean", certified.mean, 4.53480000000000, relative(4.5348, 1e-13), "GSL"},
         {"A8 s", *certified.standardDeviation, 2.86733906028871, 2.867 * 1e-13, "GSL"},
         {"A8 lag-1", *lagOneCorrelation(digits), -0.00355099287237972, 0.00355 * 1e-13 * 10,
          "GSL; one digit looser: 15 printed digits of a number near 0"}});
}

TEST(Repeated, FivePulls) {
  const auto got = describe(kPulls).value();
  const double t = studentQuantile(0.975, 4);
  check({{"A10 mean", got.mean, 18.9, 1e-6, "NumPy"},
         {"A10 s", *got.standardDeviation, 0.41833, 1e-6, "NumPy"},
         {"A10 u_A", *got.standardUncertainty(), 0.1870829, 1e-6, "NumPy"},
         {"A10 nu", *got.degreesOfFreedom(), 4, 0, "n - 1"},
         {"A11 t", t, 2.776445, 1e-6, "SciPy 1.10.1"},
         {"A11 half-width", t * *got.standardUncertainty(), 0.5194253, 1e-6, "SciPy 1.10.1"}});
}

TEST(Repeated, PooledScatter) {
  const std::array estimates{Scatter{0.42, 4}, Scatter{0.55, 2}, Scatter{0.31, 4}};
  const auto got = pool(estimates).value();
  check({{"A14 s", got.standardDeviation, 0.4117038, 1e-6, "NumPy"},
         {"A14 nu", got.degreesOfFreedom, 10, 0, "sum"}});
  EXPECT_EQ(pool({}).error().key, "measure.nothing_to_pool");
}

TEST(Repeated, ScatterOfTheScatter) {
  const std::string_view source = "JCGM 100 table E.1 (mem), prints 76, 52, 36, 24 %";
  check({{"A15 n 2", relativeSpreadOfScatter(2), 0.755511, 1e-5, source},
         {"A15 n 3", relativeSpreadOfScatter(3), 0.522723, 1e-5, source},
         {"A15 n 5", relativeSpreadOfScatter(5), 0.362999, 1e-5, source},
         {"A15 n 10", relativeSpreadOfScatter(10), 0.238765, 1e-5, source}});
}

TEST(Repeated, EqualReadingsHaveNoScatterAndNoNan) {
  const std::vector<double> equal(5, 19.0);
  const auto got = describe(equal).value();
  EXPECT_EQ(got.mean, 19.0);
  EXPECT_EQ(got.standardDeviation, 0.0);
  EXPECT_EQ(got.standardUncertainty(), 0.0);
  EXPECT_EQ(lagOneCorrelation(equal), std::nullopt);
  // 0.1 has no exact double: the mean must still be the reading itself.
  EXPECT_EQ(describe(std::vector<double>(7, 0.1)).value().mean, 0.1);
}

TEST(Repeated, OneReadingHasNoScatterOfItsOwn) {
  const auto got = describe(std::vector<double>{19.0}).value();
  EXPECT_EQ(got.mean, 19.0);
  EXPECT_EQ(got.standardDeviation, std::nullopt);
  EXPECT_EQ(got.standardUncertainty(), std::nullopt);
  EXPECT_EQ(got.degreesOfFreedom(), std::nullopt);
}

TEST(Repeated, RefusesNothingAndNonsense) {
  EXPECT_EQ(describe({}).error().key, "measure.no_readings");
  for (double bad :
       {std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN()}) {
    EXPECT_EQ(describe(std::vector<double>{1, bad}).error().key, "measure.not_finite");
  }
}

TEST(Repeated, ScatterIsFreeOfShiftAndOrderAndGoesWithScale) {
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> spread(10, 30);
  for (int round = 0; round < 50; ++round) {
    std::vector<double> x(5);
    for (double& value : x) value = spread(random);
    const double s = *describe(x).value().standardDeviation;
    auto changed = x;
    for (double& value : changed) value = 3.0 * value + 100.0;
    std::reverse(changed.begin(), changed.end());
    EXPECT_NEAR(*describe(changed).value().standardDeviation, 3.0 * s, 1e-12);
  }
}

TEST(Repeated, MedianOfOddAndEvenCounts) {
  EXPECT_EQ(median(std::vector<double>{3, 1, 2}), 2);
  EXPECT_EQ(median(std::vector<double>{4, 1, 3, 2}), 2.5);
  EXPECT_EQ(median(std::vector<double>{7}), 7);
}

}  // namespace
}  // namespace sw::measure
