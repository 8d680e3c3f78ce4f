// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/bearing_stiffness.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

TaperBearing seventeen() {
  return {17, degrees(15), millimetres(12)};
}

TEST(BearingStiffness, AxialDisplacement) {
  // Palmgren's line contact as in Harris (from memory), worked in NumPy; micrometres.
  struct Row {
    double load, expected;
  };
  for (const Row& row : {Row{500, 2.877}, Row{1000, 5.369}, Row{2000, 10.020}, Row{4000, 18.697}}) {
    const auto got = axialDisplacement(seventeen(), newtons(row.load)).value();
    EXPECT_NEAR(inMillimetres(got.displacement) * 1000, row.expected, row.expected * 1e-3)
        << row.load;
  }
}

TEST(BearingStiffness, LoadGoesWithTheTenNinthsPower) {
  // 2^(10/9) = 2.160, 0.5^(10/9) = 0.463.
  const Length one = millimetres(0.007);
  const Force base = axialLoad(seventeen(), one)->load;
  EXPECT_NEAR(axialLoad(seventeen(), 2 * one)->load / base, 2.160, 0.001);
  EXPECT_NEAR(axialLoad(seventeen(), one / 2)->load / base, 0.463, 0.001);
}

TEST(BearingStiffness, SlopeAndWhatAShimDoes) {
  // (10 / 9) 2000 N / 0.01002 mm = 222 kN/mm; a pair changes by about 1.1 kN for 0.01 mm of shim.
  const auto got = axialDisplacement(seventeen(), newtons(2000)).value();
  EXPECT_NEAR(got.slope.si() / 1e6, 222, 0.5);
  EXPECT_NEAR(got.shimSlope.si() / 1e3 * 0.01, 1110, 10);
  // The slope is the derivative of the curve itself.
  const double step = 0.01;
  const Length more = axialDisplacement(seventeen(), newtons(2000 + step))->displacement;
  const Length less = axialDisplacement(seventeen(), newtons(2000 - step))->displacement;
  EXPECT_NEAR(2 * step / (more - less).si() / got.slope.si(), 1, 1e-6);
}

TEST(BearingStiffness, ForthAndBack) {
  const auto there = axialDisplacement(seventeen(), newtons(1234)).value();
  EXPECT_NEAR(inNewtons(axialLoad(seventeen(), there.displacement)->load), 1234, 1e-8);
  EXPECT_EQ(axialDisplacement(seventeen(), {})->displacement.si(), 0);
  EXPECT_EQ(axialDisplacement(seventeen(), {})->slope.si(), 0);
}

TEST(BearingStiffness, MoreAndLongerRollersAndASteeperAngleAreStiffer) {
  const auto displacementOf = [](TaperBearing bearing) {
    return axialDisplacement(bearing, newtons(1000))->displacement;
  };
  const Length base = displacementOf(seventeen());
  EXPECT_LT(displacementOf({20, degrees(15), millimetres(12)}), base);
  EXPECT_LT(displacementOf({17, degrees(20), millimetres(12)}), base);
  EXPECT_LT(displacementOf({17, degrees(15), millimetres(14)}), base);
}

TEST(BearingStiffness, RefusesWhatCannotBe) {
  const auto keyOf = [](TaperBearing bearing, Force load) {
    const auto got = axialDisplacement(bearing, load);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  const Force load = newtons(100);
  EXPECT_EQ(keyOf({2, degrees(15), millimetres(12)}, load),
            "bearing_stiffness.bad_rollers rollers");
  EXPECT_EQ(keyOf({17, {}, millimetres(12)}, load), "measure.not_positive contact_angle");
  EXPECT_EQ(keyOf({17, degrees(90), millimetres(12)}, load),
            "bearing_stiffness.bad_angle contact_angle");
  EXPECT_EQ(keyOf({17, degrees(15), {}}, load), "measure.not_positive roller_length");
  EXPECT_EQ(keyOf(seventeen(), newtons(-1)), "measure.not_positive load");
  EXPECT_EQ(axialLoad(seventeen(), metres(NAN)).error().key, "measure.not_finite");
}

}  // namespace
}  // namespace sw::mechanics
