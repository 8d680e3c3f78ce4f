// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "model/json.h"
#include "support/program_run.h"

// What is asked of answers of `compute`.

namespace sw::test {

/// The "result" of `compute NAME`, which has to end with 0.
[[nodiscard]] inline model::Json resultOf(const std::string& name, const std::string& input) {
  return computed(name, input).at("result");
}

/// Whether an answer of `compute` carries a note of this code.
[[nodiscard]] inline bool hasNote(const model::Json& answer, std::string_view code) {
  const model::Json& notes = answer.at("notes");
  return std::any_of(notes.begin(), notes.end(),
                     [code](const model::Json& note) { return note.at("code") == code; });
}

}  // namespace sw::test
