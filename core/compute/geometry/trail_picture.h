// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/geometry/trail.h"

namespace sw::compute {

struct TrailDrawing {
  struct Trail {
    mechanics::TrailInput input;
    Length trail;
  };
  struct Scrub {
    mechanics::ScrubInput input;
    Length scrub;
    Length withoutSpacer;
  };
  std::optional<Trail> trail;
  std::optional<Scrub> scrub;
};

/// The lower half of the wheel from the side and from behind, to scale: where the axis meets the
/// ground.
[[nodiscard]] figure::Figure trailPicture(const TrailDrawing& drawing, figure::Size size);

}  // namespace sw::compute
