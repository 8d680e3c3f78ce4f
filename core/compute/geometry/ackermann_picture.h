// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/geometry/ackermann.h"

namespace sw::compute {

struct AckermannDrawing {
  mechanics::SteeredAxle axle;
  Angle outer, inner;
  std::optional<Angle> measuredInner;
};

/// The vehicle from above on a left bend: both wheels about one point on the line of the rear axle.
[[nodiscard]] figure::Figure ackermannPicture(const AckermannDrawing& drawing, figure::Size size);

}  // namespace sw::compute
