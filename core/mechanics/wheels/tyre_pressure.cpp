// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/tyre_pressure.h"

#include <cmath>

#include "mechanics/wheels/value_checks.h"

namespace sw::mechanics {

namespace {

constexpr double kLoadExponent = 0.8;
constexpr double kAbsoluteZero = 273.15;  // 0 degrees Celsius, SI Brochure, exact

}  // namespace

Result<Mass> loadAtPressure(const LoadAtPressure& reference, Pressure pressure) {
  if (auto error = firstBad({{"reference_load", reference.load.si()},
                             {"reference_pressure", reference.pressure.si()},
                             {"pressure", pressure.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (pressure > reference.pressure) {
    return tl::make_unexpected(outOfRange("pressure", "more than 0, up to the reference pressure"));
  }
  return reference.load * std::pow(pressure / reference.pressure, kLoadExponent);
}

Result<Pressure> pressureForLoad(const LoadAtPressure& reference, Mass load) {
  if (auto error = firstBad({{"reference_load", reference.load.si()},
                             {"reference_pressure", reference.pressure.si()},
                             {"load", load.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (load > reference.load) {
    return tl::make_unexpected(
        outOfRange("load", "more than 0, up to what the tyre carries at the reference pressure"));
  }
  return reference.pressure * std::pow(load / reference.load, 1 / kLoadExponent);
}

Result<Pressure> pressureAtTemperature(const ClosedTyre& tyre) {
  const double setAt = tyre.setAt.si() + kAbsoluteZero;
  const double now = tyre.now.si() + kAbsoluteZero;
  if (auto error = firstBad({{"cold_pressure", tyre.setTo.si(), Need::NotNegative},
                             {"cold_temperature", setAt},
                             {"hot_temperature", now},
                             {"ambient_pressure", tyre.ambient.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const Pressure pressure = (tyre.setTo + tyre.ambient) * (now / setAt) - tyre.ambient;
  if (pressure < Pressure{}) {
    return tl::make_unexpected(
        outOfRange("hot_temperature", "warm enough that pressure is left in the tyre"));
  }
  return pressure;
}

}  // namespace sw::mechanics
