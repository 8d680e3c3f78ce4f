// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/brakes/disc_wear.h"

namespace sw::compute {

/// Thickness over the odometer: the visits, the line on to discard with what the interval of the
/// distance allows, and where to look again.
[[nodiscard]] figure::Figure discWearPicture(const mechanics::DiscWearInput& input,
                                             const mechanics::DiscWear& wear, figure::Size size);

}  // namespace sw::compute
