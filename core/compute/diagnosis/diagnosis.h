// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeRankCauses();
[[nodiscard]] Result<Outcome> runRankCauses(const Json& json);

[[nodiscard]] Description describeNextCheck();
[[nodiscard]] Result<Outcome> runNextCheck(const Json& json);

}  // namespace sw::compute
