// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "cli/command.h"

// Every command word of the program. To add one: a file <name>_command.cpp with a function that
// gives its row, a declaration here, a line in commands.cpp.

namespace sw::app {

[[nodiscard]] std::span<const Command> commands();

[[nodiscard]] Command backupCommand();
[[nodiscard]] Command cardCommand();
[[nodiscard]] Command checkBookCommand();
[[nodiscard]] Command computeCommand();
[[nodiscard]] Command demoCommand();
[[nodiscard]] Command exportCommand();
[[nodiscard]] Command jobCommand();
[[nodiscard]] Command findCommand();
[[nodiscard]] Command kitCommand();
[[nodiscard]] Command listCommand();
[[nodiscard]] Command historyCommand();
[[nodiscard]] Command screenshotCommand();
[[nodiscard]] Command windowCommand();
[[nodiscard]] Command restoreCommand();
[[nodiscard]] Command sheetCommand();

}  // namespace sw::app
