// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/description.h"

namespace sw::compute {

[[nodiscard]] std::vector<FieldDescription> unbalanceInputFields();
[[nodiscard]] std::vector<FieldDescription> unbalanceOptionFields();
[[nodiscard]] std::vector<FieldDescription> unbalanceOutputFields();

}  // namespace sw::compute
