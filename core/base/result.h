// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <tl/expected.hpp>

#include "base/error.h"

namespace sw {

/// What every fallible function returns. Mark such functions [[nodiscard]].
template <class T>
using Result = tl::expected<T, Error>;

/// Shorthand: `return fail(ErrorCode::InvalidInput, "units.not_a_number", field, {{"text",
/// text}});`
[[nodiscard]] inline tl::unexpected<Error> fail(
    ErrorCode code, std::string key, std::string field = {},
    std::vector<std::pair<std::string, std::string>> details = {}) {
  return tl::make_unexpected(Error{code, std::move(key), std::move(field), std::move(details)});
}

/// Passes an error on: `if (!x) return failAs(x);`
template <class T>
[[nodiscard]] tl::unexpected<Error> failAs(const Result<T>& result) {
  return tl::make_unexpected(result.error());
}

}  // namespace sw
