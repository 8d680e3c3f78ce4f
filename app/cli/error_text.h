// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/error.h"

// Errors as the command line writes them: a code word for programs, one line for people.

namespace sw::app {

enum class ErrorFormat { Text, Json };
[[nodiscard]] std::optional<ErrorFormat> errorFormatFromWord(std::string_view text);

/// The code word of an error about input: invalid_json, unknown_name, unknown_field,
/// duplicate_field, missing_field, wrong_kind, out_of_range, degenerate; else the word of its code.
[[nodiscard]] std::string_view codeWord(const Error& error);

/// The sentence alone, without the field, on one line.
[[nodiscard]] std::string sentenceText(const Error& error);

/// `swivelwright compute series: /readings/2: "abc" is not a force; ...` and a line end, or the
/// same as {"error":{"code","field","message"}}; the field is left out where there is none.
[[nodiscard]] std::string errorLine(const Error& error, std::string_view command,
                                    ErrorFormat format);

}  // namespace sw::app
