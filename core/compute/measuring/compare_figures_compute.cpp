// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/measuring.h"

#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/kind_of_text.h"
#include "compute/measuring/figures_picture.h"
#include "compute/notes.h"
#include "measure/compare_figures.h"
#include "units/format.h"

namespace sw::compute {

namespace {

struct TwoFigures {
  std::string first;
  std::string second;
  QuantityKind kind = QuantityKind::Torque;
};

Result<TwoFigures> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  TwoFigures input;
  input.first = reader.fields().requiredText("first");
  input.second = reader.fields().requiredText("second");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  // Where the two do not fit each other, the first says what both should be.
  auto kind = commonKind({input.first, input.second});
  if (!kind) kind = commonKind({input.first});
  if (!kind) return tl::make_unexpected(notAQuantity(input.first, "/first"));
  input.kind = *kind;
  return input;
}

Result<TypedQuantity> figure(const std::string& text, const std::string& path, QuantityKind kind,
                             std::vector<Note>& notes) {
  auto parsed = parseQuantity(text, {.field = path, .kind = kind, .defaultUnit = {}});
  if (!parsed) return failAs(parsed);
  for (const ReadNote note : parsed->notes) {
    if (note == ReadNote::BareNumber) return tl::make_unexpected(notAQuantity(text, path));
    notes.push_back(readNote(note, path, *parsed));
  }
  return std::move(parsed->value);
}

std::string inUnit(double value, const std::string& unit) {
  return fullPrecision(value) + " " + unit;
}

Json resultJson(const TypedQuantity& first, const TypedQuantity& second,
                const FigureComparison& compared) {
  const bool agree = compared.agreement == FigureAgreement::Agree;
  return {{"agreement", agree ? "agrees" : "query"},
          {"first_in_second_unit", inUnit(compared.firstInSecondUnit, second.unit)},
          {"second_in_first_unit", inUnit(compared.secondInFirstUnit, first.unit)},
          {"would_agree_with_first", compared.besideFirst.text()},
          {"would_agree_with_second", compared.besideSecond.text()}};
}

constexpr std::string_view kFormula =
    "range of a figure = figure ± half of its last typed place: 25 is 24.5 to 25.5, 25.0 is "
    "24.95 to 25.05\n"
    "with both ranges in one unit: the figures agree where the ranges meet or touch, else it "
    "is a query";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Each figure was rounded to the places it shows.",
    "A figure rounded more coarsely, to the nearest 5, say, may be queried although it was "
    "meant: it is a query, not an error.",
    "The factors between the units are exact definitions.",
    "Not for a maximum in one unit against a minimum in the other.",
});

}  // namespace

Description describeCompareFigures() {
  std::vector<FieldDescription> inputs{
      {.name = "first",
       .kind = "text",
       .presence = Presence::Required,
       .range = "at most 60 characters",
       .meaning = "a figure with its unit, as it is printed: a trailing zero counts"},
      {.name = "second",
       .kind = "text",
       .presence = Presence::Required,
       .range = "at most 60 characters",
       .meaning = "the same limit or torque in the other unit"}};
  for (auto& field : envelopeFields({})) inputs.push_back(std::move(field));
  return {.title = "Do two figures of one limit agree?",
          .method = "the rounding intervals of both figures, as typed, meet",
          .source = "common practice, no source; exact conversion factors",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = std::move(inputs),
          .outputs = {{.name = "agreement",
                       .kind = "word",
                       .presence = Presence::Required,
                       .range = "agrees | query"},
                      {.name = "first_in_second_unit",
                       .kind = "text",
                       .presence = Presence::Required,
                       .meaning = "unrounded"},
                      {.name = "second_in_first_unit",
                       .kind = "text",
                       .presence = Presence::Required,
                       .meaning = "unrounded"},
                      {.name = "would_agree_with_first",
                       .kind = "text",
                       .presence = Presence::Required,
                       .meaning = "the second figure that fits the first, to the places typed"},
                      {.name = "would_agree_with_second",
                       .kind = "text",
                       .presence = Presence::Required,
                       .meaning = "the first figure that fits the second, to the places typed"}},
          .exampleInput = R"({"first": "61 N m", "second": "49 lbf ft"})",
          .exampleOutput = R"({
  "result": {
    "agreement": "query",
    "first_in_second_unit": "44.9912911059132 lbf ft",
    "second_in_first_unit": "66.4350794682386 N m",
    "would_agree_with_first": "45 lbf ft",
    "would_agree_with_second": "66 N m"},
  "notes": [],
  "method": {
    "name": "the rounding intervals of both figures, as typed, meet",
    "source": "common practice, no source; exact conversion factors",
    "options": {}}
})"};
}

Result<Outcome> runCompareFigures(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto first = figure(input->first, "/first", input->kind, outcome.notes);
  if (!first) return failAs(first);
  const auto second = figure(input->second, "/second", input->kind, outcome.notes);
  if (!second) return failAs(second);
  const auto compared = compareFigures(*first, *second);
  if (!compared) return failAs(compared);
  outcome.result = resultJson(*first, *second, *compared);
  outcome.draw = [first = *first, second = *second, compared = *compared](figure::Size size) {
    return figuresPicture(first, second, compared, size);
  };
  return outcome;
}

}  // namespace sw::compute
