// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>

#include "cli/command.h"

namespace sw::app {

/// The whole program behind its command word: finds the command, reads its arguments, runs it and
/// makes sure that its output was taken. `arguments` does not hold the program's name. The clock is
/// used unless --now is given.
[[nodiscard]] int runProgram(std::span<const std::string> arguments,
                             std::span<const Command> commands, Streams streams,
                             const Clock& clock);

/// The row for the command word in the arguments, the window's where there is no word; nullptr
/// where there is none.
[[nodiscard]] const Command* requestedCommand(std::span<const std::string> arguments,
                                              std::span<const Command> commands);

}  // namespace sw::app
