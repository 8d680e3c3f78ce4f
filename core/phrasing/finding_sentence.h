// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sw::phrasing {

/// What a check of a book found, or its summary ("check.sound", "check.faulty"), for people: "The
/// book is sound: 563 entries in 12 jobs." Key and details are those of a finding of the store. A
/// key without a sentence of its own still names its key and details.
[[nodiscard]] QString findingSentence(
    const std::string& key, const std::vector<std::pair<std::string, std::string>>& details);

/// All keys with a sentence, in the order of the table.
[[nodiscard]] std::vector<std::string_view> findingKeys();

}  // namespace sw::phrasing
