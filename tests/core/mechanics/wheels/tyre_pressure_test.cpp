// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/tyre_pressure.h"

#include <gtest/gtest.h>

#include <limits>

namespace sw::mechanics {
namespace {

constexpr Pressure bars(double value) {
  return Pressure::fromSi(value * 1e5);
}
TemperatureDifference kelvin(double value) {
  return TemperatureDifference::fromSi(value);
}

TEST(TyrePressure, LoadAtALowerPressure) {
  // 710 kg at 2.5 bar carry 593.9 kg at 2.0 bar: test-pressure clause of UN R117 (from memory).
  const LoadAtPressure reference{kilograms(710), bars(2.5)};
  EXPECT_NEAR(inKilograms(loadAtPressure(reference, bars(2.0)).value()), 593.9, 0.5);
  EXPECT_NEAR(inKilograms(loadAtPressure(reference, bars(2.5)).value()), 710, 1e-9);
}

TEST(TyrePressure, PressureForALoadIsTheInverse) {
  const LoadAtPressure reference{kilograms(845), bars(3.1)};
  for (const double load : {120.0, 500.0, 845.0}) {
    const auto pressure = pressureForLoad(reference, kilograms(load)).value();
    EXPECT_NEAR(inKilograms(loadAtPressure(reference, pressure).value()), load, 1e-9);
  }
  EXPECT_NEAR(pressureForLoad({kilograms(710), bars(2.5)}, kilograms(593.9)).value() / bars(1), 2.0,
              0.002);
}

TEST(TyrePressure, NoPressureLiftsATyreAboveItsIndex) {
  const LoadAtPressure reference{kilograms(710), bars(2.5)};
  EXPECT_EQ(loadAtPressure(reference, bars(2.6)).error().field, "pressure");
  EXPECT_EQ(pressureForLoad(reference, kilograms(711)).error().field, "load");
}

TEST(TyrePressure, WarmTyre) {
  // (2.0 + 1.01325) bar * 323.15 / 293.15 - 1.01325 bar = 2.308 bar: ideal gas.
  const auto hot = pressureAtTemperature({bars(2.0), kelvin(20), kelvin(50)}).value();
  EXPECT_NEAR(hot / bars(1), 2.308, 0.003);
  // About 0.1 bar for 10 K.
  const auto tenMore = pressureAtTemperature({bars(2.0), kelvin(20), kelvin(30)}).value();
  EXPECT_NEAR((tenMore - bars(2.0)) / bars(1), 0.1, 0.005);
}

TEST(TyrePressure, ThereAndBackIsTheSame) {
  const auto hot = pressureAtTemperature({bars(1.8), kelvin(-12), kelvin(61)}).value();
  const auto cold = pressureAtTemperature({hot, kelvin(61), kelvin(-12)}).value();
  EXPECT_NEAR(cold / bars(1), 1.8, 1e-12);
}

TEST(TyrePressure, RefusesWhatCannotBe) {
  const LoadAtPressure reference{kilograms(710), bars(2.5)};
  EXPECT_EQ(loadAtPressure({kilograms(0), bars(2)}, bars(1)).error().field, "reference_load");
  EXPECT_EQ(loadAtPressure(reference, bars(0)).error().key, "measure.not_positive");
  EXPECT_EQ(pressureForLoad({kilograms(1), bars(-2)}, kilograms(1)).error().field,
            "reference_pressure");
  EXPECT_EQ(pressureAtTemperature({bars(2), kelvin(-274), kelvin(0)}).error().field,
            "cold_temperature");
  EXPECT_EQ(pressureAtTemperature({bars(-1), kelvin(0), kelvin(0)}).error().key,
            "wheels.out_of_range");
  EXPECT_EQ(pressureAtTemperature({bars(0.1), kelvin(20), kelvin(-100)}).error().field,
            "hot_temperature");
  const double infinite = std::numeric_limits<double>::infinity();
  EXPECT_EQ(pressureAtTemperature({bars(2), kelvin(0), kelvin(infinite)}).error().key,
            "measure.not_finite");
}

}  // namespace
}  // namespace sw::mechanics
