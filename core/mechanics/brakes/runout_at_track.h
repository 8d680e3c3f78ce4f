// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: what a fault at the hub seat becomes at the brake track
// Formula: the disc tilts as a rigid plate. Runout of the hub face TIR_h at radius r_h gives
//   TIR = TIR_h r / r_h at the track radius r. A speck of thickness s under one edge of a seat of
//   diameter d tilts it by s / d about the other edge: TIR = 2 r s / d.
// Source: plane geometry, small angles.
// Valid range: all lengths > 0 (hub runout and speck 0 or more).
// Assumptions: rigid disc, the rest of the seat true; the speck under the very edge.
// When not to use: a disc that is not flat, or nuts that bend it: this is tilt alone.
// Reference test: tests/core/mechanics/brakes/disc_runout_test.cpp.

namespace sw::mechanics {

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (field named).
struct HubRunout {
  Length runout;  ///< TIR at the hub face
  Length radius;  ///< where it was read
};
[[nodiscard]] Result<Length> runoutAtTrack(const HubRunout& hub, Length trackRadius);

struct SeatSpeck {
  Length thickness;
  Length seatDiameter;
};
[[nodiscard]] Result<Length> runoutAtTrack(const SeatSpeck& speck, Length trackRadius);

}  // namespace sw::mechanics
