// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

// What was typed after the program's name: [options] COMMAND [options and positional arguments].
// "--name value" and "--name=value" are the same; "--" ends the options; "-" alone is positional
// (standard input). Each option stands at most once, in any order.

namespace sw::app {

inline constexpr std::size_t kLongestArgument = 4096;  // bytes, as the longest path of the system
inline constexpr std::size_t kMostArguments = 256;

/// One option of a command. A flag has an empty `valueName`.
struct OptionSpec {
  std::string_view name;       ///< without the dashes
  std::string_view valueName;  ///< "FILE"; empty for a flag
  std::string_view help;

  [[nodiscard]] bool takesValue() const { return !valueName.empty(); }
};

class Arguments {
 public:
  void addPositional(std::string text) { m_positional.push_back(std::move(text)); }
  [[nodiscard]] bool addOption(std::string_view name, std::string value);

  [[nodiscard]] bool has(std::string_view option) const;
  [[nodiscard]] std::optional<std::string> value(std::string_view option) const;
  [[nodiscard]] const std::vector<std::string>& positional() const { return m_positional; }

 private:
  std::vector<std::string> m_positional;
  std::map<std::string, std::string, std::less<>> m_options;
};

/// The first argument that is neither an option nor the value of --book or of one of the common
/// options; empty where there is none. `rest` gets the other arguments.
struct CommandWord {
  std::string word;
  std::vector<std::string> rest;
};
[[nodiscard]] CommandWord splitCommandWord(std::span<const std::string> arguments);

/// Options that every command understands: help, version, now, seed, errors.
[[nodiscard]] std::span<const OptionSpec> commonOptions();

/// Errors: InvalidInput "cli.unknown_option", "cli.option_twice", "cli.unexpected_value",
/// "cli.unexpected_argument", "cli.argument_too_long", "cli.too_many_arguments"; Missing
/// "cli.value_missing". The field is the option ("--seed") or empty.
[[nodiscard]] Result<Arguments> parseArguments(std::span<const std::string> arguments,
                                               std::span<const OptionSpec> commandOptions,
                                               std::size_t mostPositional);

}  // namespace sw::app
