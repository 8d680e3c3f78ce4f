// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: caster trail and kingpin offset at the ground
// Formula: trail = r tan(caster) - hub offset; offset (scrub) = q - r tan(KPI) - r tan(camber) +
//   spacers, q the distance from the axis to the middle of the wheel at hub height, r the loaded
//   radius.
// Source: plane geometry.
// Signs: trail positive with the axis meeting the ground ahead of the contact; hub offset positive
//   with the hub ahead of the axis; scrub positive with the axis meeting the ground inboard of the
//   contact (from memory of ISO 8855).
// Assumptions: wheels straight ahead; q measured square to the wheel without spacer.
// When not to use: it is the mechanical trail, without that of the tyre. A spacer or a rim of lower
//   offset adds its full amount to scrub and to every lever of unbalance.
// Valid range: r > 0; angles within 30 degrees; spacer any sign (a rim of higher offset is
// negative). Degenerate cases: none. Accuracy: exact in the plane; caster and inclination together
// change it by less than 1 %. Reference test: tests/core/mechanics/geometry/trail_test.cpp.

namespace sw::mechanics {

struct TrailInput {
  Length loadedRadius;
  Angle caster;
  Length hubOffset;
};
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<Length> casterTrail(const TrailInput& input);

struct ScrubInput {
  Length axisToWheel;  ///< q
  Length loadedRadius;
  Angle inclination;
  Angle camber;
  Length spacer;
};
/// Errors: as above.
[[nodiscard]] Result<Length> scrub(const ScrubInput& input);

}  // namespace sw::mechanics
