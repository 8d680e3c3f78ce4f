// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command.h"

#include <ostream>

namespace sw::app {

int CommandContext::fail(const Error& error) const {
  streams.err << errorLine(error, name, errorFormat) << std::flush;
  return toInt(exitCodeFor(error.code));
}

Result<std::string> CommandContext::required(std::string_view option) const {
  if (auto value = arguments.value(option)) return std::move(*value);
  return sw::fail(ErrorCode::Missing, "cli.option_missing", "--" + std::string(option));
}

}  // namespace sw::app
