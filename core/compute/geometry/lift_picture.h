// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/geometry/axle_lift.h"

namespace sw::compute {

/// Axle, arm and pivot from the side before and after the lift, to scale, and what it does to the
/// axis.
[[nodiscard]] figure::Figure liftPicture(const mechanics::AxleLift& lift, Angle change,
                                         const std::optional<Angle>& casterBefore,
                                         figure::Size size);

}  // namespace sw::compute
