// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: what to set a torque wrench to with a crowfoot or an extension across
// Formula: set = T L / (L + E cos a); at the fastener T = set (L + E cos a) / L. L from the middle
// of
//   the hand to the drive, E from the drive to the middle of the fastener, a the angle between
//   handle and adapter: 0 straight ahead (longer, set less), 90 degrees no correction, 180 back
//   over the handle (shorter, set more).
// Source: plane statics; US Army TM 1-1500-204-23-9 and TM 9-2350-277-40&P print the same.
// Assumptions: one pull, square to the handle, at the middle of the grip; the wrench clicks at the
//   torque at its drive.
// When not to use: with a flexible or a longer handle than was measured, with a hand off the middle
//   of the grip, with wrenches that read the hand's force. An extension along the axis of the
//   socket needs no correction.
// Degenerate cases: L <= 0 and L + E cos a <= 0 have no answer.
// Reference test: tests/core/mechanics/bolts/wrench_adapter_test.cpp.

namespace sw::mechanics {

struct WrenchAdapter {
  Length lever;    ///< L
  Length adapter;  ///< E
  Angle angle;     ///< a, either way
};

/// Torque at the fastener / torque at the drive. Errors: OutOfRange "measure.not_positive",
/// "measure.not_finite" (lever_length, adapter_length, adapter_angle); "bolts.bad_adapter_angle"
/// beyond half a turn; Degenerate "bolts.adapter_has_no_lever".
[[nodiscard]] Result<double> adapterRatio(const WrenchAdapter& adapter);
/// Errors: the same, and torque.
[[nodiscard]] Result<Torque> wrenchSetting(Torque atFastener, const WrenchAdapter& adapter);
[[nodiscard]] Result<Torque> torqueAtFastener(Torque setting, const WrenchAdapter& adapter);

}  // namespace sw::mechanics
