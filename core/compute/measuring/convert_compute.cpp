// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/measuring.h"

#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/kind_of_text.h"
#include "compute/notes.h"
#include "units/format.h"

namespace sw::compute {

namespace {

struct ConvertInput {
  std::string value;
  std::string to;
  std::optional<QuantityKind> kind;
};

Result<ConvertInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  ConvertInput input;
  input.value = reader.fields().requiredText("value");
  input.to = reader.fields().requiredText("to");
  if (const auto named = reader.fields().text("kind")) {
    const auto kind = kindFromField(*named, reader.fields().pathOf("kind"));
    if (!kind) reader.fail(kind.error());
    if (kind) input.kind = *kind;
  }
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

/// A unit is read as the unit of one: "1 ft-lb".
std::string oneOf(const std::string& unit) {
  return "1 " + unit;
}

/// The unit to convert to, and with it the kind.
Result<Unit> targetUnit(const ConvertInput& input) {
  auto kind = input.kind;
  if (!kind) kind = commonKind({input.value, oneOf(input.to)});
  // The value does not fit the unit: the unit says what was meant.
  if (!kind) kind = commonKind({oneOf(input.to)});
  const FieldSpec field{
      .field = "/to", .kind = kind.value_or(QuantityKind::Force), .defaultUnit = {}};
  const auto one = parseQuantity(oneOf(input.to), field);
  const auto unit = one ? findUnit(one->value.kind, one->value.unit) : std::nullopt;
  const bool named = unit && one->value.number == "1" && commonKind({oneOf(input.to)});
  if (named && kind) return *unit;
  return fail(ErrorCode::InvalidInput, "compute.not_a_unit", "/to",
              {{"text", input.to}, {"example", "lbf ft"}});
}

constexpr std::string_view kFormula =
    "number in the unit wanted = number × factor of its unit ÷ factor of the unit wanted\n"
    "1 in = 25.4 mm; 1 lb = 0.45359237 kg; 1 kgf = 9.80665 N; 1 lbf = 0.45359237 × 9.80665 "
    "N; 1 bar = 100 000 Pa";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The factors are exact definitions; nothing is rounded before the last of 15 digits.",
    "A comma is a decimal mark, never a separator of thousands.",
    "A unit of mass in a force is read as that force: 1 kg as 1 kgf.",
    "Temperatures are taken as differences only: 20 °C come out as 20 K.",
});

}  // namespace

Description describeConvert() {
  std::vector<FieldDescription> inputs{
      {.name = "value",
       .kind = "text",
       .presence = Presence::Required,
       .range = "at most 60 characters",
       .meaning = "a number with its unit, as people type it; a decimal comma or point"},
      {.name = "to",
       .kind = "text",
       .presence = Presence::Required,
       .range = "mm in thou cm m um ft yd km mi | N kgf lbf gf ozf daN kN | N m, lbf ft, kgf m, "
                "lbf in, kgf cm, N cm, ozf in, daN m | deg rad | kg lb g oz t | km/h mph m/s | Hz "
                "rpm kHz | bar psi kPa kgf/cm2 MPa Pa | min h s | l ml cm3 | K",
       .meaning = "the unit wanted, also in other common spellings"},
      {.name = "kind",
       .kind = "word",
       .range = "length | force | torque | angle | mass | speed | frequency | pressure | duration "
                "| volume | temperature_difference",
       .meaning = "needed only where the units leave it open; a unit of mass in a force is read as "
                  "the force, with a note"}};
  for (auto& field : envelopeFields({})) inputs.push_back(std::move(field));
  return {.title = "A quantity in another unit",
          .method = "exact conversion factors",
          .source = "SI Brochure, 9th edition; yard and pound agreement of 1959; 3rd CGPM 1901",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = std::move(inputs),
          .outputs = {{.name = "value",
                       .kind = "text",
                       .presence = Presence::Required,
                       .meaning = "in the unit wanted, 15 significant digits"},
                      {.name = "kind", .kind = "word", .presence = Presence::Required},
                      {.name = "read_as",
                       .kind = "text",
                       .presence = Presence::Required,
                       .meaning = "how the value was understood"}},
          .exampleInput = R"({"value": "2,75 in", "to": "mm"})",
          .exampleOutput = R"({
  "result": {"value": "69.85 mm", "kind": "length", "read_as": "2.75 in"},
  "notes": [{"code": "comma_as_decimal",
             "text": "/value: the comma is the decimal mark; read as 2.75 in"}],
  "method": {
    "name": "exact conversion factors",
    "source": "SI Brochure, 9th edition; yard and pound agreement of 1959; 3rd CGPM 1901",
    "options": {}}
})"};
}

Result<Outcome> runConvert(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto unit = targetUnit(*input);
  if (!unit) return failAs(unit);
  const FieldSpec field{.field = "/value", .kind = unit->kind, .defaultUnit = {}};
  const auto parsed = parseQuantity(input->value, field);
  if (!parsed) return failAs(parsed);
  for (const ReadNote note : parsed->notes) {
    if (note == ReadNote::BareNumber) {
      return tl::make_unexpected(notAQuantity(input->value, "/value"));
    }
    outcome.notes.push_back(readNote(note, "/value", *parsed));
  }
  outcome.result = {{"value", exactText(parsed->value.si, *unit)},
                    {"kind", word(unit->kind)},
                    {"read_as", parsed->value.text()}};
  return outcome;
}

}  // namespace sw::compute
