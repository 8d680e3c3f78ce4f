// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "diagnosis/cause_file.h"

namespace sw::diagnosis {

/// The bytes of resources/causes/front-axle-shake.json, built in.
[[nodiscard]] std::string_view shippedCausesText();
/// The same, read once.
[[nodiscard]] const CauseFile& shippedCauses();

}  // namespace sw::diagnosis
