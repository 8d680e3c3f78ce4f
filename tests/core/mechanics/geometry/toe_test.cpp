// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/toe.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace sw::mechanics {
namespace {

TEST(Toe, MillimetresAndDegrees) {
  // Plane geometry: the same 2 mm at two diameters.
  EXPECT_NEAR(inDegrees(toeAngle(millimetres(2), millimetres(700)).value()), 0.1637, 5e-4);
  EXPECT_NEAR(inDegrees(toeAngle(millimetres(2), millimetres(406.4)).value()), 0.2820, 5e-4);
  const WheelToe toe{degrees(0.15), degrees(0.05)};
  EXPECT_NEAR(inMillimetres(toeLength(toe, millimetres(700)).value()), 2.443, 0.005);
  // 0 degrees 20 minutes at 381 mm.
  EXPECT_NEAR(inMillimetres(toeLength(degrees(20.0 / 60), millimetres(381)).value()), 2.217, 0.005);
}

TEST(Toe, ThereAndBackIsTheSame) {
  for (const double mm : {-7.5, -0.2, 0.0, 3.0, 12.0}) {
    const auto angle = toeAngle(millimetres(mm), millimetres(655)).value();
    EXPECT_NEAR(inMillimetres(toeLength(angle, millimetres(655)).value()), mm, 1e-9);
  }
}

TEST(Toe, AgainstPointsOnTheRim) {
  // Both wheels as lines of length D, turned about their middles one metre and a half apart.
  const double left = 0.4, right = -0.1, d = 0.7;
  const double a = degrees(left).si(), b = degrees(right).si();
  // Left wheel at y = +0.75, toe-in brings its front towards the middle.
  const double front = (0.75 - d / 2 * std::sin(a)) - (-0.75 + d / 2 * std::sin(b));
  const double rear = (0.75 + d / 2 * std::sin(a)) - (-0.75 - d / 2 * std::sin(b));
  const auto length = toeLength(WheelToe{degrees(left), degrees(right)}, metres(d)).value();
  EXPECT_NEAR(length.si(), rear - front, 1e-12);
  const std::vector<ToeReading> readings{{metres(front), metres(rear)}};
  EXPECT_NEAR(measuredToe(readings, metres(d), {}).value().toe.si(), rear - front, 1e-12);
}

TEST(Toe, SignsOfTheStandard) {
  // ISO 8855:2011: toe-in is a negative steer angle on the left wheel, a positive one on the right.
  const auto steer = asSteerAngles({degrees(0.3), degrees(0.1)});
  EXPECT_NEAR(inDegrees(steer.left), -0.3, 1e-12);
  EXPECT_NEAR(inDegrees(steer.right), 0.1, 1e-12);
}

TEST(Toe, HalfATurnTakesRunoutOut) {
  // A runout that adds 1.6 mm at one place and takes them away half a turn on.
  const std::vector<ToeReading> pair{{millimetres(1400), millimetres(1402 + 1.6)},
                                     {millimetres(1400), millimetres(1402 - 1.6)}};
  const auto got = measuredToe(pair, millimetres(680), millimetres(1)).value();
  EXPECT_NEAR(inMillimetres(got.toe), 2, 1e-9);
  ASSERT_TRUE(got.runout);
  EXPECT_NEAR(inMillimetres(*got.runout), 1.6, 1e-9);
  const std::vector<ToeReading> alone{pair[0]};
  EXPECT_FALSE(measuredToe(alone, millimetres(680), millimetres(1)).value().runout);
}

TEST(Toe, UncertaintyOfTheGraduation) {
  // Difference of two readings to the nearest mark: d sqrt(2 / 12), JCGM 100:2008 F.2.2.1.
  const std::vector<ToeReading> one{{millimetres(1400), millimetres(1402)}};
  const auto got = measuredToe(one, millimetres(700), millimetres(1)).value();
  EXPECT_NEAR(inMillimetres(got.lengthUncertainty), std::sqrt(2.0 / 12), 1e-9);
  EXPECT_NEAR(got.angleUncertainty.si(), std::sqrt(2.0 / 12) / 700, 1e-9);
}

TEST(Toe, RefusesWhatCannotBe) {
  EXPECT_EQ(toeAngle(millimetres(2), {}).error().field, "diameter");
  EXPECT_EQ(toeAngle(millimetres(300), millimetres(700)).error().field, "total");
  EXPECT_EQ(toeLength(WheelToe{degrees(11), {}}, metres(0.7)).error().field, "left");
  EXPECT_EQ(toeLength(WheelToe{{}, degrees(-11)}, metres(0.7)).error().field, "right");
  EXPECT_EQ(toeLength(degrees(21), metres(0.7)).error().field, "total_angle");
  EXPECT_EQ(measuredToe({}, metres(0.7), {}).error().key, "measure.no_readings");
  std::vector<ToeReading> bad{{metres(1.4), metres(1.4)}, {metres(1.4), metres(-1)}};
  EXPECT_EQ(measuredToe(bad, metres(0.7), {}).error().field, "readings/1/rear");
  bad[1] = {metres(1.0), metres(1.9)};
  EXPECT_EQ(measuredToe(bad, metres(0.7), {}).error().field, "readings");
  EXPECT_EQ(measuredToe(std::vector<ToeReading>(21, bad[0]), metres(0.7), {}).error().field,
            "readings");
  EXPECT_EQ(measuredToe(std::vector<ToeReading>(1, bad[0]), metres(0.7), metres(-1)).error().field,
            "graduation");
}

}  // namespace
}  // namespace sw::mechanics
