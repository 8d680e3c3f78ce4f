// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/help.h"

#include <algorithm>

namespace sw::app {

namespace {

std::string row(std::string_view left, std::string_view right, std::size_t width) {
  std::string text = "  " + std::string(left);
  text.append(width > left.size() ? width - left.size() : 0, ' ');
  return text + "  " + std::string(right) + "\n";
}

std::string leftOf(const OptionSpec& option) {
  std::string text = "--" + std::string(option.name);
  if (option.takesValue()) text += " " + std::string(option.valueName);
  return text;
}

std::string optionRows(std::span<const OptionSpec> options) {
  std::size_t width = 0;
  for (const auto& option : options) width = std::max(width, leftOf(option).size());
  std::string text;
  for (const auto& option : options) text += row(leftOf(option), option.help, width);
  return text;
}

constexpr std::string_view kExitCodes =
    "Ends with 0 done, 1 findings, 2 bad input or usage, 3 the book (missing, foreign, damaged,\n"
    "newer, read-only, locked), 4 output cannot be written, 5 cancelled, 70 an internal fault.\n";

}  // namespace

std::string versionText() {
  return "swivelwright " SW_VERSION "\n";
}

std::string programHelp(std::span<const Command> commands) {
  std::string text = "Usage: swivelwright COMMAND [options]\n\nCommands:\n";
  std::size_t width = 0;
  for (const auto& command : commands) width = std::max(width, command.name.size());
  for (const auto& command : commands) text += row(command.name, command.summary, width);
  text += "\nOptions of every command:\n" + optionRows(commonOptions());
  text += "\nswivelwright COMMAND --help says more about one.\n" + std::string(kExitCodes);
  return text;
}

std::string commandHelp(const Command& command) {
  std::string text = "Usage: swivelwright " + std::string(command.usage) + "\n\n";
  text += std::string(command.summary) + "\n";
  if (!command.details.empty()) text += "\n" + std::string(command.details);
  if (!command.options.empty()) text += "\nOptions:\n" + optionRows(command.options);
  return text + "\nOptions of every command:\n" + optionRows(commonOptions()) + "\n" +
         std::string(kExitCodes);
}

}  // namespace sw::app
