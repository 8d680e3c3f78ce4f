// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/play_limits.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

TEST(PlayLimits, KingpinRockScalesWithTheWheel) {
  // Superseded British inspection guide: 10 mm on a 500 mm wheel, in proportion.
  EXPECT_NEAR(inMillimetres(kingpinRockLimit(millimetres(406.4)).value()), 8.13, 0.01);
  EXPECT_NEAR(inMillimetres(kingpinRockLimit(millimetres(500)).value()), 10, 1e-12);
}

TEST(PlayLimits, WheelBearing) {
  EXPECT_NEAR(inMillimetres(kBearingRockLimit), 3.18, 0.006);  // COMAR 11.22.03.04: 1/8 in
}

TEST(PlayLimits, SteeringLinkage) {
  // 49 CFR 570.60.
  struct Row {
    double rim, mass, expected;  // in, lb, in
  };
  const Row rows[]{{15, 6000, 0.25},   {22.5, 6000, 0.25},   {20, 10000, 0.25},
                   {16, 12000, 0.25},  {16.5, 12000, 0.375}, {18, 12000, 0.375},
                   {18.1, 12000, 0.5}, {22.5, 12000, 0.5}};
  for (const Row& row : rows) {
    const auto limit = linkageRockLimit(inches(row.rim), kilograms(row.mass * 0.45359237)).value();
    EXPECT_NEAR(inInches(limit), row.expected, 1e-12) << row.rim << " in, " << row.mass << " lb";
  }
  EXPECT_NEAR(inMillimetres(linkageRockLimit(millimetres(381), kilograms(2000)).value()), 6.35,
              1e-9);
}

TEST(PlayLimits, SteeringWheelLash) {
  // 49 CFR 570.60; between two sizes the stricter row.
  struct Row {
    double wheel, expected;  // in
  };
  for (const Row& row : {Row{14, 2}, Row{16, 2}, Row{17, 2}, Row{18, 2.25}, Row{19.9, 2.25},
                         Row{20, 2.5}, Row{22, 2.75}, Row{24, 2.75}}) {
    EXPECT_NEAR(inInches(steeringLashLimit(inches(row.wheel)).value()), row.expected, 1e-12)
        << row.wheel;
  }
  EXPECT_NEAR(inInches(steeringLashLimit(millimetres(457.2)).value()), 2.25, 1e-12);
}

TEST(PlayLimits, SteeringWheelLashByGear) {
  // Superseded British inspection guide: 75 mm box, 13 mm rack on 380 mm, in proportion.
  EXPECT_NEAR(inMillimetres(steeringLashLimit(millimetres(420), SteeringGear::Box).value()), 82.9,
              0.1);
  EXPECT_NEAR(inMillimetres(steeringLashLimit(millimetres(380), SteeringGear::Rack).value()), 13,
              1e-9);
}

TEST(PlayLimits, RefusesWhatCannotBe) {
  EXPECT_EQ(kingpinRockLimit({}).error().field, "wheel_diameter");
  EXPECT_EQ(linkageRockLimit({}, kilograms(1)).error().field, "rim_diameter");
  EXPECT_EQ(linkageRockLimit(inches(16), kilograms(NAN)).error().field, "gross_mass");
  EXPECT_EQ(steeringLashLimit(millimetres(-1)).error().field, "steering_wheel_diameter");
  EXPECT_EQ(steeringLashLimit({}, SteeringGear::Box).error().field, "steering_wheel_diameter");
}

}  // namespace
}  // namespace sw::mechanics
