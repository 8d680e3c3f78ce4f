// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/axle_lift.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

double change(ArmLayout layout, double arm, double pivot, double lift) {
  return inDegrees(
      casterChange({layout, millimetres(arm), millimetres(pivot), millimetres(lift)}).value());
}

TEST(AxleLift, LeadingArmLosesCaster) {
  // asin((h0 + h) / L) - asin(h0 / L), plane geometry.
  EXPECT_NEAR(change(ArmLayout::Leading, 800, 100, 50), -3.63, 0.01);
  EXPECT_NEAR(change(ArmLayout::Leading, 900, 0, 50), -3.18, 0.01);
}

TEST(AxleLift, TrailingArmGainsTheSameAndParallelLinksNothing) {
  EXPECT_NEAR(change(ArmLayout::Trailing, 800, 100, 50), 3.63, 0.01);
  EXPECT_EQ(change(ArmLayout::Parallel, 800, 100, 50), 0);
}

TEST(AxleLift, TwoLiftsAreOneLift) {
  const double atOnce = change(ArmLayout::Leading, 850, 40, 90);
  const double inSteps =
      change(ArmLayout::Leading, 850, 40, 30) + change(ArmLayout::Leading, 850, 70, 60);
  EXPECT_NEAR(atOnce, inSteps, 1e-9);
  EXPECT_NEAR(change(ArmLayout::Leading, 850, 130, -90), -atOnce, 1e-9) << "down again";
  EXPECT_EQ(change(ArmLayout::Trailing, 850, 40, 0), 0);
}

TEST(AxleLift, AgainstAnArmInThePlane) {
  // Axle at the origin, pivot behind it on a circle of the arm's length; the kingpin, clamped to
  // the arm, turns as the arm does. Raising the pivot turns its top forward.
  const double arm = 0.8, before = 0.1, after = 0.15;
  const double angleBefore = std::atan2(before, std::sqrt(arm * arm - before * before));
  const double angleAfter = std::atan2(after, std::sqrt(arm * arm - after * after));
  EXPECT_NEAR(change(ArmLayout::Leading, 800, 100, 50),
              -(angleAfter - angleBefore) * 180 / std::acos(-1.0), 1e-9);
}

TEST(Wedge, WorkedRow) {
  // 3 mm over 60 mm, plane geometry.
  EXPECT_NEAR(inDegrees(wedgeAngle({millimetres(3), millimetres(60)}).value()), 2.86, 0.01);
}

TEST(Wedge, RiseIsTheInverse) {
  const auto rise = wedgeRise(degrees(-3.6), millimetres(65)).value();
  EXPECT_NEAR(inDegrees(wedgeAngle({rise, millimetres(65)}).value()), 3.6, 1e-9);
}

TEST(AxleLift, RefusesWhatCannotBe) {
  const auto fieldOf = [](double arm, double pivot, double lift) {
    return casterChange(
               {ArmLayout::Leading, millimetres(arm), millimetres(pivot), millimetres(lift)})
        .error()
        .field;
  };
  EXPECT_EQ(fieldOf(0, 0, 0), "arm_length");
  EXPECT_EQ(fieldOf(800, 850, 0), "pivot_height");
  EXPECT_EQ(fieldOf(800, 100, 750), "lift");
  EXPECT_EQ(casterAfter(degrees(31), {}).error().field, "caster_before");
  EXPECT_NEAR(inDegrees(casterAfter(degrees(3), degrees(-3.63)).value()), -0.63, 1e-9);
  EXPECT_EQ(wedgeAngle({millimetres(3), {}}).error().field, "wedge_length");
  EXPECT_EQ(wedgeAngle({millimetres(60), millimetres(60)}).error().field, "wedge_rise");
  EXPECT_EQ(wedgeAngle({millimetres(-1), millimetres(60)}).error().field, "wedge_rise");
  EXPECT_EQ(wedgeRise(degrees(50), millimetres(60)).error().field, "angle");
  EXPECT_EQ(fromWord<ArmLayout>(word(ArmLayout::Trailing)), ArmLayout::Trailing);
}

}  // namespace
}  // namespace sw::mechanics
