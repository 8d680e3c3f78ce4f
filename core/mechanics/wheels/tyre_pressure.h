// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: what a tyre carries at a lower pressure, and pressure over temperature
// Formula: Q = Qref (P / Pref)^0.8, so P = Pref (Q / Qref)^1.25. Set cold, pressed hot: (P + Pa) /
// T
//   constant, T the absolute temperature, about 0.1 bar for 10 K.
// Source: test-pressure clause of UN R117 (from memory) for the exponent; ideal gas at constant
//   volume.
// Assumptions: Qref is what one tyre carries at Pref, both stated for the tyre. Gauge pressures;
//   the tyre keeps its volume and its air.
// When not to use: to choose a pressure: the vehicle's documentation does. To set a hot tyre: it is
//   set cold.
// Valid range: 0 < P <= Pref and 0 < Q <= Qref: no pressure lifts a tyre above its load index.
//   Absolute temperatures > 0.
// Degenerate cases: none within the range; a tyre so cold that it would be below the air around it
//   is out of range.
// Accuracy: the gas law to 0.01 bar; the exponent is a convention.
// Reference test: tests/core/mechanics/wheels/tyre_pressure_test.cpp.

namespace sw::mechanics {

inline constexpr Pressure kStandardAtmosphere = Pressure::fromSi(101325);  // CIPM 1954, exact

struct LoadAtPressure {
  Mass load;
  Pressure pressure;
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<Mass> loadAtPressure(const LoadAtPressure& reference, Pressure pressure);
[[nodiscard]] Result<Pressure> pressureForLoad(const LoadAtPressure& reference, Mass load);

/// A tyre whose temperature changes; temperatures above 0 degrees Celsius.
struct ClosedTyre {
  Pressure setTo;
  TemperatureDifference setAt;
  TemperatureDifference now;
  Pressure ambient = kStandardAtmosphere;
};
/// The gauge pressure now. Errors: as above.
[[nodiscard]] Result<Pressure> pressureAtTemperature(const ClosedTyre& tyre);

}  // namespace sw::mechanics
