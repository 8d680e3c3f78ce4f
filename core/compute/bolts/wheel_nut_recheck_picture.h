// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/calculation.h"
#include "mechanics/bolts/wheel_nut_recheck.h"

namespace sw::compute {

/// The checks as stretches of the way since the wheel was fitted, with the readings of an odometer
/// in this unit, and where the vehicle is now.
[[nodiscard]] figure::Figure wheelNutRecheckPicture(
    const mechanics::WheelNutsFitted& fitted,
    const std::vector<mechanics::WheelNutRecheck>& rechecks, const Unit& unit, figure::Size size);

}  // namespace sw::compute
