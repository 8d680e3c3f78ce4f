// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeToe();
[[nodiscard]] Result<Outcome> runToe(const Json& json);

[[nodiscard]] Description describeTrackRodTurns();
[[nodiscard]] Result<Outcome> runTrackRodTurns(const Json& json);

[[nodiscard]] Description describeCaster();
[[nodiscard]] Result<Outcome> runCaster(const Json& json);

[[nodiscard]] Description describeTrail();
[[nodiscard]] Result<Outcome> runTrail(const Json& json);

[[nodiscard]] Description describeLift();
[[nodiscard]] Result<Outcome> runLift(const Json& json);

[[nodiscard]] Description describeAckermann();
[[nodiscard]] Result<Outcome> runAckermann(const Json& json);

}  // namespace sw::compute
