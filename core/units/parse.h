// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/typed_quantity.h"

// Reads quantities as people type them: "45 N", "4.6kgf", "4,6 kg" (a spring scale marked in kg
// means kgf), "18 ft-lb", "25Nm", "20 thou", "50 mph". One decimal mark, comma or point, never a
// thousands separator; digits of any script; at most 24 characters a number; finite only.
//
// METHOD CARD
//   Reads        [sign] digits with at most one mark, then a unit. "1,234" is 1.234. No exponents.
//   Refused      a second mark, or a space or apostrophe that groups digits; a mark with no digit
//                after it ("18,"); ranges, fractions, "18 +/- 2"; a minus apart from its number.
//   Unit         the exact symbol, then known spellings as written, then the same without regard to
//                capitals, but never where a capital changes the prefix ("Mm", "mPa", "mN m").
//   Length       zeros directly behind "0." do not count, so that exactText of a small value reads
//                back; 60 characters in all.
//   Degenerate   zero is +0; invalid UTF-8 and control characters are "not a number".
//   Reference    tests/core/units/parse_test.cpp and parse_property_test.cpp.

namespace sw {

/// How the text was understood, when that is worth showing beside the field.
enum class ReadNote {
  BareNumber,      ///< no unit typed: the field's unit was taken
  MassAsForce,     ///< kg (g, lb, oz) in a force field read as kgf (gf, lbf, ozf)
  MassAsTorque,    ///< "kg m", "ft-lb", "lb in" in a torque field read with the force unit
  CommaAsDecimal,  ///< the comma was read as the decimal mark
};

struct ParsedQuantity {
  TypedQuantity value;
  std::vector<ReadNote> notes;
};

/// What a field expects.
struct FieldSpec {
  std::string field;  ///< name used in error messages, e.g. "starting force"
  QuantityKind kind = QuantityKind::Number;
  std::string defaultUnit;  ///< symbol taken for a bare number; empty = the kind's default unit
};

/// Reads one quantity. Errors (all InvalidInput unless said), each naming the field:
/// "units.empty"; "units.not_a_number"; "units.two_marks" (also digits grouped by a space or an
/// apostrophe: "1 234"); "units.not_finite" (nan, inf, 1e999); "units.too_long";
/// "units.wrong_kind" (details: text, unit, expected, found, example); "units.unknown_unit"
/// (details: text, unit, expected, example). Every error has text (valid UTF-8, clipped), expected
/// (the word of the kind) and example ("18.5 N"). A FieldSpec whose default unit does not belong to
/// its kind is Internal "units.unknown_unit".
[[nodiscard]] Result<ParsedQuantity> parseQuantity(std::string_view text, const FieldSpec& field);

/// Reads a whole series on one line: "18.5 19 18.5", "18,5; 19; 18,5 N", "1.9 kgf 2.0 kgf". Spaces,
/// semicolons and line ends separate; a comma is a decimal mark only. A unit that stands only at
/// the end counts for all numbers before it that carry none; so does one unit repeated on some
/// numbers only ("1.9 kgf 2.0 2.1"). Two units on the line and a number without any:
/// "units.mixed_units". A no-break or thin space between two digits is grouping, never a separator
/// ("units.two_marks"); so is a mark right behind a space ("18 ,5"), where it could belong to the
/// number before. Errors as parseQuantity, with detail "position" (1-based).
[[nodiscard]] Result<std::vector<ParsedQuantity>> parseSeries(std::string_view text,
                                                              const FieldSpec& field);

}  // namespace sw
