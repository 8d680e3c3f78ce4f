// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/json.h"
#include "workshop/command.h"

namespace sw::workshop {

/// Reads one command: {"do":"take_readings", "job":3, "by":"ab", "step":"procedure/step",
/// "side":"left",
/// ...the action's fields}. Unknown and duplicate fields are errors.
[[nodiscard]] Result<Command> commandFromJson(const model::Json& json);
/// The inverse, without absent fields.
[[nodiscard]] model::Json toJson(const Command& command);
/// Every command with its summary and fields (name, type, required, meaning, words) and
/// an example: a line of a job script.
[[nodiscard]] model::Json describeCommands();

}  // namespace sw::workshop
