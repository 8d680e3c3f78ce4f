// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeThread();
[[nodiscard]] Result<Outcome> runThread(const Json& json);

[[nodiscard]] Description describeClampForce();
[[nodiscard]] Result<Outcome> runClampForce(const Json& json);

[[nodiscard]] Description describeTorquePlausibility();
[[nodiscard]] Result<Outcome> runTorquePlausibility(const Json& json);

[[nodiscard]] Description describeWrenchSetting();
[[nodiscard]] Result<Outcome> runWrenchSetting(const Json& json);

[[nodiscard]] Description describePrevailingTorque();
[[nodiscard]] Result<Outcome> runPrevailingTorque(const Json& json);

[[nodiscard]] Description describeCastleNut();
[[nodiscard]] Result<Outcome> runCastleNut(const Json& json);

[[nodiscard]] Description describeTightenPattern();
[[nodiscard]] Result<Outcome> runTightenPattern(const Json& json);

[[nodiscard]] Description describeWheelNutRecheck();
[[nodiscard]] Result<Outcome> runWheelNutRecheck(const Json& json);

}  // namespace sw::compute
