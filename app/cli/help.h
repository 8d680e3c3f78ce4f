// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>

#include "cli/command.h"

namespace sw::app {

[[nodiscard]] std::string versionText();
[[nodiscard]] std::string programHelp(std::span<const Command> commands);
[[nodiscard]] std::string commandHelp(const Command& command);

}  // namespace sw::app
