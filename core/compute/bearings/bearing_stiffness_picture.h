// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/bearings/bearing_stiffness.h"

namespace sw::compute {

/// Load over what the bearing gives along its axis, the state asked for, its slope there.
[[nodiscard]] figure::Figure bearingStiffnessPicture(const mechanics::TaperBearing& bearing,
                                                     const mechanics::AxialState& state,
                                                     figure::Size size);

}  // namespace sw::compute
