// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/bolts/torque_plausibility.h"

namespace sw::compute {

/// Where the torque as typed and what it could mean instead lie between too little and too much.
[[nodiscard]] figure::Figure torquePlausibilityPicture(const mechanics::TorqueClaim& claim,
                                                       const mechanics::TorquePlausibility& judged,
                                                       figure::Size size);

}  // namespace sw::compute
