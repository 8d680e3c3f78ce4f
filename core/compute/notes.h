// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "compute/calculation.h"
#include "units/parse.h"

namespace sw::compute {

/// "/force: 1.9 kg was read as 1.9 kgf". Codes: bare_number, mass_read_as_force,
/// mass_read_as_torque, comma_as_decimal.
[[nodiscard]] Note readNote(ReadNote note, const std::string& path, const ParsedQuantity& parsed);

}  // namespace sw::compute
