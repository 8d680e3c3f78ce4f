// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "units/quantity.h"

namespace sw::compute {

enum class SeatFault { HubRunout, Speck };

struct TrackShown {
  SeatFault fault = SeatFault::Speck;
  Length amount;        ///< of the fault
  Length seatDiameter;  ///< or twice the radius at which the hub's runout was read
  Length trackRadius;
  Length runout;  ///< at the track
  std::optional<Length> limit;
};

/// Hub and disc in section: a small fault at the seat tilts the disc, and grows at the track.
[[nodiscard]] figure::Figure runoutAtTrackPicture(const TrackShown& shown, figure::Size size);

}  // namespace sw::compute
