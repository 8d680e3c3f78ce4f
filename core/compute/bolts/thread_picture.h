// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/bolts/thread.h"

namespace sw::compute {

/// Bolt and nut in section, to scale, with the diameters named at their height.
[[nodiscard]] figure::Figure threadPicture(const mechanics::Thread& thread,
                                           const mechanics::ThreadGeometry& geometry,
                                           figure::Size size);

}  // namespace sw::compute
