// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeWheelBearing();
[[nodiscard]] Result<Outcome> runWheelBearing(const Json& json);
[[nodiscard]] Description describeRockTest();
[[nodiscard]] Result<Outcome> runRockTest(const Json& json);
[[nodiscard]] Description describePlayLimits();
[[nodiscard]] Result<Outcome> runPlayLimits(const Json& json);
[[nodiscard]] Description describeBearingFriction();
[[nodiscard]] Result<Outcome> runBearingFriction(const Json& json);
[[nodiscard]] Description describeBearingStiffness();
[[nodiscard]] Result<Outcome> runBearingStiffness(const Json& json);

}  // namespace sw::compute
