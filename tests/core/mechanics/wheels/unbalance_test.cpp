// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/unbalance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace sw::mechanics {
namespace {

constexpr auto kInner = BalancePlane::Inner;
constexpr auto kOuter = BalancePlane::Outer;

Mass grams(double value) {
  return kilograms(value / 1000);
}
/// r_dyn from a rolling circumference in mm.
Length radiusOf(double circumference) {
  return millimetres(circumference / (2 * std::numbers::pi));
}
// 3.05 D of 205 R16 at 82 % and of 195/80 R15.
const Length kWheel205 = radiusOf(2264.9);
const Length kWheel195 = radiusOf(2113.7);

UnbalanceAtSpeed one(double gramsOn, double radius, Length wheel, double kilometres) {
  const std::vector<WheelWeight> weights{{kInner, grams(gramsOn), {}}};
  return unbalanceAtSpeed(weights, {millimetres(radius), millimetres(150), {}},
                          kilometresPerHour(kilometres), wheel)
      .value();
}

double gramMillimetres(Unbalance value) {
  return value.si() * 1e6;
}

TEST(UnbalanceAtSpeed, ForceOfAWeight) {
  // F = m r w^2, w = v / r_dyn.
  EXPECT_NEAR(one(20, 203.2, kWheel205, 80).force.si(), 15.45, 0.05);
  EXPECT_NEAR(one(20, 203.2, kWheel205, 80).angularSpeed, 61.65, 0.01);
  EXPECT_NEAR(one(10, 190.5, kWheel195, 100).force.si(), 12.99, 0.05);
  EXPECT_NEAR(one(60, 203.2, kWheel205, 110).force.si(), 87.6, 0.3);
}

TEST(UnbalanceAtSpeed, GrowsWithTheSquareOfTheSpeed) {
  const auto slow = one(20, 203.2, kWheel205, 80);
  const auto fast = one(20, 203.2, kWheel205, 160);
  EXPECT_NEAR(fast.force / slow.force, 4.0, 0.001);
  EXPECT_NEAR(fast.couple / slow.couple, 4.0, 0.001);
}

TEST(UnbalanceAtSpeed, APairOppositeEachOtherHidesFromABubbleBalance) {
  const std::vector<WheelWeight> pair{{kInner, grams(20), degrees(0)},
                                      {kOuter, grams(20), degrees(180)}};
  const auto got = unbalanceAtSpeed(pair, {millimetres(203.2), millimetres(150), {}},
                                    kilometresPerHour(80), kWheel205)
                       .value();
  EXPECT_NEAR(gramMillimetres(got.statical.amount), 0, 1e-9);
  EXPECT_NEAR(got.force.si(), 0, 1e-9);
  EXPECT_NEAR(got.couple.si(), 2.317, 0.01);
  EXPECT_NEAR(inDegrees(got.coupleAngle), 180, 1e-9);
  // A single weight on a lever of 60 mm turns the wheel about its swivel by less.
  const std::vector<WheelWeight> single{{kInner, grams(20), {}}};
  const BalanceGeometry lever{millimetres(203.2), millimetres(150), millimetres(60)};
  const auto turned = unbalanceAtSpeed(single, lever, kilometresPerHour(80), kWheel205).value();
  EXPECT_NEAR(turned.momentOfForce.si(), 0.93, 0.005);
}

TEST(UnbalanceAtSpeed, BothPlanesAlikeAreAllStatic) {
  const std::vector<WheelWeight> pair{{kInner, grams(15), degrees(70)},
                                      {kOuter, grams(15), degrees(70)}};
  const auto got = unbalanceAtSpeed(pair, {millimetres(200), millimetres(150), {}},
                                    kilometresPerHour(80), kWheel205)
                       .value();
  EXPECT_NEAR(gramMillimetres(got.statical.amount), 6000, 1e-6);
  EXPECT_NEAR(inDegrees(got.statical.angle), 70, 1e-9);
  EXPECT_NEAR(got.couple.si(), 0, 1e-12);
}

TEST(UnbalanceAtSpeed, WeightsAddAsVectors) {
  // 30 g and 40 g a quarter turn apart are 50 g at atan(4 / 3).
  const std::vector<WheelWeight> weights{{kOuter, grams(30), degrees(0)},
                                         {kOuter, grams(40), degrees(90)}};
  const auto got =
      unbalanceAtSpeed(weights, {millimetres(100), {}, {}}, kilometresPerHour(50), metres(0.3))
          .value();
  EXPECT_NEAR(gramMillimetres(got.outer.amount), 5000, 1e-6);
  EXPECT_NEAR(inDegrees(got.outer.angle), 53.1301, 1e-4);
  EXPECT_EQ(got.inner.amount.si(), 0);
  EXPECT_EQ(got.couple.si(), 0) << "planes that coincide";
}

TEST(UnbalanceAtSpeed, StandingStillOrWithoutWeightsNothingPulls) {
  EXPECT_EQ(one(20, 203.2, kWheel205, 0).force.si(), 0);
  const auto none = unbalanceAtSpeed({}, {millimetres(200), millimetres(150), {}},
                                     kilometresPerHour(80), kWheel205);
  EXPECT_EQ(none.value().force.si(), 0);
  EXPECT_EQ(none.value().statical.angle.si(), 0);
}

TEST(UnbalanceGrade, IsFarLooserThanAWorkshop) {
  // ISO 21940-11 (from memory): G40, 28 kg on 205 R16 at 120 km/h.
  const double w = kilometresPerHour(120).si() / kWheel205.si();
  const auto got = gradeAllowance(40, kilograms(28), w, millimetres(203.2)).value();
  EXPECT_NEAR(inMillimetres(got.eccentricity), 0.4326, 0.4326 * 0.005);
  EXPECT_NEAR(gramMillimetres(got.unbalance), 12112, 12112 * 0.005);
  EXPECT_NEAR(got.atRadius / grams(1), 59.6, 59.6 * 0.005);
  EXPECT_NEAR(got.eachPlane / grams(1), 29.8, 29.8 * 0.005);
  const double w195 = kilometresPerHour(130).si() / kWheel195.si();
  const auto other = gradeAllowance(40, kilograms(20), w195, millimetres(190.5)).value();
  EXPECT_NEAR(gramMillimetres(other.unbalance), 7453, 7453 * 0.005);
  EXPECT_NEAR(other.eachPlane / grams(1), 19.6, 19.6 * 0.005);
}

TEST(UnbalanceGrade, AgreesWithTheHandbookFormula) {
  // p = 3.6 G P D / (v d), P in kg, D tyre and d rim in mm, v in km/h: both planes together where
  // the wheel rolls on its geometric diameter (Wang, Vehicle Noise and Vibration Refinement, 2010,
  // p. 400, whose factor has lost its decimal point; 3.6 follows from the units).
  const double grade = 14, wheel = 23, tyre = 760, rim = 406.4, speed = 95;
  const double w = speed / 3.6 / (tyre / 2000);
  const auto got = gradeAllowance(grade, kilograms(wheel), w, millimetres(rim / 2)).value();
  EXPECT_NEAR(got.atRadius / grams(1), 3.6 * grade * wheel * tyre / (speed * rim), 1e-9);
}

TEST(UnbalanceGrade, AllowanceAndGradeAreInverse) {
  const auto allowance = gradeAllowance(16, kilograms(25), 88, millimetres(200)).value();
  EXPECT_NEAR(gradeOf(allowance.unbalance, kilograms(25), 88).value(), 16, 1e-9);
}

TEST(UnbalanceAtSpeed, RefusesWhatCannotBe) {
  const BalanceGeometry geometry{millimetres(200), millimetres(150), {}};
  const auto fieldOf = [&](const WheelWeight& weight) {
    const std::vector<WheelWeight> weights{{kInner, grams(1), {}}, weight};
    return unbalanceAtSpeed(weights, geometry, kilometresPerHour(80), metres(0.36)).error().field;
  };
  EXPECT_EQ(fieldOf({kOuter, grams(-1), {}}), "weights/1/amount");
  EXPECT_EQ(fieldOf({kOuter, grams(1), radians(std::nan(""))}), "weights/1/angle");
  EXPECT_EQ(unbalanceAtSpeed({}, {{}, {}, {}}, {}, metres(1)).error().field, "weight_radius");
  EXPECT_EQ(unbalanceAtSpeed({}, geometry, kilometresPerHour(-1), metres(1)).error().field,
            "speed");
  EXPECT_EQ(unbalanceAtSpeed({}, geometry, {}, {}).error().field, "dynamic_radius");
  const std::vector<WheelWeight> many(101, {kInner, grams(1), {}});
  EXPECT_EQ(unbalanceAtSpeed(many, geometry, {}, metres(1)).error().field, "weights");
  EXPECT_EQ(gradeAllowance(40, kilograms(20), 0, metres(0.2)).error().field, "speed");
  EXPECT_EQ(gradeOf({}, kilograms(0), 1).error().field, "wheel_mass");
  EXPECT_EQ(fromWord<BalancePlane>(word(kOuter)), kOuter);
  EXPECT_FALSE(fromWord<BalancePlane>("middle"));
}

}  // namespace
}  // namespace sw::mechanics
