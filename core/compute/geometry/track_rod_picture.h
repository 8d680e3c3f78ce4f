// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/geometry/track_rod.h"

namespace sw::compute {

/// Axle and track rod from above, which way the rod goes, and how far its hexagon is turned.
[[nodiscard]] figure::Figure trackRodPicture(const mechanics::TrackRod& rod,
                                             const mechanics::ToeChange& change,
                                             const mechanics::RodTurns& turns, figure::Size size);

}  // namespace sw::compute
