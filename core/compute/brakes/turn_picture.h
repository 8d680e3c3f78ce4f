// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compute/calculation.h"
#include "mechanics/brakes/disc_runout.h"
#include "mechanics/brakes/disc_thickness.h"

// Readings where they lie on the disc and, where there is room, over the turn unrolled, against the
// band that the limit on their range allows.

namespace sw::compute {

/// The averaged turn, the part of it that is tilt, and the total against its limit.
[[nodiscard]] figure::Figure runoutPicture(const mechanics::DiscRunoutInput& input,
                                           const mechanics::DiscRunout& runout, figure::Size size);

/// Thickness round the turn, its thinnest point, the variation against its limit, and discard.
[[nodiscard]] figure::Figure thicknessPicture(const mechanics::DiscThicknessInput& input,
                                              const mechanics::DiscThickness& disc,
                                              figure::Size size);

}  // namespace sw::compute
