// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/runout_at_track.h"

#include "mechanics/number_checks.h"

namespace sw::mechanics {

Result<Length> runoutAtTrack(const HubRunout& hub, Length trackRadius) {
  const auto checked = NumberChecks()
                           .notNegative("hub_runout", hub.runout)
                           .positive("hub_radius", hub.radius)
                           .positive("track_radius", trackRadius)
                           .done();
  if (!checked) return failAs(checked);
  return hub.runout * (trackRadius / hub.radius);
}

Result<Length> runoutAtTrack(const SeatSpeck& speck, Length trackRadius) {
  const auto checked = NumberChecks()
                           .notNegative("speck", speck.thickness)
                           .positive("seat_diameter", speck.seatDiameter)
                           .positive("track_radius", trackRadius)
                           .done();
  if (!checked) return failAs(checked);
  return 2 * (speck.thickness * (trackRadius / speck.seatDiameter));
}

}  // namespace sw::mechanics
