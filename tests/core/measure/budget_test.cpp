// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/budget.h"

#include <array>
#include <cmath>
#include <limits>

#include "check_rows.h"
#include "measure/repeated.h"
#include "measure/type_b.h"

namespace sw::measure {
namespace {

using test::check;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

TEST(Budget, WorkedExamplesOfTheGuide) {
  const std::array d{Component{5.8, 24}, Component{3.9, 5}, Component{6.7, 8}};
  const Combined c1 = combine(d);
  const std::array l{Component{25, 18}, Component{9.7, 25.6}, Component{2.9, 50},
                     Component{16.6, 2}};
  const Combined c2 = combine(l);
  const std::string_view h1 = "JCGM 100 H.1 as quoted in GTC and propagate";
  check({{"C1 u", c1.standardUncertainty, 9.68194, 1e-5, h1},
         {"C1 nu", *c1.degreesOfFreedom, 25.4473, 1e-4, "SciPy 1.10.1; the guide prints 25.6"},
         {"C2 u", c2.standardUncertainty, 31.6711, 1e-4, h1},
         {"C2 nu", *c2.degreesOfFreedom, 16.7646, 1e-4, h1},
         {"C2 t(16)", coverageFactor(0.99, 16), 2.92078, 1e-5, h1},
         {"C2 U", coverageFactor(0.99, 16) * c2.standardUncertainty, 92.5044, 1e-4, h1}});
}

TEST(Budget, EffectiveDegreesOfFreedomStayReal) {
  const std::array relative{Component{0.25, 9}, Component{0.57, 4}, Component{0.82, 14}};
  const Combined c3 = combine(relative);
  const std::array mixed{Component{0.187, 4}, Component{0.144, kInfinity}, Component{0.289, 8}};
  const Combined c4 = combine(mixed);
  const std::string_view g41 = "JCGM 100 G.4.1 (mem), prints 1.03, 19.0, 2.09, 2.2";
  const double k3 = coverageFactor(0.95, c3.degreesOfFreedom);
  const double k4 = coverageFactor(0.95, c4.degreesOfFreedom);
  check({{"C3 u", c3.standardUncertainty, 1.02947, 1e-5, g41},
         {"C3 nu", *c3.degreesOfFreedom, 18.99874, 1e-5, g41},
         {"C3 t", k3, 2.09303, 1e-5, g41},
         {"C3 U", k3 * c3.standardUncertainty, 2.15471, 1e-5, g41},
         {"C4 u", c4.standardUncertainty, 0.37313, 1e-5, "SciPy 1.10.1"},
         {"C4 nu", *c4.degreesOfFreedom, 16.4594, 1e-3, "SciPy 1.10.1; nu to its printed digits"},
         {"C4 U", k4 * c4.standardUncertainty, 0.78921, 1e-5, "SciPy 1.10.1"}});
}

TEST(Budget, MicrometerOnADisc) {
  const std::array<double, 5> readings{11.02, 11.01, 11.02, 11.02, 11.01};
  const auto series = describe(readings).value();
  // 12 mm disc, 10 K off, 11e-6 per kelvin, rectangular. Half-widths: common practice, no source.
  const std::array parts{Component{*series.standardUncertainty(), 4},
                         Component{graduationUncertainty(0.01), {}},
                         Component{rectangular(0.004), {}}, Component{rectangular(0.002), {}},
                         Component{rectangular(12 * 10 * 11e-6), {}}};
  const Combined got = combine(parts);
  const double k = coverageFactor(0.95, got.degreesOfFreedom);
  check({{"C7 mean", series.mean, 11.016, 1e-9, "NumPy"},
         {"C7 u", got.standardUncertainty, 0.00464551, 1e-7, "SciPy 1.10.1"},
         {"C7 nu", *got.degreesOfFreedom, 51.7479, 1e-3, "SciPy 1.10.1"},
         {"C7 k", k, 2.00688, 1e-5, "SciPy 1.10.1"},
         {"C7 U", k * got.standardUncertainty, 0.00932299, 1e-7, "SciPy 1.10.1"}});
}

TEST(Budget, FeelerTorqueWrenchRuleAndCaliper) {
  const std::array feeler{Component{(0.20 - 0.15) / std::sqrt(12.0), {}},
                          Component{rectangular(0.005), {}}};
  const std::array wrench{Component{rectangular(0.04 * 75), {}},
                          Component{graduationUncertainty(1), {}},
                          Component{rectangular(0.02 * 75), {}}};
  const std::array toe{Component{graduationUncertainty(1), {}, std::sqrt(2.0)},
                       Component{rectangular(0.4), {}}};
  const Trapezoid caliper{50, 25};
  const std::array s10{Component{caliper.standardUncertainty(), {}}, Component{2.0, {}},
                       Component{0.46, {}}};
  const double wrenchU = combine(wrench).standardUncertainty;
  const double caliperU = combine(s10).standardUncertainty;
  check({{"C9 u", combine(feeler).standardUncertainty, 0.0147196, 1e-6, "NumPy"},
         {"C10 u", wrenchU, 1.95789, 1e-5, "NumPy; limit of a torque tester's manual"},
         {"C10 U", 2 * wrenchU, 3.91578, 1e-5, "NumPy"},
         {"C10 %", 2 * wrenchU / 75 * 100, 5.22, 5e-3, "NumPy"},
         {"C12 u", caliperU, 32.34, 5e-3, "EA-4/02 S10 (mem), prints 33 um"},
         {"C12 U", caliper.coverageFactor(0.95) * caliperU, 59.3081, 1e-3,
          "EA-4/02 S10 (mem), prints 0.06 mm"}});
  // Toe by steel rule: two readings on 1 mm marks of which the common rule error cancels.
  const double toeU = combine(toe).standardUncertainty;
  check({{"C11 u", toeU, 0.469042, 1e-5, "NumPy; local error UK SI 2016/1153"},
         {"C11 U", 2 * toeU, 0.938083, 1e-5, "NumPy"}});
}

TEST(Budget, TorqueFromForceAndArm) {
  const double force = 18.9;
  const double arm = 0.180;
  const std::array parts{Component{0.40, {}, arm}, Component{rectangular(0.001), {}, force}};
  check({{"C13 M", force * arm, 3.402, 1e-6, "NumPy"},
         {"C13 u", combine(parts).standardUncertainty, 0.0728222, 1e-6, "NumPy"}});
}

TEST(Budget, DifferenceOfCorrelatedReadings) {
  const std::array pair{Component{0.3, {}, 1}, Component{0.3, {}, -1}};
  const auto at = [&](double r) {
    const std::array correlation{Correlation{0, 1, r}};
    return combine(pair, correlation).value().standardUncertainty;
  };
  check({{"C14 r 0.9", at(0.9), 0.134164, 1e-6, "NumPy"},
         {"C14 r 0", at(0), 0.424264, 1e-6, "NumPy"},
         {"C14 r 1", at(1), 0, 1e-8, "they cancel"}});
  for (const Correlation& bad : {Correlation{0, 2, 0.5}, Correlation{1, 1, 0.5},
                                 Correlation{0, 1, 1.01}, Correlation{0, 1, std::nan("")}}) {
    EXPECT_EQ(combine(pair, std::array{bad}).error().key, "measure.bad_correlation");
  }
}

TEST(Budget, WeightedMeanOfTwoResults) {
  const std::array results{ValueWithUncertainty{18.9, 0.40}, ValueWithUncertainty{19.6, 0.60}};
  const auto got = weightedMean(results).value();
  check({{"C15 mean", got.value, 19.11538, 1e-5, "NumPy"},
         {"C15 u", got.standardUncertainty, 0.33282, 1e-6, "NumPy"},
         {"C15 chi2", got.chiSquared, 0.942308, 1e-6, "NumPy"},
         {"C15 nu", got.degreesOfFreedom, 1, 0, "n - 1"}});
  EXPECT_EQ(weightedMean({}).error().key, "measure.no_readings");
  EXPECT_EQ(weightedMean(std::array{ValueWithUncertainty{1, 0}}).error().key,
            "measure.not_positive");
}

TEST(Budget, NothingUncertainHasInfiniteDegreesOfFreedom) {
  const Combined empty = combine(std::span<const Component>{});
  EXPECT_EQ(empty.standardUncertainty, 0);
  EXPECT_EQ(empty.degreesOfFreedom, std::nullopt);
  const Combined zero = combine(std::array{Component{0, 4}});
  EXPECT_EQ(zero.degreesOfFreedom, std::nullopt);
  // Equal pulls: the scatter is 0 and the graduation alone remains, without limit on nu.
  const Combined equal = combine(std::array{Component{0, 4}, Component{0.144338, {}}});
  EXPECT_EQ(equal.standardUncertainty, 0.144338);
  EXPECT_EQ(equal.degreesOfFreedom, std::nullopt);
}

TEST(Budget, ScalingAllComponentsLeavesDegreesOfFreedom) {
  const std::array parts{Component{5.8, 24}, Component{3.9, 5}, Component{6.7, 8}};
  auto scaled = parts;
  for (Component& part : scaled) part.standardUncertainty *= 1e-6;
  EXPECT_NEAR(*combine(scaled).degreesOfFreedom, *combine(parts).degreesOfFreedom, 1e-9);
  // The answer lies between the smallest nu and the sum of all (JCGM 100 G.4.1, from memory).
  EXPECT_GT(*combine(parts).degreesOfFreedom, 5);
  EXPECT_LT(*combine(parts).degreesOfFreedom, 37);
}

}  // namespace
}  // namespace sw::measure
