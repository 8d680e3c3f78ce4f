// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: when wheel nuts are checked again after a wheel was off
// Light vehicles: from 50 km on (30 miles), and again from 100 km, by 160 km (tyre trade advice of
// 50
//   km and of 50 to 100 miles). Heavy: after 30 minutes or 40 to 80 km (BS AU 50-2.7a:1995); a
//   fleet trial still found loosening at 160 km, so it is checked again by then.
// Source: as named, both at second hand; no text of a standard for light vehicles was seen.
// Rule: cold, unloaded as the sheet says, to the full torque, without slackening first; threads dry
// or
//   lightly oiled as the vehicle's documentation says, and recorded.
// Valid range: odometer >= 0; first check above 0, up to 100 km.
// When not to use: where the vehicle's or the wheel's documentation gives a distance, that one
// holds. Degenerate cases: an odometer that reads less than at fitting is refused. Reference test:
// tests/core/mechanics/bolts/wheel_nut_recheck_test.cpp.

namespace sw::mechanics {

enum class VehicleWeight { Light, Heavy };
enum class RecheckState { NotYet, Due, Passed };

struct WheelNutsFitted {
  Length odometer;  ///< when the wheel was fitted
  VehicleWeight vehicle = VehicleWeight::Light;
  std::optional<Length> firstAfter;  ///< own distance of the first check
  std::optional<Length> odometerNow;
};

/// One check, due between two readings of the odometer.
struct WheelNutRecheck {
  Length after;  ///< distances since fitting
  Length by;
  Length afterReading;
  Length byReading;
  std::optional<Duration> orAfter;    ///< of driving, whichever comes first
  std::optional<RecheckState> state;  ///< where the odometer of now is known
};

/// In the order they come. Errors: OutOfRange "measure.not_positive", "measure.not_finite"
/// (odometer, odometer_now, first_after), "bolts.odometer_backwards" (odometer_now),
/// "bolts.recheck_too_late" (first_after; detail most).
[[nodiscard]] Result<std::vector<WheelNutRecheck>> wheelNutRechecks(const WheelNutsFitted& fitted);

[[nodiscard]] constexpr Length kilometres(double value) {
  return metres(1000 * value);
}

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::VehicleWeight> {
  using E = mechanics::VehicleWeight;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Light, "light"}, {E::Heavy, "heavy"}}};
};

template <>
struct Words<mechanics::RecheckState> {
  using E = mechanics::RecheckState;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::NotYet, "not_yet"}, {E::Due, "due"}, {E::Passed, "passed"}}};
};

}  // namespace sw
