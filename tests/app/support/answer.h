// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string_view>

#include "model/json.h"

namespace sw::test {

/// Whether an answer of `compute` carries a note of this code.
[[nodiscard]] inline bool hasNote(const model::Json& answer, std::string_view code) {
  const model::Json& notes = answer.at("notes");
  return std::any_of(notes.begin(), notes.end(),
                     [code](const model::Json& note) { return note.at("code") == code; });
}

}  // namespace sw::test
