// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

/// Details or values as findings, events and errors carry them.
using KeyValues = std::vector<std::pair<std::string, std::string>>;

/// The first value of that name; empty where there is none.
[[nodiscard]] std::string valueOf(const KeyValues& values, std::string_view name);
/// The row's text, or nothing for a key that is not in the table.
[[nodiscard]] const Source* sourceIn(std::span<const SentenceRow> table, std::string_view key);
/// For a key without a sentence of its own: "Moon too full (age = 11)".
[[nodiscard]] QString keyAndValues(const std::string& key, const KeyValues& values);
/// "wheel_nuts", "swivel.end_float" and "fit-shims-and-pull" with spaces instead of the marks.
[[nodiscard]] QString spaced(const std::string& word);
[[nodiscard]] QString withCapital(QString text);

}  // namespace sw::phrasing
