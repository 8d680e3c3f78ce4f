// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/typed_quantity.h"

// Reads quantities as people type them: "45 N", "4.6kgf", "4,6 kg" (a spring scale marked in kg means
// kgf), "18 ft-lb", "25Nm", "20 thou", "50 mph". One decimal mark, comma or point, never a thousands
// separator; digits of any script; at most 24 characters a number; finite only.

namespace sw {

/// How the text was understood, when that is worth showing beside the field.
enum class ReadNote {
  BareNumber,     ///< no unit typed: the field's unit was taken
  MassAsForce,    ///< kg (g, lb, oz) in a force field read as kgf (gf, lbf, ozf)
  MassAsTorque,   ///< "kg m", "ft-lb", "lb in" in a torque field read with the force unit
  CommaAsDecimal, ///< the comma was read as the decimal mark
};

struct ParsedQuantity {
  TypedQuantity value;
  std::vector<ReadNote> notes;
};

/// What a field expects.
struct FieldSpec {
  std::string field;         ///< name used in error messages, e.g. "starting force"
  QuantityKind kind = QuantityKind::Number;
  std::string defaultUnit;   ///< symbol taken for a bare number; empty = the kind's default unit
};

/// Reads one quantity. Errors (all InvalidInput unless said), each naming the field:
/// "units.empty"; "units.not_a_number"; "units.two_marks"; "units.not_finite"; "units.too_long";
/// "units.wrong_kind" (details: text, unit, expected, found, example); "units.unknown_unit".
[[nodiscard]] Result<ParsedQuantity> parseQuantity(std::string_view text, const FieldSpec& field);

/// Reads a whole series on one line: "18.5 19 18.5", "18,5; 19; 18,5 N", "1.9 kgf 2.0 kgf". Spaces,
/// semicolons and line ends separate; a comma is a decimal mark only. A unit that stands only at the
/// end counts for all numbers before it that carry none.
/// Errors as parseQuantity, with detail "position" (1-based).
[[nodiscard]] Result<std::vector<ParsedQuantity>> parseSeries(std::string_view text,
                                                              const FieldSpec& field);

}  // namespace sw
