// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/brakes/turn_parts.h"
#include "figure/figure.h"

// Readings where they lie on the disc: the first at the top, on the way round that was measured.

namespace sw::compute {

/// The averaged turn, the wave of its tilt with the high spot, and the ring the limit allows.
[[nodiscard]] figure::Figure polarRunout(const mechanics::DiscRunoutInput& input,
                                         const mechanics::DiscRunout& runout, figure::Size size);

/// Thickness of one or two radii, the thinnest point, and the ring the limit on variation allows.
[[nodiscard]] figure::Figure polarThickness(const mechanics::DiscThicknessInput& input,
                                            const mechanics::DiscThickness& disc,
                                            figure::Size size);

}  // namespace sw::compute
