// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_thickness.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace sw::mechanics {
namespace {

std::vector<Length> inMillimetresAll(std::initializer_list<double> values) {
  std::vector<Length> readings;
  for (const double value : values) readings.push_back(millimetres(value));
  return readings;
}

InstrumentCapability micrometer(double graduation) {
  InstrumentCapability instrument;
  instrument.graduation = graduation / 1000;
  instrument.permissibleError = 0.004 / 1000;
  return instrument;
}

/// Eight points of a worn disc.
DiscThicknessInput worn() {
  DiscThicknessInput input;
  input.readings =
      inMillimetresAll({11.980, 11.975, 11.968, 11.960, 11.957, 11.962, 11.970, 11.978});
  input.instrument = micrometer(0.001);
  return input;
}

/// Twelve equal points but one, so that the variation is this much.
DiscThicknessInput varying(double variation, double graduation) {
  DiscThicknessInput input;
  input.readings = std::vector<Length>(12, millimetres(12));
  input.readings[3] = millimetres(12 + variation);
  input.instrument = micrometer(graduation);
  input.variationLimit = inches(0.0005);
  return input;
}

TEST(DiscThickness, MinimumMeanVariation) {
  const auto got = discThickness(worn()).value();
  EXPECT_NEAR(inMillimetres(got.variation.value), 0.023, 1e-9);  // arithmetic
  EXPECT_NEAR(inMillimetres(got.minimum.value), 11.957, 1e-9);
  EXPECT_NEAR(inMillimetres(got.extent.mean), 11.96875, 1e-9);
  EXPECT_EQ(got.extent.leastAt, 4U);
  EXPECT_EQ(got.minimum.verdict, Verdict::NoLimit);
  EXPECT_EQ(got.variation.verdict, Verdict::NoLimit);
}

TEST(DiscThickness, LimitsInInchesAreExact) {
  // International inch of 1959.
  EXPECT_NEAR(inMillimetres(inches(0.0005)), 0.0127, 1e-15);
  EXPECT_NEAR(inMillimetres(inches(0.004)), 0.1016, 1e-15);
  EXPECT_NEAR(inMillimetres(inches(0.125)), 3.175, 1e-15);
}

TEST(DiscThickness, AFineMicrometerProvesTheVariationOutside) {
  // U (k = 2) of the difference, from two graduations: 2 x 0.001 sqrt(2 / 12) = 0.0008 mm.
  DiscThicknessInput input = worn();
  input.variationLimit = inches(0.0005);
  const auto got = discThickness(input).value();
  EXPECT_NEAR(2 * inMillimetres(got.variation.standardUncertainty), 0.0008, 5e-5);
  EXPECT_EQ(got.variation.verdict, Verdict::Outside);
}

TEST(DiscThickness, ACoarseMicrometerDecidesNothingNearItsLimit) {
  // U (k = 2) 2 x 0.01 sqrt(2 / 12) = 0.0082 mm, two thirds of a limit of 0.0127 mm.
  const auto got = discThickness(varying(0.010, 0.01)).value();
  EXPECT_NEAR(2 * inMillimetres(got.variation.standardUncertainty), 0.0082, 5e-5);
  EXPECT_EQ(got.variationDecision, Verdict::Undecided);
  EXPECT_EQ(got.variation.verdict, Verdict::InstrumentTooCoarse);
  // Nothing below the limit is proved by it, everything beyond limit + U is.
  EXPECT_EQ(discThickness(varying(0.000, 0.01))->variation.verdict, Verdict::InstrumentTooCoarse);
  EXPECT_EQ(discThickness(varying(0.030, 0.01))->variation.verdict, Verdict::Outside);
  EXPECT_EQ(discThickness(varying(0.010, 0.001))->variation.verdict, Verdict::Within);
}

TEST(DiscThickness, TheMicrometersOwnErrorCancelsInTheVariation) {
  DiscThicknessInput input = varying(0.010, 0.001);
  const auto fine = discThickness(input).value();
  input.instrument.permissibleError = 0.05 / 1000;
  const auto poor = discThickness(input).value();
  EXPECT_EQ(fine.variation.standardUncertainty, poor.variation.standardUncertainty);
  EXPECT_LT(fine.minimum.standardUncertainty, poor.minimum.standardUncertainty);
  input.instrument.localError = 0.002 / 1000;
  // Root of two graduations and the local error, JCGM 100 (mem): by hand.
  EXPECT_NEAR(inMillimetres(discThickness(input)->variation.standardUncertainty),
              std::hypot(0.001 * std::sqrt(2.0 / 12), 0.002 / std::sqrt(3.0)), 1e-12);
}

TEST(DiscThickness, FewPointsAreBlindAndProveNothingBelowTheLimit) {
  DiscThicknessInput input = varying(0.002, 0.001);
  input.readings.resize(4);
  auto got = discThickness(input).value();
  EXPECT_EQ(got.variationDecision, Verdict::Within);
  EXPECT_EQ(got.variation.verdict, Verdict::Undecided);
  EXPECT_EQ(got.variation.side, LimitSide::InsideLikely);
  input.readings[0] = millimetres(12.05);
  EXPECT_EQ(discThickness(input)->variation.verdict, Verdict::Outside) << "what is seen is there";
  input = varying(0.002, 0.001);
  input.readings.resize(8);
  EXPECT_EQ(discThickness(input)->variation.verdict, Verdict::Within);
}

TEST(DiscThickness, TheMinimumMustBeProvedAboveDiscard) {
  // u = root of 0.001 / sqrt(12) and 0.004 / sqrt(3) = 0.0023273 mm; one-sided 95 %: 1.6449 u =
  // 0.003828 mm (JCGM 106 guard band).
  DiscThicknessInput input = worn();
  const auto verdict = [&](double discard) {
    input.discard = millimetres(discard);
    return discThickness(input)->minimum.verdict;
  };
  EXPECT_EQ(verdict(11.957 - 0.0039), Verdict::Within);
  EXPECT_EQ(verdict(11.957 - 0.0037), Verdict::Undecided);
  EXPECT_EQ(verdict(11.957 + 0.0037), Verdict::Undecided);
  EXPECT_EQ(verdict(11.957 + 0.0039), Verdict::Outside);
  input.instrument.permissibleError.reset();
  EXPECT_EQ(verdict(11.0), Verdict::Undecided) << "the micrometer's error is not known";
  EXPECT_EQ(verdict(12.5), Verdict::Outside);
  EXPECT_FALSE(discThickness(input)->instrumentErrorKnown);
}

TEST(DiscThickness, ACaliperOverALipReadsThick) {
  DiscThicknessInput input = worn();
  input.gauge = ThicknessGauge::CaliperOverLip;
  input.discard = millimetres(11.0);
  input.variationLimit = millimetres(0.5);
  auto got = discThickness(input).value();
  EXPECT_EQ(got.minimum.verdict, Verdict::Undecided);
  EXPECT_EQ(got.minimum.side, LimitSide::InsideLikely);
  EXPECT_EQ(got.variation.verdict, Verdict::Undecided);
  input.discard = millimetres(12.5);
  input.variationLimit = millimetres(0.005);
  got = discThickness(input).value();
  EXPECT_EQ(got.minimum.verdict, Verdict::Outside) << "thinner still than it reads";
  EXPECT_EQ(got.variation.verdict, Verdict::Undecided) << "it may be the lip that varies";
}

TEST(DiscThickness, ASecondRadiusGivesTaperAndCounts) {
  DiscThicknessInput input = worn();
  input.otherRadius =
      inMillimetresAll({11.940, 11.935, 11.928, 11.900, 11.917, 11.922, 11.930, 11.938});
  const auto got = discThickness(input).value();
  ASSERT_TRUE(got.taper);
  // Means 11.92625 and 11.96875.
  EXPECT_NEAR(inMillimetres(got.taper->value), -0.0425, 1e-9);
  EXPECT_NEAR(inMillimetres(got.minimum.value), 11.900, 1e-9);
  EXPECT_NEAR(inMillimetres(got.variation.value), 0.040, 1e-9);
  EXPECT_NEAR(inMillimetres(got.extent.least), 11.957, 1e-9) << "of the first radius";
  input.otherRadius = input.readings;
  EXPECT_NEAR(inMillimetres(discThickness(input)->taper->value), 0, 1e-12);
}

TEST(DiscThickness, RepeatabilityCountsTwiceInADifference) {
  DiscThicknessInput input = worn();
  input.repeatability = PooledScatter{0.002 / 1000, 9};
  const auto got = discThickness(input).value();
  const double d2 = 0.001 * 0.001 / 12;
  EXPECT_NEAR(inMillimetres(got.variation.standardUncertainty),
              std::sqrt(2 * d2 + 2 * 0.002 * 0.002), 1e-12);
  EXPECT_NEAR(inMillimetres(got.minimum.standardUncertainty),
              std::sqrt(d2 + 0.004 * 0.004 / 3 + 0.002 * 0.002), 1e-12);
  EXPECT_TRUE(got.variation.degreesOfFreedom);
}

TEST(DiscThickness, RefusesWhatCannotBe) {
  const auto keyOf = [](auto change) {
    DiscThicknessInput input = worn();
    change(input);
    const auto got = discThickness(input);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf([](auto& i) { i.readings.resize(3); }), "disc_thickness.too_few_points readings");
  EXPECT_EQ(keyOf([](auto& i) { i.otherRadius = {millimetres(12)}; }),
            "disc_thickness.too_few_points other_radius");
  EXPECT_EQ(keyOf([](auto& i) { i.readings[2] = Length{}; }), "measure.not_positive readings/2");
  EXPECT_EQ(keyOf([](auto& i) { i.readings[2] = metres(std::nan("")); }),
            "measure.not_finite readings/2");
  EXPECT_EQ(keyOf([](auto& i) { i.instrument.graduation = 0; }),
            "measure.not_positive instrument/graduation");
  EXPECT_EQ(keyOf([](auto& i) { i.discard = Length{}; }), "measure.not_positive discard");
  EXPECT_EQ(keyOf([](auto& i) { i.confidence = 1; }), "measure.bad_confidence confidence");
  EXPECT_EQ(keyOf([](auto& i) { i.readings.resize(4); }), "accepted");
}

}  // namespace
}  // namespace sw::mechanics
