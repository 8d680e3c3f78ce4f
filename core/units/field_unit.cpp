// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/field_unit.h"

#include <algorithm>
#include <array>

#include "units/format.h"

namespace sw::field_unit {

namespace {

using number_text::NumberFault;
using spelling::Reading;
using spelling::UnitMatch;

struct Example {
  QuantityKind kind;
  std::string_view text;
  double si;
};

/// Invented figures of an everyday size, in the kind's default unit and in SI.
constexpr std::array<Example, 15> kExamples{{
    {QuantityKind::Length, "0.5 mm", 0.0005},
    {QuantityKind::Force, "18.5 N", 18.5},
    {QuantityKind::Torque, "65 N m", 65.0},
    {QuantityKind::Angle, "15 deg", 15.0 * factor::kRadiansPerDegree},
    {QuantityKind::Mass, "850 kg", 850.0},
    {QuantityKind::Speed, "80 km/h", 80.0 / 3.6},
    {QuantityKind::Frequency, "7.5 Hz", 7.5},
    {QuantityKind::Pressure, "2.1 bar", 210000.0},
    {QuantityKind::Duration, "30 min", 1800.0},
    {QuantityKind::Volume, "1.5 l", 0.0015},
    {QuantityKind::TemperatureDifference, "20 K", 20.0},
    {QuantityKind::Area, "85 mm2", 0.000085},
    {QuantityKind::Stiffness, "120 N/mm", 120000.0},
    {QuantityKind::Unbalance, "4000 g mm", 0.004},
    {QuantityKind::Number, "3", 3.0},
}};

constexpr double kSmallestExample = 0.01;  ///< of the field's unit

std::string exampleFor(const FieldSpec& field) {
  const auto example = std::find_if(kExamples.begin(), kExamples.end(),
                                    [&](const Example& e) { return e.kind == field.kind; });
  if (example == kExamples.end()) return {};
  const auto unit = findUnit(field.kind, field.defaultUnit);
  if (!unit || unit->symbol == defaultUnit(field.kind).symbol) return std::string(example->text);
  // A shim's thickness says nothing to a field of kilometres.
  if (example->si < kSmallestExample * unit->toSi) return "12 " + std::string(unit->symbol);
  return displayText(example->si, *unit, 2);
}

std::string_view keyOf(NumberFault fault) {
  switch (fault) {
    case NumberFault::TwoMarks:
      return "units.two_marks";
    case NumberFault::NotFinite:
      return "units.not_finite";
    case NumberFault::TooLong:
      return "units.too_long";
    case NumberFault::NotANumber:
    case NumberFault::None:
      break;
  }
  return "units.not_a_number";
}

}  // namespace

Result<UnitMatch> ofField(const FieldSpec& field) {
  if (field.defaultUnit.empty()) return UnitMatch{defaultUnit(field.kind), Reading::Plain};
  if (const auto exact = findUnit(field.kind, field.defaultUnit)) {
    return UnitMatch{*exact, Reading::Plain};
  }
  if (const auto match = spelling::matchUnit(field.kind, field.defaultUnit)) return *match;
  Error error = readingError("units.unknown_unit", field.defaultUnit, field);
  error.code = ErrorCode::Internal;
  error.details.emplace_back("unit", number_text::echo(field.defaultUnit));
  return tl::make_unexpected(std::move(error));
}

Error readingError(std::string_view key, std::string_view text, const FieldSpec& field) {
  return Error{ErrorCode::InvalidInput,
               std::string(key),
               field.field,
               {{"text", number_text::echo(text)},
                {"expected", std::string(word(field.kind))},
                {"example", exampleFor(field)}}};
}

Error numberError(NumberFault fault, std::string_view text, const FieldSpec& field) {
  return readingError(keyOf(fault), text, field);
}

Result<UnitMatch> ofItem(const Item& item, const FieldSpec& field) {
  if (const auto match = spelling::matchUnit(field.kind, item.unitText)) return *match;
  const auto other = spelling::otherKindOf(field.kind, item.unitText);
  const bool hasDigit =
      std::any_of(item.unitText.begin(), item.unitText.end(), number_text::isDigit);
  if (!other && hasDigit) {
    return tl::make_unexpected(readingError("units.not_a_number", item.text, field));
  }
  Error error = readingError(other ? "units.wrong_kind" : "units.unknown_unit", item.text, field);
  error.details.emplace_back("unit", number_text::echo(item.unitText));
  if (other) error.details.emplace_back("found", std::string(word(*other)));
  return tl::make_unexpected(std::move(error));
}

ParsedQuantity quantityOf(const number_text::ScannedNumber& number, const UnitMatch& match,
                          std::optional<ReadNote> note) {
  ParsedQuantity parsed;
  parsed.value.kind = match.unit.kind;
  parsed.value.number = number.number;
  parsed.value.unit = std::string(match.unit.symbol);
  parsed.value.si = number.value * match.unit.toSi;
  if (note) parsed.notes.push_back(*note);
  if (match.reading == Reading::MassAsForce) parsed.notes.push_back(ReadNote::MassAsForce);
  if (match.reading == Reading::MassAsTorque) parsed.notes.push_back(ReadNote::MassAsTorque);
  if (number.commaMark) parsed.notes.push_back(ReadNote::CommaAsDecimal);
  return parsed;
}

}  // namespace sw::field_unit
