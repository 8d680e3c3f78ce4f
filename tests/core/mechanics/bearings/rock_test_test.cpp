// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/rock_test.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

std::vector<Length> all(std::initializer_list<double> values) {
  std::vector<Length> readings;
  for (const double value : values) readings.push_back(millimetres(value));
  return readings;
}

RockTestInput inputOf(std::vector<Length> on, std::vector<Length> off) {
  RockTestInput input;
  input.brakeOn = std::move(on);
  input.brakeOff = std::move(off);
  input.instrument.graduation = 0.05 / 1000;
  input.diameter = millimetres(406.4);
  return input;
}

TEST(RockTest, TheIncreaseIsTheWheelBearing) {
  // NumPy: means, scatter over sqrt(5) and 0.05 mm graduation twice in each; Welch-Satterthwaite.
  const auto got =
      rockTest(inputOf(all({1.20, 1.30, 1.25, 1.20, 1.30}), all({2.40, 2.55, 2.45, 2.50, 2.45})))
          .value();
  EXPECT_NEAR(inMillimetres(got.swivel.rock.value), 1.25, 1e-9);
  EXPECT_NEAR(inMillimetres(got.swivel.rock.standardUncertainty), 0.0302765, 1e-6);
  EXPECT_NEAR(inMillimetres(got.bearing.rock.value), 1.2200, 1e-9);
  EXPECT_NEAR(inMillimetres(got.bearing.rock.standardUncertainty), 0.0445346, 1e-6);
  EXPECT_NEAR(*got.bearing.rock.degreesOfFreedom, 23.3969, 1e-3);
  EXPECT_EQ(got.swivel.state, PlayState::Found);
  EXPECT_EQ(got.bearing.state, PlayState::Found);
  EXPECT_NEAR(inMillimetres(got.swivel.floor), 8.13, 0.01);
  EXPECT_NEAR(inMillimetres(got.bearing.floor), 3.175, 1e-9);
  EXPECT_EQ(got.bearing.rock.verdict, Verdict::Within);
}

TEST(RockTest, NoIncreaseClearsTheBearingNotTheSwivel) {
  const auto got = rockTest(inputOf(all({2.0, 2.1, 2.05}), all({2.1, 2.0, 2.05}))).value();
  EXPECT_EQ(got.bearing.state, PlayState::NoneNoticeable);
  EXPECT_EQ(got.swivel.state, PlayState::Found);
}

TEST(RockTest, OnlyTheBearing) {
  const auto got = rockTest(inputOf(all({0.05, 0.10, 0.05}), all({4.1, 4.0, 4.05}))).value();
  EXPECT_EQ(got.swivel.state, PlayState::NoneNoticeable);
  EXPECT_EQ(got.bearing.state, PlayState::Found);
  EXPECT_EQ(got.bearing.rock.verdict, Verdict::Outside);
}

TEST(RockTest, ScatterThatCoversTheIncreaseCannotTell) {
  const auto got = rockTest(inputOf(all({0.5, 2.0, 1.2}), all({1.0, 2.5, 1.6}))).value();
  EXPECT_EQ(got.bearing.state, PlayState::CannotTell);
  EXPECT_FALSE(got.reversed);
}

TEST(RockTest, LessRockWithTheBrakeOffIsNoBearing) {
  const auto got = rockTest(inputOf(all({2.0, 2.1, 2.05}), all({1.0, 1.1, 1.05}))).value();
  EXPECT_TRUE(got.reversed);
  EXPECT_EQ(got.bearing.state, PlayState::CannotTell);
}

TEST(RockTest, OneReadingEachTellsNothing) {
  const auto got = rockTest(inputOf(all({1.0}), all({3.0}))).value();
  EXPECT_FALSE(got.repeated);
  EXPECT_EQ(got.bearing.state, PlayState::CannotTell);
  EXPECT_EQ(got.bearing.rock.verdict, Verdict::Provisional);
  EXPECT_NEAR(inMillimetres(got.bearing.rock.value), 2.0, 1e-9);
}

TEST(RockTest, WithoutRepetitionNoProbabilityIsTold) {
  // JCGM 106 7.2 needs the distribution of the value; one reading does not show its scatter.
  const auto once = rockTest(inputOf(all({1.0}), all({5.0}))).value();
  EXPECT_FALSE(once.swivel.rock.conformanceProbability);
  EXPECT_EQ(once.swivel.rock.side, LimitSide::InsideLikely);
  EXPECT_FALSE(once.bearing.rock.conformanceProbability);
  EXPECT_EQ(once.bearing.rock.side, LimitSide::OutsideLikely);
  const auto half = rockTest(inputOf(all({1.0, 1.1, 1.0}), all({5.0}))).value();
  EXPECT_TRUE(half.swivel.rock.conformanceProbability) << "the brake-on rock was repeated";
  EXPECT_FALSE(half.bearing.rock.conformanceProbability);
}

TEST(RockTest, ExpectedRockOfAFloat) {
  // 2 x 0.10 x tan 15 deg / 60 x 350 = 0.313 mm (plane geometry, simplified).
  const BearingFloat bearing{millimetres(0.10), degrees(15), millimetres(60)};
  EXPECT_NEAR(inMillimetres(rockFromFloat(bearing, millimetres(350)).value()), 0.313, 0.002);
  EXPECT_NEAR(rockFromFloat(bearing, millimetres(700))->si(),
              2 * rockFromFloat(bearing, millimetres(350))->si(), 1e-15);
  EXPECT_EQ(rockFromFloat({{}, degrees(15), millimetres(60)}, millimetres(350))->si(), 0);
}

TEST(RockTest, RefusesWhatCannotBe) {
  const auto keyOf = [](auto change) {
    RockTestInput input = inputOf(all({1.0, 1.1, 1.0}), all({2.0, 2.1, 2.0}));
    change(input);
    const auto got = rockTest(input);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf([](auto& i) { i.brakeOn.clear(); }), "measure.no_readings brake_on");
  EXPECT_EQ(keyOf([](auto& i) { i.brakeOff[2] = millimetres(-1); }),
            "measure.not_positive brake_off/2");
  EXPECT_EQ(keyOf([](auto& i) { i.diameter = {}; }), "measure.not_positive diameter");
  EXPECT_EQ(keyOf([](auto& i) { i.noticeable = {}; }), "measure.not_positive noticeable");
  EXPECT_EQ(keyOf([](auto& i) { i.instrument.graduation = 0; }),
            "measure.not_positive instrument/graduation");
  EXPECT_EQ(rockFromFloat({millimetres(1), degrees(90), millimetres(60)}, metres(1)).error().key,
            "rock_test.bad_angle");
  EXPECT_EQ(rockFromFloat({millimetres(1), degrees(15), {}}, metres(1)).error().field,
            "bearing/spread");
}

}  // namespace
}  // namespace sw::mechanics
