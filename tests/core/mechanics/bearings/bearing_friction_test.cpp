// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/bearing_friction.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

BearingFrictionInput usual() {
  BearingFrictionInput input;
  input.load = newtons(2000);
  input.bore = millimetres(30);
  return input;
}

TEST(BearingFriction, HandbookForm) {
  // 0.0018 x 2000 N x 15 mm = 54 N mm, up to twice at the start (machine design tables).
  const auto got = bearingFriction(usual()).value();
  EXPECT_NEAR(inNewtonMetres(got.running), 0.054, 0.00027);
  EXPECT_NEAR(inNewtonMetres(got.startingUpTo), 0.108, 0.00054);
}

TEST(BearingFriction, ProportionalToLoadAndBore) {
  BearingFrictionInput input = usual();
  const double base = bearingFriction(input)->running.si();
  input.load = 2 * input.load;
  EXPECT_NEAR(bearingFriction(input)->running.si(), 2 * base, 1e-12);
  input.bore = input.bore / 2;
  EXPECT_NEAR(bearingFriction(input)->running.si(), base, 1e-12);
  input.load = {};
  EXPECT_EQ(bearingFriction(input)->running.si(), 0);
}

TEST(BearingFriction, RefusesWhatCannotBe) {
  const auto fieldOf = [](auto change) {
    BearingFrictionInput input = usual();
    change(input);
    const auto got = bearingFriction(input);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(fieldOf([](auto& i) { i.load = newtons(-1); }), "measure.not_positive load");
  EXPECT_EQ(fieldOf([](auto& i) { i.bore = {}; }), "measure.not_positive bore");
  EXPECT_EQ(fieldOf([](auto& i) { i.factor = NAN; }), "measure.not_finite friction_factor");
  EXPECT_EQ(fieldOf([](auto& i) { i.startFactor = 0.5; }),
            "bearing_friction.bad_start_factor start_factor");
  EXPECT_EQ(fieldOf([](auto& i) { i.startFactor = 1; }), "accepted");
}

}  // namespace
}  // namespace sw::mechanics
