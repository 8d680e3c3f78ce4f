// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/brakes/turn_parts.h"
#include "figure/figure.h"

// Readings over one turn as a line, against the band that the limit on their range allows: how far
// they differ is read here, and where they lie, on the polar view.

namespace sw::compute {

/// The averaged turn, the part of it that is tilt, and the total against its limit.
[[nodiscard]] figure::Figure unrolledRunout(const mechanics::DiscRunoutInput& input,
                                            const mechanics::DiscRunout& runout, figure::Size size);

/// Thickness, its thinnest point, the variation against its limit, and discard.
[[nodiscard]] figure::Figure unrolledThickness(const mechanics::DiscThicknessInput& input,
                                               const mechanics::DiscThickness& disc,
                                               figure::Size size);

}  // namespace sw::compute
