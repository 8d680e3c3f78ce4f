// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: friction torque of a running rolling bearing, handbook form
// Formula: M = f F d / 2, F the load on the bearing, d its bore, f a figure of the bearing kind.
//   At the start up to twice that.
// Source: machine design tables (seen): f about 0.0018 for taper rollers, starting up to twice.
// Valid range: F >= 0, d > 0, f > 0, start factor >= 1.
// Assumptions: running, oiled, without seals, moderate load and speed.
// When not to use: to turn a pull into a preload. At standstill under pure axial load the roller
//   ends rub on the rib and this form misses the true torque; seals and rods add more. A pull is
//   compared with the target pull of the same arrangement, nothing else.
// Degenerate cases: no load, no torque.
// Reference test: tests/core/mechanics/bearings/bearing_friction_test.cpp.

namespace sw::mechanics {

inline constexpr double kTaperRollerFriction = 0.0018;
inline constexpr double kStartFactor = 2;

struct BearingFrictionInput {
  Force load;
  Length bore;
  double factor = kTaperRollerFriction;
  double startFactor = kStartFactor;
};

struct BearingFriction {
  Torque running;
  Torque startingUpTo;
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (field named),
/// "bearing_friction.bad_start_factor".
[[nodiscard]] Result<BearingFriction> bearingFriction(const BearingFrictionInput& input);

}  // namespace sw::mechanics
