// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/trail.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

TEST(CasterTrail, WorkedRow) {
  // r tan(caster), plane geometry.
  EXPECT_NEAR(inMillimetres(casterTrail({millimetres(360), degrees(3), {}}).value()), 18.87, 0.05);
  const auto offset = casterTrail({millimetres(360), degrees(3), millimetres(10)}).value();
  EXPECT_NEAR(inMillimetres(offset), 8.87, 0.05);
}

TEST(CasterTrail, FollowsTheSignOfTheCaster) {
  EXPECT_EQ(casterTrail({metres(0.36), {}, {}}).value().si(), 0);
  const auto ahead = casterTrail({metres(0.36), degrees(4), {}}).value();
  const auto behind = casterTrail({metres(0.36), degrees(-4), {}}).value();
  EXPECT_NEAR((ahead + behind).si(), 0, 1e-12);
}

TEST(Scrub, WorkedRow) {
  const ScrubInput input{millimetres(60), millimetres(360), degrees(7), degrees(1.5), {}};
  EXPECT_NEAR(inMillimetres(scrub(input).value()), 6.37, 0.05);
  ScrubInput upright = input;
  upright.camber = {};
  EXPECT_NEAR(inMillimetres(scrub(upright).value()), 15.80, 0.05);
}

TEST(Scrub, ASpacerAddsItsFullAmount) {
  ScrubInput input{millimetres(60), millimetres(360), degrees(7), degrees(1.5), {}};
  const auto without = scrub(input).value();
  input.spacer = millimetres(30);
  EXPECT_NEAR(inMillimetres(scrub(input).value() - without), 30, 1e-9);
}

TEST(Scrub, AgainstPointsInThePlane) {
  // Axis and wheel as lines through their points at hub height, down to the ground.
  const double r = 0.35, q = 0.055, inclination = 8, camber = -1;
  const double axisAtGround = r * std::tan(inclination * std::acos(-1.0) / 180);
  const double wheelAtGround = q - r * std::tan(camber * std::acos(-1.0) / 180);
  const auto got = scrub({metres(q), metres(r), degrees(inclination), degrees(camber), {}}).value();
  EXPECT_NEAR(got.si(), wheelAtGround - axisAtGround, 1e-12);
}

TEST(Trail, RefusesWhatCannotBe) {
  EXPECT_EQ(casterTrail({{}, degrees(3), {}}).error().field, "loaded_radius");
  EXPECT_EQ(casterTrail({metres(0.36), degrees(31), {}}).error().field, "caster");
  EXPECT_EQ(casterTrail({metres(0.36), {}, metres(std::nan(""))}).error().field, "hub_offset");
  EXPECT_EQ(scrub({{}, metres(-1), {}, {}, {}}).error().field, "loaded_radius");
  EXPECT_EQ(scrub({{}, metres(1), degrees(-31), {}, {}}).error().field, "kingpin_inclination");
  EXPECT_EQ(scrub({{}, metres(1), {}, degrees(31), {}}).error().field, "camber");
}

}  // namespace
}  // namespace sw::mechanics
