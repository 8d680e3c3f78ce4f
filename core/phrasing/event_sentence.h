// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sw::phrasing {

/// What an action of the workshop brought about, for people: "Readings: read as 1.95 kgf: a spring
/// scale marked in kg shows kilogram-force." Key and values are those of a workshop event. A key
/// without a sentence of its own still names its key and values.
[[nodiscard]] QString eventSentence(const std::string& key,
                                    const std::vector<std::pair<std::string, std::string>>& values);

/// All keys with a sentence, in the order of the table. "read_as/mass_as_force" is the sentence of
/// the event "read_as" whose telling value is that word.
[[nodiscard]] std::vector<std::string_view> eventKeys();

}  // namespace sw::phrasing
