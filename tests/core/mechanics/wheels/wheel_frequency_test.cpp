// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/wheel_frequency.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "mechanics/wheels/tyre_dimensions.h"

namespace sw::mechanics {
namespace {

RollingCircumference rolling(const char* text) {
  const auto tyre = parseTyreDesignation(text).value();
  return circumferenceFromDiameter(nominalDimensions(tyre).value().diameter,
                                   RollingConvention::DynamicRadial)
      .value();
}

double hertz(const char* tyre, double kilometres, double multiple = 1) {
  return frequencyAtSpeed({kilometresPerHour(kilometres), {}}, rolling(tyre), multiple)
      .value()
      .frequency.si();
}

TEST(WheelFrequency, WorkedRows) {
  // f = v / (3.6 C), C = 3.05 D.
  EXPECT_NEAR(hertz("205 R16", 80), 9.811, 0.01);
  EXPECT_NEAR(hertz("195/80 R15", 100), 13.142, 0.01);
  EXPECT_NEAR(hertz("31x10.50 R15", 110), 12.723, 0.01);
  EXPECT_NEAR(hertz("205 R16", 50 * 1.609344), 9.869, 0.01);  // 50 mph
  EXPECT_NEAR(hertz("205 R16", 60, 2), 14.717, 0.02);         // second order
}

TEST(WheelFrequency, TableOfSizesAndSpeeds) {
  struct Row {
    const char* tyre;
    double at60, at80, at100, at110;
  };
  for (const Row& row :
       {Row{"195/80 R15", 7.89, 10.51, 13.14, 14.46}, Row{"205 R16", 7.36, 9.81, 12.26, 13.49},
        Row{"205/80 R16", 7.44, 9.92, 12.40, 13.64}, Row{"235/70 R16", 7.43, 9.91, 12.38, 13.62},
        Row{"265/75 R16", 6.80, 9.06, 11.33, 12.46}, Row{"235/85 R16", 6.78, 9.04, 11.30, 12.43},
        Row{"31x10.50 R15", 6.94, 9.25, 11.57, 12.72}}) {
    EXPECT_NEAR(hertz(row.tyre, 60), row.at60, 0.006) << row.tyre;
    EXPECT_NEAR(hertz(row.tyre, 80), row.at80, 0.006) << row.tyre;
    EXPECT_NEAR(hertz(row.tyre, 100), row.at100, 0.006) << row.tyre;
    EXPECT_NEAR(hertz(row.tyre, 110), row.at110, 0.006) << row.tyre;
  }
}

TEST(WheelFrequency, SpeedIsTheInverse) {
  for (const double multiple : {1.0, 2.0, 3.54}) {
    const auto f = frequencyAtSpeed({kilometresPerHour(87), {}}, rolling("265/75 R16"), multiple);
    const auto v = speedAtFrequency({f->frequency, {}}, rolling("265/75 R16"), multiple).value();
    EXPECT_NEAR(inKilometresPerHour(v.speed), 87, 1e-9) << multiple;
  }
}

TEST(WheelFrequency, UncertaintyOfAMarkedSize) {
  // 1.5 % of 10 Hz: within +/-0.3 Hz at k = 2.
  const auto c = rolling("205 R16");
  const auto at10 = speedAtFrequency({Frequency::fromSi(10), {}}, c).value();
  const auto f = frequencyAtSpeed({at10.speed, {}}, c).value();
  EXPECT_NEAR(2 * f.standardUncertainty.si(), 0.3, 1e-9);
  EXPECT_NEAR(at10.standardUncertainty / at10.speed, 0.015, 1e-12);
}

TEST(WheelFrequency, UncertaintyAgainstSimulation) {
  const auto c = circumferenceFromRollOut(metres(2.2), 1).value();
  const UncertainSpeed v{kilometresPerHour(90), kilometresPerHour(0.7)};
  const auto claimed = frequencyAtSpeed(v, c, 2).value();
  std::mt19937 random(4);
  std::normal_distribution<double> normal;
  constexpr int kDraws = 40000;
  double sum = 0, squares = 0;
  for (int i = 0; i < kDraws; ++i) {
    const double speed = v.speed.si() + v.standardUncertainty.si() * normal(random);
    const double length = 2.2 * (1 + 0.003 * normal(random));
    const double f = 2 * speed / length;
    sum += f;
    squares += f * f;
  }
  const double spread = std::sqrt(squares / kDraws - sum / kDraws * (sum / kDraws));
  // The spread of 40000 draws is itself known to 0.35 %.
  EXPECT_NEAR(claimed.standardUncertainty.si() / spread, 1, 0.015);
}

TEST(WheelFrequency, TheDialBelongsToTheTyreItWasBuiltWith) {
  const auto on = rolling("265/75 R16");
  const auto built = rolling("205/80 R16");
  EXPECT_NEAR(trueOverDial(on, built), 803.9 / 734.4, 1e-4);
  // At 80 on the dial the wheel turns as the tyre built with would at 80, whatever is on.
  const Speed trueSpeed = kilometresPerHour(80) * trueOverDial(on, built);
  const auto f = frequencyAtSpeed({trueSpeed, {}}, on).value();
  EXPECT_NEAR(f.frequency.si(), hertz("205/80 R16", 80), 1e-9);
}

TEST(WheelFrequency, StandingStill) {
  const auto c = rolling("205 R16");
  const auto f = frequencyAtSpeed({{}, kilometresPerHour(1)}, c).value();
  EXPECT_EQ(f.frequency.si(), 0);
  EXPECT_NEAR(f.standardUncertainty.si(), 1 / 3.6 / c.circumference.si(), 1e-12);
}

TEST(WheelFrequency, RefusesWhatCannotBe) {
  const auto c = rolling("205 R16");
  EXPECT_EQ(frequencyAtSpeed({kilometresPerHour(-1), {}}, c).error().field, "speed");
  EXPECT_EQ(frequencyAtSpeed({kilometresPerHour(1), kilometresPerHour(-1)}, c).error().field,
            "speed_uncertainty");
  EXPECT_EQ(frequencyAtSpeed({kilometresPerHour(1), {}}, c, 0).error().field, "multiple");
  EXPECT_EQ(frequencyAtSpeed({kilometresPerHour(1), {}}, RollingCircumference{}).error().field,
            "circumference");
  EXPECT_EQ(speedAtFrequency({Frequency::fromSi(std::nan("")), {}}, c).error().key,
            "measure.not_finite");
}

}  // namespace
}  // namespace sw::mechanics
