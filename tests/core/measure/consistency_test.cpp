// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/consistency.h"

#include <array>
#include <cmath>

#include "check_rows.h"
#include "data_file.h"
#include "measure/distributions.h"

namespace sw::measure {
namespace {

using test::check;

const std::vector<double> kPulls{18.5, 19.0, 18.5, 19.5, 19.0};

Scatter scatterOf(double s, int count) {
  return {s, static_cast<double>(count - 1)};
}

TEST(Consistency, GrubbsTables) {
  const double twoSided[]{1.1543, 1.4812, 1.7150, 1.8871, 2.0200, 2.1266, 2.2150, 2.2900};
  const double oneSided[]{1.1531, 1.4625, 1.6714, 1.8221, 1.9381, 2.0317, 2.1096, 2.1761};
  for (int n = 3; n <= 10; ++n) {
    check({{"J1", grubbsCritical(n, 0.05, Tail::TwoSided), twoSided[n - 3], 5.1e-5,
            "SciPy 1.10.1; ASTM E178 restated, 2 decimals"},
           {"J2", grubbsCritical(n, 0.05, Tail::OneSided), oneSided[n - 3], 5e-5,
            "4-decimal table restated in open repositories"}});
  }
}

TEST(Consistency, GrubbsOnSeries) {
  const std::vector<double> nist{199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
  const std::vector<double> sixth{18.5, 19.0, 18.5, 19.5, 19.0, 23.0};
  const auto three = grubbs(nist).value();
  const auto four = grubbs(sixth).value();
  check({{"J3", three.statistic, 2.468765, 1e-5, "NIST handbook example, restated"},
         {"J4", four.statistic, 1.99208, 1e-5, "SciPy 1.10.1"},
         {"J5", grubbs(kPulls).value().statistic, 1.43427, 1e-5, "SciPy 1.10.1"}});
  EXPECT_EQ(three.index, 7U);
  EXPECT_GT(three.statistic, grubbsCritical(8, 0.05, Tail::TwoSided));
  EXPECT_EQ(four.index, 5U);
  EXPECT_GT(four.statistic, grubbsCritical(6, 0.05, Tail::TwoSided));
  EXPECT_LT(grubbs(kPulls).value().statistic, grubbsCritical(5, 0.05, Tail::TwoSided));
}

TEST(Consistency, GrubbsMisfiresOnCoarseScalesAndIsOffThere) {
  const std::vector<double> far{19, 19, 22};
  const std::vector<double> oneGraduation{19.0, 19.0, 19.5};
  for (const auto& x : {far, oneGraduation}) {
    const double g = grubbs(x).value().statistic;
    check({{"J6", g, 1.154701, 1e-6, "2 / sqrt(3)"}});
    EXPECT_GT(g, grubbsCritical(3, 0.05, Tail::TwoSided));
    EXPECT_FALSE(grubbsApplies(describe(x).value(), 0.5));
  }
  for (double other : {19.1, 25.0, -3.0}) {
    const std::vector<double> x{19, 19, 19, other};
    check({{"J7", grubbs(x).value().statistic, 1.5, 1e-9, "(n - 1) / sqrt(n)"}});
    EXPECT_FALSE(grubbsApplies(describe(x).value(), 0.5));
  }
}

TEST(Consistency, GrubbsNeedsSixReadingsAndMoreThanTwoGraduations) {
  const auto applies = [](std::vector<double> x) {
    return grubbsApplies(describe(x).value(), 0.1);
  };
  EXPECT_FALSE(applies({0.1, 0.1, 0.1, 0.1, 0.1, 0.3})) << "two graduations, in decimal";
  EXPECT_TRUE(applies({0.1, 0.1, 0.1, 0.1, 0.1, 0.4}));
  EXPECT_FALSE(applies({0.1, 0.1, 0.1, 0.1, 0.4}));
  EXPECT_EQ(grubbs(std::vector<double>{1, 2}).error().key, "measure.too_few");
  EXPECT_EQ(grubbs(std::vector<double>{1, 1, 1}).error().key, "measure.no_scatter");
}

TEST(Consistency, RangeFactors) {
  const double table[]{2.7718, 3.3145, 3.6332, 3.8577, 4.0301};
  for (int n = 2; n <= 6; ++n) {
    check({{"J8", rangeFactor(n), table[n - 2], 5e-5,
            "SciPy 1.10.1; ISO 5725-6 (mem) prints 2.8 3.3 3.6 3.9 4.0"}});
  }
  // Two readings: the range is |x1 - x2|, normal with sqrt(2).
  EXPECT_NEAR(rangeFactor(2), std::sqrt(2.0) * normalQuantile(0.975), 1e-9);
  for (int n : {2, 3, 7, 20, 100}) {
    for (double p : {0.01, 0.5, 0.95, 0.9999})
      EXPECT_GT(rangeFactor(n, p + 1e-6), rangeFactor(n, p));
  }
  check({{"ten", rangeFactor(10), 4.474124221725907, 1e-9, "SciPy 1.10.1, studentized_range"},
         {"three", rangeFactor(3), 3.314493155398122, 1e-9, "SciPy 1.10.1, studentized_range"}});
  check({{"J9 n 2", largestAcceptedRange(2, 0.35), 0.9701, 1e-4, "SciPy 1.10.1"},
         {"J9 n 3", largestAcceptedRange(3, 0.35), 1.1601, 1e-4, "SciPy 1.10.1"},
         {"J9 n 4", largestAcceptedRange(4, 0.35), 1.2716, 1e-4, "SciPy 1.10.1"},
         {"J9 n 5", largestAcceptedRange(5, 0.35), 1.3502, 1e-4, "SciPy 1.10.1"}});
}

TEST(Consistency, ScatterAgainstAKnownScatter) {
  const auto wafers = scatterLargerThan(scatterOf(13.97, 10), 10);
  const std::string_view nist = "Boost examples (NIST wafers)";
  check({{"J10 chi2", wafers.statistic, 17.56448, 1e-4, nist},
         {"J10 critical", wafers.critical, 16.919, 1e-3, nist},
         {"J10 cdf", wafers.cumulative, 0.9594, 1e-4, nist}});
  EXPECT_TRUE(wafers.larger());
  const auto gears = scatterLargerThan(scatterOf(0.00627891, 100), 0.1);
  check({{"J12 chi2", gears.statistic, 0.390304, 1e-6, "Boost examples (NIST gears)"},
         {"J12 critical", gears.critical, 123.2252, 1e-4, "Boost examples (NIST gears)"}});
  EXPECT_FALSE(gears.larger());
}

TEST(Consistency, IntervalOfAScatter) {
  const Interval wafers = scatterInterval(scatterOf(13.97, 10), 0.95);
  const Interval five = scatterInterval(scatterOf(1, 5), 0.95);
  check({{"J11 low", wafers.low, 9.60906, 1e-5, "Boost examples"},
         {"J11 high", wafers.high, 25.50377, 1e-5, "Boost examples"},
         {"J11 factor low", five.low, 0.5991, 5e-5, "SciPy 1.10.1"},
         {"J11 factor high", five.high, 2.8736, 5e-5, "SciPy 1.10.1"}});
}

TEST(Consistency, TwoScattersCompared) {
  const auto ceramics = compareScatter(scatterOf(65.54909, 240), scatterOf(61.85425, 240)).value();
  const std::string_view nist = "Boost examples (NIST ceramics)";
  check({{"J13 F", ceramics.statistic, 1.123037, 1e-5, nist},
         {"J13 low", ceramics.acceptance.low, 0.7756, 1e-4, nist},
         {"J13 high", ceramics.acceptance.high, 1.2894, 1e-4, nist},
         {"J13 cdf", ceramics.cumulative, 0.8148, 1e-4, nist}});
  EXPECT_TRUE(ceramics.alike());
  // Two-sided at 10 % has the upper 5 % point that the example prints.
  const auto second = compareScatter(scatterOf(4.9082, 11), scatterOf(2.5874, 9), 0.10).value();
  check({{"J14 F", second.statistic, 3.59847, 1e-4, "Boost examples"},
         {"J14 upper 5 %", second.acceptance.high, 3.347, 1e-3, "Boost examples"},
         {"J14 cdf", second.cumulative, 0.9589, 1e-4, "Boost examples"}});
  EXPECT_FALSE(second.alike());
}

TEST(Consistency, LeftAgainstRight) {
  const std::vector<double> right{16, 21, 18, 20.5, 17.5};
  const auto r = describe(right).value();
  const auto l = describe(kPulls).value();
  const auto scatter = compareScatter({*r.standardDeviation, 4}, {*l.standardDeviation, 4}).value();
  const auto means =
      compareMeans({l.mean, *l.standardDeviation, 5}, {r.mean, *r.standardDeviation, 5}).value();
  check({{"J15 F", scatter.statistic, 25.2857, 1e-4, "SciPy 1.10.1"},
         {"J15 point", scatter.acceptance.high, 9.6045, 1e-4, "SciPy 1.10.1"},
         {"J15 p", scatter.twoSidedProbability, 0.008464, 1e-6, "SciPy 1.10.1"},
         {"J15 t", std::abs(means.statistic), 0.312772, 1e-5, "SciPy 1.10.1"},
         {"J15 nu", means.degreesOfFreedom, 4.31589, 1e-5, "SciPy 1.10.1"}});
  EXPECT_FALSE(scatter.alike());
  EXPECT_GT(means.twoSidedProbability, 0.05);
}

TEST(Consistency, GroupsOfInstruments) {
  const auto rows = test::readReference("sirstv.txt");
  ASSERT_EQ(rows.size(), 5U);
  const std::vector<std::span<const double>> groups(rows.begin(), rows.end());
  const auto got = compareGroups(groups).value();
  check(
      {{"J16 F", got.statistic, 1.18046237440255, 1.18 * 1e-9, "NIST StRD SiRstv"},
       {"J16 s", got.standardDeviationWithin, 0.104076068334656, 0.104 * 1e-9, "NIST StRD SiRstv"},
       {"J16 point", got.critical, 2.8661, 5e-5, "SciPy 1.10.1"},
       {"J16 nu", got.degreesWithin, 20, 0, "NIST StRD SiRstv"}});
  EXPECT_TRUE(got.agree());
}

TEST(Consistency, MeansOfUnequalScatter) {
  const auto cars = compareMeans({20.14458, 6.41470, 249}, {30.48101, 6.10771, 79}).value();
  check({{"J17 t", cars.statistic, -12.94627, 1e-5, "Boost examples (NIST cars)"},
         {"J17 nu", cars.degreesOfFreedom, 136.87499, 1e-4, "Boost examples (NIST cars)"}});
  EXPECT_LT(cars.twoSidedProbability, 1e-12);
}

TEST(Consistency, RefusesWhatHasNoScatter) {
  const Sample still{19, 0, 3};
  EXPECT_EQ(compareMeans(still, still).error().key, "measure.no_scatter");
  EXPECT_EQ(compareScatter({1, 3}, {0, 3}).error().key, "measure.no_scatter");
  const std::vector<double> a{1, 1};
  const std::vector<std::span<const double>> equal{a, a};
  EXPECT_EQ(compareGroups(equal).error().key, "measure.no_scatter");
  const std::vector<std::span<const double>> one{a};
  EXPECT_EQ(compareGroups(one).error().key, "measure.too_few");
  const std::vector<std::span<const double>> hollow{a, {}};
  EXPECT_EQ(compareGroups(hollow).error().key, "measure.too_few");
}

}  // namespace
}  // namespace sw::measure
