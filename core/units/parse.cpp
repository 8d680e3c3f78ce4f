// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/parse.h"

#include "units/field_unit.h"
#include "units/number_text.h"

namespace sw {

namespace {

using number_text::NumberFault;

tl::unexpected<Error> faultOf(NumberFault fault, std::string_view text, const FieldSpec& field) {
  return tl::make_unexpected(field_unit::numberError(fault, text, field));
}

/// What follows the number must not be another number: "1 234" groups digits, "18-19" is a range.
NumberFault faultAfterNumber(std::string_view rest) {
  const std::string_view next = number_text::trimmed(rest);
  if (!number_text::startsNumber(next)) return NumberFault::None;
  const bool signedNumber = next[0] == '+' || next[0] == '-';
  return signedNumber ? NumberFault::NotANumber : NumberFault::TwoMarks;
}

}  // namespace

Result<ParsedQuantity> parseQuantity(std::string_view text, const FieldSpec& field) {
  const auto fieldUnit = field_unit::ofField(field);
  if (!fieldUnit) return failAs(fieldUnit);
  const auto plain = number_text::normalised(text);
  if (!plain) return faultOf(NumberFault::NotANumber, text, field);
  const std::string_view body = number_text::trimmed(*plain);
  if (body.empty()) {
    return tl::make_unexpected(field_unit::readingError("units.empty", text, field));
  }
  auto number = number_text::scanNumber(body);
  if (number.fault != NumberFault::None) return faultOf(number.fault, text, field);
  const std::string_view rest = body.substr(number.length);
  // "1/min" is a unit that begins like a number, so a known unit goes before the check.
  const field_unit::Item item{std::move(number), number_text::trimmed(rest), std::string(text)};
  if (item.unitText.empty()) {
    const bool bareIsPlain = field.kind == QuantityKind::Number;
    return field_unit::quantityOf(item.number, *fieldUnit,
                                  bareIsPlain ? std::nullopt : std::optional(ReadNote::BareNumber));
  }
  const auto known = spelling::matchUnit(field.kind, item.unitText);
  if (const NumberFault fault = faultAfterNumber(rest); !known && fault != NumberFault::None) {
    return faultOf(fault, text, field);
  }
  const auto unit = field_unit::ofItem(item, field);
  if (!unit) return failAs(unit);
  return field_unit::quantityOf(item.number, *unit, std::nullopt);
}

}  // namespace sw
