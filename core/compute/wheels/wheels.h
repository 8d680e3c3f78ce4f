// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeTyre();
[[nodiscard]] Result<Outcome> runTyre(const Json& json);

[[nodiscard]] Description describeWheelFrequency();
[[nodiscard]] Result<Outcome> runWheelFrequency(const Json& json);

[[nodiscard]] Description describeUnbalance();
[[nodiscard]] Result<Outcome> runUnbalance(const Json& json);

[[nodiscard]] Description describeBalanceOnePlane();
[[nodiscard]] Result<Outcome> runBalanceOnePlane(const Json& json);

[[nodiscard]] Description describeBalanceTwoPlane();
[[nodiscard]] Result<Outcome> runBalanceTwoPlane(const Json& json);

[[nodiscard]] Description describeBalanceFourRun();
[[nodiscard]] Result<Outcome> runBalanceFourRun(const Json& json);

}  // namespace sw::compute
