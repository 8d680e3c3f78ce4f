// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/brake_torque_variation.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

Stiffness kilonewtonsPerMillimetre(double value) {
  return Stiffness::fromSi(value * 1e6);
}

TorqueVariationInput usual() {
  TorqueVariationInput input;
  input.thicknessVariation = millimetres(0.010);
  input.stiffness = kilonewtonsPerMillimetre(20);
  input.friction = 0.4;
  input.effectiveRadius = metres(0.12);
  input.pistonDiameter = millimetres(54);
  return input;
}

TEST(BrakeTorqueVariation, ForceTorqueAndPressure) {
  // Plane statics: 20 kN/mm x 10 um = 200 N; 2 x 0.4 x 0.12 m x 200 N = 19.2 N m; 200 N on 54 mm.
  const auto got = brakeTorqueVariation(usual()).value();
  EXPECT_NEAR(inNewtons(got.clampingForce), 200, 1);
  EXPECT_NEAR(inNewtonMetres(got.torque), 19.2, 0.096);
  ASSERT_TRUE(got.pressure);
  EXPECT_NEAR(got.pressure->si() / 1e5, 0.873, 0.004);
}

TEST(BrakeTorqueVariation, LinearInAllFour) {
  const double base = brakeTorqueVariation(usual())->torque.si();
  const auto torqueOf = [](auto change) {
    TorqueVariationInput input = usual();
    change(input);
    return brakeTorqueVariation(input)->torque.si();
  };
  EXPECT_NEAR(torqueOf([](auto& i) { i.thicknessVariation = 3 * i.thicknessVariation; }), 3 * base,
              1e-9);
  EXPECT_NEAR(torqueOf([](auto& i) { i.stiffness = 3 * i.stiffness; }), 3 * base, 1e-9);
  EXPECT_NEAR(torqueOf([](auto& i) { i.friction *= 0.5; }), base / 2, 1e-9);
  EXPECT_NEAR(torqueOf([](auto& i) { i.effectiveRadius = 2 * i.effectiveRadius; }), 2 * base, 1e-9);
  EXPECT_EQ(torqueOf([](auto& i) { i.thicknessVariation = Length{}; }), 0);
}

TEST(BrakeTorqueVariation, FrequencyFallsWithSpeed) {
  // One turn in 2 m at 20 m/s: 10 Hz, twice a turn 20 Hz.
  const Speed speed = kilometresPerHour(72);
  EXPECT_NEAR(judderFrequency(speed, metres(2), 1)->si(), 10, 1e-9);
  EXPECT_NEAR(judderFrequency(speed, metres(2), 2)->si(), 20, 1e-9);
  EXPECT_NEAR(judderFrequency(speed / 2, metres(2), 1)->si(), 5, 1e-9);
}

TEST(BrakeTorqueVariation, RefusesWhatCannotBe) {
  const auto fieldOf = [](auto change) {
    TorqueVariationInput input = usual();
    change(input);
    const auto got = brakeTorqueVariation(input);
    return got ? std::string("accepted") : got.error().field;
  };
  EXPECT_EQ(fieldOf([](auto& i) { i.thicknessVariation = millimetres(-1); }),
            "thickness_variation");
  EXPECT_EQ(fieldOf([](auto& i) { i.stiffness = {}; }), "stiffness");
  EXPECT_EQ(fieldOf([](auto& i) { i.friction = 0; }), "friction");
  EXPECT_EQ(fieldOf([](auto& i) { i.effectiveRadius = {}; }), "effective_radius");
  EXPECT_EQ(fieldOf([](auto& i) { i.pistonDiameter = Length{}; }), "piston_diameter");
  EXPECT_EQ(fieldOf([](auto& i) { i.friction = NAN; }), "friction");
  EXPECT_EQ(fieldOf([](auto& i) { i.pistonDiameter.reset(); }), "accepted");
  EXPECT_EQ(judderFrequency({}, metres(2), 1).error().field, "speed");
  EXPECT_EQ(judderFrequency(kilometresPerHour(50), {}, 1).error().field, "rolling_circumference");
  EXPECT_EQ(judderFrequency(kilometresPerHour(50), metres(2), 0).error().field, "order");
}

}  // namespace
}  // namespace sw::mechanics
