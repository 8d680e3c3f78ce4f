// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"

namespace sw::phrasing {

/// The error for people: which field, what is wrong, what to do. A key without a sentence of its
/// own still names its code, key, field and details.
[[nodiscard]] QString sentence(const Error& error);

/// One reason of a refusal, "key|step|what", as a phrase; an empty step is left out.
[[nodiscard]] QString refusalPhrase(const std::string& refusal);

/// Whether a key has a sentence of its own.
[[nodiscard]] bool hasSentence(std::string_view key);
/// All keys with a sentence, in the order of the tables.
[[nodiscard]] std::vector<std::string_view> sentenceKeys();

}  // namespace sw::phrasing
