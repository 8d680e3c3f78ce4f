// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/wheel_bearing.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

PlaySetting playOf(std::initializer_list<double> millimetresRead) {
  PlaySetting setting;
  for (const double value : millimetresRead) setting.readings.push_back(millimetres(value));
  setting.instrument.graduation = 0.001 / 1000;
  return setting;
}

PullSetting pullOf(std::initializer_list<double> newtonsRead) {
  PullSetting setting;
  for (const double value : newtonsRead) setting.readings.push_back(newtons(value));
  setting.instrument.graduation = 0.5;
  setting.instrument.permissibleError = 0.4;
  setting.radius = millimetres(63.5);
  setting.radiusUncertainty = millimetres(1);
  return setting;
}

TEST(WheelBearing, PlausibleFloatInMillimetres) {
  // 0.001 to 0.005 in (TMC RP 618, as quoted).
  EXPECT_NEAR(inMillimetres(kPlausibleFloatLeast), 0.025, 5e-4);
  EXPECT_NEAR(inMillimetres(kPlausibleFloatMost), 0.127, 5e-4);
}

TEST(WheelBearing, EndFloatAgainstItsOwnLimits) {
  PlaySetting setting = playOf({0.060, 0.062, 0.061});
  setting.limits = {.min = millimetres(0.03), .max = millimetres(0.09)};
  const auto got = endFloat(setting).value();
  EXPECT_NEAR(inMillimetres(got.play.value), 0.061, 1e-9);
  EXPECT_EQ(got.play.verdict, Verdict::Within);
  EXPECT_FALSE(got.plausibility) << "the vehicle's own figure counts";
  setting.limits = {.min = millimetres(0.07), .max = millimetres(0.09)};
  EXPECT_EQ(endFloat(setting)->play.verdict, Verdict::Outside);
  setting.limits = {.min = millimetres(0.0605), .max = millimetres(0.09)};
  EXPECT_EQ(endFloat(setting)->play.verdict, Verdict::Undecided);
}

TEST(WheelBearing, WithoutALimitPlausibilityIsNoVerdict) {
  const auto got = endFloat(playOf({0.060, 0.062, 0.061})).value();
  EXPECT_EQ(got.play.verdict, Verdict::NoLimit);
  EXPECT_EQ(got.plausibility, Verdict::Within);
  EXPECT_EQ(endFloat(playOf({0.2, 0.2, 0.2}))->plausibility, Verdict::Outside);
  EXPECT_EQ(endFloat(playOf({0.0, 0.0, 0.0}))->plausibility, Verdict::Outside)
      << "no float at all may be a preload";
}

TEST(WheelBearing, FewReadingsAreProvisional) {
  PlaySetting setting = playOf({0.060, 0.062});
  setting.limits.max = millimetres(0.09);
  EXPECT_EQ(endFloat(setting)->play.verdict, Verdict::Provisional);
  PullSetting pull = pullOf({12, 12.5});
  pull.limits.max = newtonMetres(2);
  EXPECT_EQ(preloadPull(pull)->torque.verdict, Verdict::Provisional);
}

TEST(WheelBearing, OneReadingTellsNoProbability) {
  // JCGM 106 7.2 needs the distribution of the value; one reading does not show its scatter.
  PlaySetting setting = playOf({0.060});
  setting.limits.max = millimetres(0.09);
  EXPECT_FALSE(endFloat(setting)->play.conformanceProbability);
  EXPECT_EQ(endFloat(setting)->play.side, LimitSide::InsideLikely);
  PullSetting pull = pullOf({12});
  pull.limits.max = newtonMetres(2);
  EXPECT_FALSE(preloadPull(pull)->torque.conformanceProbability);
  EXPECT_EQ(preloadPull(pull)->torque.side, LimitSide::InsideLikely);
  EXPECT_EQ(preloadPull(pull)->torque.verdict, Verdict::Provisional);
  pull.limits.max = newtonMetres(0.5);
  EXPECT_EQ(preloadPull(pull)->torque.side, LimitSide::OutsideLikely);
}

TEST(WheelBearing, ACoarseScaleCannotProveANarrowBandOfTorque) {
  // T / u = 0.05 / (0.0635 m x hypot(0.5 / sqrt 12, 0.4 / sqrt 3) N) = 2.89 < 3.92 (JCGM 106).
  PullSetting pull = pullOf({12, 12, 12});
  pull.limits = {.min = newtonMetres(0.74), .max = newtonMetres(0.79)};
  EXPECT_EQ(preloadPull(pull)->torque.verdict, Verdict::InstrumentTooCoarse);
  pull.readings = {newtons(12)};
  EXPECT_EQ(preloadPull(pull)->torque.verdict, Verdict::InstrumentTooCoarse);
  pull = pullOf({20, 20, 20});
  pull.limits = {.min = newtonMetres(0.74), .max = newtonMetres(0.79)};
  EXPECT_EQ(preloadPull(pull)->torque.verdict, Verdict::Outside) << "a coarse scale may condemn";
}

TEST(WheelBearing, ACoarseDialCannotProveANarrowBand) {
  // T / u = 0.05 / 0.0204 = 2.45 < 3.92 (JCGM 106): 0.05 mm graduation, twice in a difference.
  PlaySetting setting = playOf({0.05, 0.05, 0.05});
  setting.instrument.graduation = 0.05 / 1000;
  setting.limits = {.min = millimetres(0.03), .max = millimetres(0.08)};
  EXPECT_EQ(endFloat(setting)->play.verdict, Verdict::InstrumentTooCoarse);
}

TEST(WheelBearing, AUnitHasOnlyAnUpperFigure) {
  PlaySetting setting = playOf({0.010, 0.012, 0.011});
  setting.limits.max = millimetres(0.05);
  EXPECT_EQ(unitPlay(setting)->play.verdict, Verdict::Within);
  setting.limits.max = millimetres(0.005);
  EXPECT_EQ(unitPlay(setting)->play.verdict, Verdict::Outside);
  EXPECT_FALSE(unitPlay(setting)->plausibility) << "the range of an adjusted pair is not its own";
  setting.limits.max.reset();
  EXPECT_EQ(unitPlay(setting)->play.verdict, Verdict::NoLimit);
  EXPECT_FALSE(unitPlay(setting)->plausibility);
  setting.limits.min = millimetres(0.02);
  EXPECT_EQ(unitPlay(setting).error().key, "wheel_bearing.not_for_kind");
}

TEST(WheelBearing, TorqueOfAPullAtAStud) {
  // NumPy: mean 12.2 N x 63.5 mm; scatter, graduation 0.5 N, permissible error 0.4 N, radius u 1
  // mm.
  PullSetting setting = pullOf({12.0, 12.5, 12.0, 12.5, 12.0});
  setting.limits = {.min = newtonMetres(0.5), .max = newtonMetres(0.9)};
  const auto got = preloadPull(setting).value();
  EXPECT_NEAR(inNewtonMetres(got.torque.value), 0.77470, 1e-9);
  EXPECT_NEAR(inNewtonMetres(got.torque.standardUncertainty), 0.02254733, 1e-7);
  EXPECT_NEAR(*got.torque.degreesOfFreedom, 282.594, 0.01);
  EXPECT_EQ(got.torque.verdict, Verdict::Within);
  setting.limits.max = newtonMetres(0.78);
  EXPECT_EQ(preloadPull(setting)->torque.verdict, Verdict::Undecided);
  setting.limits.max = newtonMetres(0.70);
  EXPECT_EQ(preloadPull(setting)->torque.verdict, Verdict::Outside);
}

TEST(WheelBearing, APullOffItsLineIsCorrectedDown) {
  PullSetting setting = pullOf({12, 12, 12});
  const double square = preloadPull(setting)->torque.value.si();
  setting.offSquareWithin = degrees(10);
  // Mean of the cosine within 10 degrees: 0.9949308 (SciPy).
  EXPECT_NEAR(preloadPull(setting)->torque.value.si() / square, 0.9949308, 1e-6);
}

TEST(WheelBearing, WordsForthAndBack) {
  for (const auto kind : {WheelBearingKind::EndFloat, WheelBearingKind::PreloadPull,
                          WheelBearingKind::UnitWithoutSetting}) {
    EXPECT_EQ(fromWord<WheelBearingKind>(word(kind)), kind);
  }
  EXPECT_FALSE(fromWord<WheelBearingKind>("taper"));
}

TEST(WheelBearing, RefusesWhatCannotBe) {
  const auto playKey = [](auto change) {
    PlaySetting setting = playOf({0.06, 0.06, 0.06});
    change(setting);
    const auto got = endFloat(setting);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(playKey([](auto& s) { s.readings.clear(); }), "measure.no_readings readings");
  EXPECT_EQ(playKey([](auto& s) { s.readings[1] = millimetres(-0.1); }),
            "measure.not_positive readings/1");
  EXPECT_EQ(playKey([](auto& s) {
              s.limits = {.min = millimetres(0.2), .max = millimetres(0.1)};
            }).substr(0, 19),
            "measure.empty_limit");
  const auto pullKey = [](auto change) {
    PullSetting setting = pullOf({12, 12, 12});
    change(setting);
    const auto got = preloadPull(setting);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(pullKey([](auto& s) { s.readings.clear(); }), "measure.no_readings readings");
  EXPECT_EQ(pullKey([](auto& s) { s.radius = {}; }), "measure.not_positive radius");
  EXPECT_EQ(pullKey([](auto& s) { s.offSquareWithin = degrees(90); }),
            "measure.angle_too_large off_square_within");
  EXPECT_EQ(pullKey([](auto& s) { s.limits = {.min = newtonMetres(2), .max = newtonMetres(1)}; }),
            "measure.empty_limit limit");
}

}  // namespace
}  // namespace sw::mechanics
