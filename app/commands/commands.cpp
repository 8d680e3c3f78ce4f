// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/commands.h"

#include <array>

namespace sw::app {

std::span<const Command> commands() {
  static const std::array kTable{
      demoCommand(),   jobCommand(),     sheetCommand(),   cardCommand(),       exportCommand(),
      findCommand(),   kitCommand(),     listCommand(),    historyCommand(),    checkBookCommand(),
      backupCommand(), restoreCommand(), computeCommand(), screenshotCommand(), windowCommand(),
  };
  return kTable;
}

}  // namespace sw::app
