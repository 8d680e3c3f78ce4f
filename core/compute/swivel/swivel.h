// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeShimPack();
[[nodiscard]] Result<Outcome> runShimPack(const Json& json);

[[nodiscard]] Description describeFirstPack();
[[nodiscard]] Result<Outcome> runFirstPack(const Json& json);

[[nodiscard]] Description describeStartingForce();
[[nodiscard]] Result<Outcome> runStartingForce(const Json& json);

}  // namespace sw::compute
