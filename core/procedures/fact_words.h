// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sw::procedures {

/// Whether a fact is something seen in the job ("observed.feel"); its words are the procedures'
/// own.
[[nodiscard]] bool isObserved(std::string_view fact);

/// The words a fact of a condition can have; nothing for a name that is no fact, and for an
/// observed one.
[[nodiscard]] std::optional<std::vector<std::string_view>> wordsOfFact(std::string_view fact);

}  // namespace sw::procedures
