// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/description.h"

namespace sw::compute {

[[nodiscard]] std::vector<FieldDescription> casterInputFields();
[[nodiscard]] std::vector<FieldDescription> casterOptionFields();
[[nodiscard]] std::vector<FieldDescription> casterOutputFields();

}  // namespace sw::compute
