// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/number_text.h"
#include "units/parse.h"
#include "units/spelling.h"

// What the readers of one quantity and of a series share.

namespace sw::field_unit {

/// The unit a bare number in this field is read in. Internal error when the field itself is wrong.
[[nodiscard]] Result<spelling::UnitMatch> ofField(const FieldSpec& field);

/// One number and its unit as cut out of a text.
struct Item {
  number_text::ScannedNumber number;
  std::string_view unitText;  ///< normalised and trimmed; empty for a bare number
  std::string text;           ///< the whole item, for messages
};

/// An error about this text, with the details every reading error has.
[[nodiscard]] Error readingError(std::string_view key, std::string_view text,
                                 const FieldSpec& field);
/// The error of a number that could not be scanned.
[[nodiscard]] Error numberError(number_text::NumberFault fault, std::string_view text,
                                const FieldSpec& field);
/// The unit that stands in the item.
[[nodiscard]] Result<spelling::UnitMatch> ofItem(const Item& item, const FieldSpec& field);
/// The item in a unit, with what is worth noting.
[[nodiscard]] ParsedQuantity quantityOf(const number_text::ScannedNumber& number,
                                        const spelling::UnitMatch& match,
                                        std::optional<ReadNote> note);

}  // namespace sw::field_unit
