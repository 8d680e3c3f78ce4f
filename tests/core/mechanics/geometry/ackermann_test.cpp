// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/ackermann.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

const SteeredAxle kAxle{metres(1.30), metres(2.54)};

TEST(Ackermann, WorkedRow) {
  // cot 20 - 1.30 / 2.54 = cot 24.10.
  EXPECT_NEAR(inDegrees(innerAngle(kAxle, degrees(20)).value()), 24.10, 0.02);
}

TEST(Ackermann, InnerAndOuterAreInverse) {
  for (const double outer : {0.0, 0.5, 12.0, 33.0}) {
    const auto inner = innerAngle(kAxle, degrees(outer)).value();
    EXPECT_NEAR(inDegrees(outerAngle(kAxle, inner).value()), outer, 1e-9);
    EXPECT_GE(inDegrees(inner), outer);
  }
}

TEST(Ackermann, BothWheelsRollAboutOnePoint) {
  // The point lies on the line of the rear axle: its distance from either swivel follows from each
  // wheel alone.
  const double inner = 28;
  const double outer = inDegrees(outerAngle(kAxle, degrees(inner)).value());
  const double fromInner = 2.54 / std::tan(inner * std::acos(-1.0) / 180);
  const double fromOuter = 2.54 / std::tan(outer * std::acos(-1.0) / 180);
  EXPECT_NEAR(fromOuter - fromInner, 1.30, 1e-9);
}

TEST(Ackermann, RefusesWhatCannotBe) {
  EXPECT_EQ(innerAngle({{}, metres(2.5)}, degrees(20)).error().field, "kingpin_spacing");
  EXPECT_EQ(innerAngle({metres(1.3), {}}, degrees(20)).error().field, "wheelbase");
  EXPECT_EQ(innerAngle(kAxle, degrees(-1)).error().field, "outer");
  EXPECT_EQ(innerAngle(kAxle, degrees(70)).error().field, "outer") << "the inner one beyond 90";
  EXPECT_EQ(innerDeviation(kAxle, degrees(20), degrees(90)).error().field, "measured_inner");
  EXPECT_NEAR(inDegrees(innerDeviation(kAxle, degrees(20), degrees(24)).value()), -0.10, 0.02);
  EXPECT_EQ(outerAngle(kAxle, degrees(90)).error().field, "inner");
}

}  // namespace
}  // namespace sw::mechanics
