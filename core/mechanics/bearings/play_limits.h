// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: play a roadworthiness inspection still lets pass
// Formulas and sources:
//   kingpin or bush, wheel braked, total rock at the rim: 10 mm on a 500 mm wheel, others in
//     proportion (superseded British inspection guide of 2012; it claims no precise limit).
//   wheel bearing, rocked top and bottom, at the tyre sidewall: 1/8 in (COMAR 11.22.03.04).
//   steering linkage, front and rear of the tread, bearings set first: 1/4 in up to 10 000 lb
//   gross;
//     above that 1/4 in on rims to 16 in, 3/8 in to 18 in, 1/2 in beyond (49 CFR 570.60).
//   steering wheel lash at its rim: 2 in to 16 in, 2 1/4 in at 18 in, 2 1/2 in at 20 in, 2 3/4 in
//   at
//     22 in (49 CFR 570.60). Between two sizes the smaller one counts, being stricter (own rule).
//   the same by the British guide: 75 mm with a steering box, 13 mm with a rack on a 380 mm wheel,
//     others in proportion.
// Valid range: lengths and mass > 0.
// When not to use: as a target. These are floors of roadworthiness, far too loose to cure shimmy;
//   the vehicle's documentation and the rules in force where it is used come first.
// Reference test: tests/core/mechanics/bearings/play_limits_test.cpp.

namespace sw::mechanics {

enum class SteeringGear { Box, Rack };
[[nodiscard]] std::string_view word(SteeringGear gear);

inline constexpr Length kBearingRockLimit = inches(0.125);  ///< at the tyre sidewall

/// Errors of all: OutOfRange "measure.not_positive", "measure.not_finite" (field named).
[[nodiscard]] Result<Length> kingpinRockLimit(Length wheelDiameter);
[[nodiscard]] Result<Length> linkageRockLimit(Length rimDiameter, Mass grossMass);
[[nodiscard]] Result<Length> steeringLashLimit(Length steeringWheelDiameter);
[[nodiscard]] Result<Length> steeringLashLimit(Length steeringWheelDiameter, SteeringGear gear);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::SteeringGear> {
  using E = mechanics::SteeringGear;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Box, "box"}, {E::Rack, "rack"}}};
};

}  // namespace sw
