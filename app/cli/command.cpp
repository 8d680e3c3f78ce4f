// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command.h"

#include <charconv>
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

Result<std::int64_t> CommandContext::requiredNumber(std::string_view option) const {
  const auto text = required(option);
  if (!text) return failAs(text);
  std::int64_t number = 0;
  const char* const end = text->data() + text->size();
  const auto [stop, error] = std::from_chars(text->data(), end, number);
  if (error != std::errc{} || stop != end || number < 1) {
    return sw::fail(ErrorCode::InvalidInput, "cli.not_a_whole_number", "--" + std::string(option),
                    {{"text", *text}});
  }
  return number;
}

}  // namespace sw::app
