// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeStandLoad();
[[nodiscard]] Result<Outcome> runStandLoad(const Json& json);

}  // namespace sw::compute
