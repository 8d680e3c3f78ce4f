// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/bearing_friction.h"

#include "mechanics/number_checks.h"

namespace sw::mechanics {

Result<BearingFriction> bearingFriction(const BearingFrictionInput& input) {
  const auto checked = NumberChecks()
                           .notNegative("load", input.load)
                           .positive("bore", input.bore)
                           .positive("friction_factor", input.factor)
                           .positive("start_factor", input.startFactor)
                           .done();
  if (!checked) return failAs(checked);
  if (input.startFactor < 1) {
    return fail(ErrorCode::OutOfRange, "bearing_friction.bad_start_factor", "start_factor");
  }
  const Torque running = input.factor * (input.load * (input.bore / 2));
  return BearingFriction{running, input.startFactor * running};
}

}  // namespace sw::mechanics
