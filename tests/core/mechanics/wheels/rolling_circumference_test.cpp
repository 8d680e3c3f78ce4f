// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/rolling_circumference.h"

#include <gtest/gtest.h>

#include <numbers>

#include "mechanics/wheels/tyre_dimensions.h"

namespace sw::mechanics {
namespace {

constexpr auto kRadial = RollingConvention::DynamicRadial;

RollingCircumference rolling(const char* text) {
  const auto tyre = parseTyreDesignation(text).value();
  return circumferenceFromDiameter(nominalDimensions(tyre).value().diameter,
                                   conventionOf(tyre.construction))
      .value();
}

TEST(RollingCircumference, OfSizes) {
  struct Row {
    const char* text;
    double millimetres;
  };
  // 3.05 D, ETRTO as quoted by a technical note; D from the marking, 82 % where none is marked.
  for (const Row& row :
       {Row{"195/80 R15", 2113.7}, Row{"205 R16", 2264.9}, Row{"205/80 R16", 2239.9},
        Row{"235/70 R16", 2243.0}, Row{"265/75 R16", 2451.9}, Row{"235/85 R16", 2458.0},
        Row{"31x10.50 R15", 2401.6}}) {
    EXPECT_NEAR(inMillimetres(rolling(row.text).circumference), row.millimetres, 1) << row.text;
  }
}

TEST(RollingCircumference, Conventions) {
  const Length d = millimetres(700);
  const auto of = [&](RollingConvention convention) {
    return circumferenceFromDiameter(d, convention).value().circumference / d;
  };
  EXPECT_NEAR(of(RollingConvention::Geometric), std::numbers::pi, 1e-12);
  EXPECT_NEAR(of(kRadial), 3.05, 1e-12);
  EXPECT_NEAR(of(RollingConvention::DynamicDiagonal), 2.99, 1e-12);
  // The geometric one is 3 % too long for a radial.
  EXPECT_NEAR(of(kRadial) / of(RollingConvention::Geometric), 0.9708, 1e-4);
  // A static radius of 0.96 D / 2 gives 3.016 D.
  const auto standing = circumferenceFromStaticRadius(0.48 * d).value();
  EXPECT_NEAR(standing.circumference / d, 3.016, 5e-4);
  EXPECT_EQ(conventionOf(TyreConstruction::Diagonal), RollingConvention::DynamicDiagonal);
  EXPECT_EQ(conventionOf(TyreConstruction::Radial), kRadial);
}

TEST(RollingCircumference, GrowsWithSpeed) {
  // 195/80 R15 at 110 km/h: 2124.2 mm, half a per cent more than at 60 (WdK as quoted).
  const auto fast = atSpeed(rolling("195/80 R15"), kilometresPerHour(110)).value();
  EXPECT_NEAR(inMillimetres(fast.circumference), 2124.2, 0.5);
  const auto reference = atSpeed(rolling("195/80 R15"), kilometresPerHour(60)).value();
  EXPECT_NEAR(reference.circumference / rolling("195/80 R15").circumference, 1, 1e-12);
}

TEST(RollingCircumference, ARollOutIsMeasuredAtWalkingPace) {
  const auto measured = circumferenceFromRollOut(metres(10.8), 5).value();
  EXPECT_NEAR(inMillimetres(measured.circumference), 2160, 1e-9);
  EXPECT_NEAR(atSpeed(measured, kilometresPerHour(0)).value().circumference.si(), 2.16, 1e-12);
  // C60 / C0 = 1 / (1 - 60 / 10000).
  const auto at60 = atSpeed(measured, kilometresPerHour(60)).value();
  EXPECT_NEAR(at60.circumference.si(), 2.16 / 0.994, 1e-12);
}

TEST(RollingCircumference, RadiusAndTurns) {
  EXPECT_NEAR(inMillimetres(rolling("205 R16").dynamicRadius()), 360.5, 0.3);  // C / 2 pi
  EXPECT_NEAR(rolling("195/80 R15").turnsPerKilometre(), 473.1, 0.3);          // 1 km / C
}

TEST(RollingCircumference, TreadWearTakesTwiceItsDepth) {
  // 6 mm of tread take 12 mm off the diameter, 1.6 % of 742.6 mm.
  const auto fresh = circumferenceFromDiameter(millimetres(742.6), kRadial).value();
  const auto worn = circumferenceFromDiameter(millimetres(742.6), kRadial, millimetres(6)).value();
  EXPECT_NEAR(inMillimetres(fresh.circumference - worn.circumference), 3.05 * 12, 1e-9);
  EXPECT_NEAR(1 - worn.circumference / fresh.circumference, 0.016, 5e-4);
}

TEST(RollingCircumference, AtATurnRateIsThatOfItsSpeed) {
  // v = f C(v), checked by substitution.
  for (const auto& of : {rolling("205 R16"), circumferenceFromRollOut(metres(2.2), 1).value()}) {
    for (const double hertz : {0.0, 1.0, 9.811, 25.0}) {
      const auto there = atTurnRate(of, Frequency::fromSi(hertz)).value();
      const Speed speed = Speed::fromSi(hertz * there.circumference.si());
      EXPECT_NEAR(atSpeed(of, speed)->circumference.si(), there.circumference.si(), 1e-12) << hertz;
    }
    const auto fastest = atSpeed(of, kilometresPerHour(300))->circumference;
    EXPECT_EQ(atTurnRate(of, Frequency::fromSi(60))->circumference, fastest);
    EXPECT_EQ(atTurnRate(of, Frequency::fromSi(5000))->circumference, fastest);
  }
  EXPECT_EQ(atTurnRate(rolling("205 R16"), Frequency::fromSi(-1)).error().field, "frequency");
}

TEST(RollingCircumference, CarriesItsUncertainty) {
  EXPECT_EQ(rolling("205 R16").relativeUncertainty, 0.015);
  const auto measured = circumferenceFromRollOut(metres(2.2), 1).value();
  EXPECT_NEAR(inMillimetres(measured.standardUncertainty()), 6.6, 1e-9);  // 0.3 %
  EXPECT_EQ(withUncertainty(measured, 0.01).value().relativeUncertainty, 0.01);
  EXPECT_EQ(withUncertainty(measured, 0).error().field, "circumference_uncertainty");
  EXPECT_FALSE(withUncertainty(measured, 1.5));
}

TEST(RollingCircumference, RefusesWhatCannotBe) {
  EXPECT_EQ(circumferenceFromDiameter(metres(0), kRadial).error().field, "diameter");
  EXPECT_EQ(circumferenceFromDiameter(metres(1), kRadial, millimetres(-1)).error().field,
            "tread_worn");
  EXPECT_EQ(circumferenceFromDiameter(metres(0.7), kRadial, millimetres(80)).error().field,
            "tread_worn");
  EXPECT_EQ(circumferenceFromDiameter(metres(0.7), RollingConvention::StaticRadius).error().field,
            "convention");
  EXPECT_EQ(circumferenceFromStaticRadius(metres(-1)).error().field, "static_radius");
  EXPECT_EQ(circumferenceFromRollOut(metres(2), 0).error().field, "turns");
  EXPECT_EQ(circumferenceFromRollOut(metres(0), 1).error().field, "roll_out");
  EXPECT_EQ(atSpeed(rolling("205 R16"), kilometresPerHour(-1)).error().field, "speed");
  EXPECT_FALSE(atSpeed(rolling("205 R16"), kilometresPerHour(301)));
}

TEST(RollingCircumference, WordsGoBothWays) {
  for (const auto convention :
       {RollingConvention::Geometric, kRadial, RollingConvention::DynamicDiagonal,
        RollingConvention::StaticRadius, RollingConvention::RollOut}) {
    EXPECT_EQ(rollingConventionFromWord(word(convention)), convention);
  }
  EXPECT_FALSE(rollingConventionFromWord("radial"));
}

}  // namespace
}  // namespace sw::mechanics
