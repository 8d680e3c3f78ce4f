// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <string>
#include <string_view>

#include "base/result.h"

namespace sw::compute {

/// The whole input. Errors: InvalidInput "json.too_large" above 64 MB.
[[nodiscard]] Result<std::string> readAll(std::istream& in);

/// The answer to one line {"id","compute","input"}, without a line end: {"id","result","notes",
/// "method"} or {"id","error":{"code","field","message"}}. The id is a text or a number; it is left
/// out of the answer to a line that has none. Fields are paths into the input.
[[nodiscard]] std::string answerLine(std::string_view line);

/// Answers every line that is not blank, in order, each flushed, until the input or the taking of
/// answers ends.
void answerStream(std::istream& in, std::ostream& out);

}  // namespace sw::compute
