// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/bolts/castle_nut.h"

namespace sw::compute {

struct CastleDrawing {
  mechanics::CastleNut nut;
  mechanics::CastleDecision decision;
  mechanics::CastleStep step;
  int slots = 6;
  int crossHoles = 1;
};

/// The nut from above with its slots and the hole, and where its torque stands between the limits.
[[nodiscard]] figure::Figure castleNutPicture(const CastleDrawing& drawing, figure::Size size);

}  // namespace sw::compute
