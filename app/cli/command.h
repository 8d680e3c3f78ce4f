// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/clock.h"
#include "cli/arguments.h"
#include "cli/error_text.h"
#include "cli/exit_code.h"

namespace sw::app {

/// The three standard streams, or a test's.
struct Streams {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
};

/// What a command works with. It owns nothing.
struct CommandContext {
  const Arguments& arguments;
  Streams streams;
  const Clock& clock;
  std::optional<std::uint64_t> seed;
  ErrorFormat errorFormat = ErrorFormat::Text;
  std::string name;  ///< what stands before an error: "compute series"

  /// Writes the error to standard error and gives the number to end with.
  [[nodiscard]] int fail(const Error& error) const;
  /// The option's value. Errors: Missing "cli.option_missing".
  [[nodiscard]] Result<std::string> required(std::string_view option) const;
  /// The option as a whole number from 1. Errors: Missing "cli.option_missing"; InvalidInput
  /// "cli.not_a_whole_number".
  [[nodiscard]] Result<std::int64_t> requiredNumber(std::string_view option) const;
};

/// The command that is meant when no word is given.
inline constexpr std::string_view kWindowCommand = "window";

enum class NeedsGui {
  No,       ///< Qt Core is enough
  Yes,      ///< a QGuiApplication: text layout, PDF
  Widgets,  ///< a QApplication: pages of the window, drawn without a display
  Display   ///< a QApplication on the user's display
};

/// One row of the table of commands.
struct Command {
  std::string_view name;
  std::string_view summary;  ///< one line, for the list
  std::string_view usage;    ///< what follows the program's name: "sheet --book B --job N ..."
  std::string_view details;  ///< more for --help, may be empty
  std::span<const OptionSpec> options;
  std::size_t mostPositional = 0;
  NeedsGui needsGui = NeedsGui::No;
  int (*run)(CommandContext&) = nullptr;
};

}  // namespace sw::app
