// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/wheels.h"

namespace sw::compute {

namespace {

std::vector<FieldDescription> inputFields() {
  return {
      {.name = "designation",
       .kind = "text",
       .presence = Presence::Required,
       .range = "at most 60 characters",
       .meaning = "the size as marked on the side wall, with load index and speed symbol if any"},
      quantityField("diameter", QuantityKind::Length, "measured; it goes before the marked one",
                    {.range = "more than 0"}),
      quantityField("measuring_rim_width", QuantityKind::Length,
                    "the rim that the section width is stated for; with rim_width",
                    {.range = "more than 0"}),
      quantityField("rim_width", QuantityKind::Length, "of the rim it is fitted to",
                    {.range = "more than 0, within 100 mm of the other"}),
      quantityField("reference_pressure", QuantityKind::Pressure,
                    "at which the tyre carries its reference load; needed for pressure and load",
                    {.range = "more than 0"}),
      quantityField("reference_load", QuantityKind::Mass,
                    "of one tyre; without it that of the load index", {.range = "more than 0"}),
      quantityField("pressure", QuantityKind::Pressure,
                    "gives the load it carries at this pressure",
                    {.range = "more than 0, up to the reference pressure"}),
      quantityField("load", QuantityKind::Mass, "gives the pressure this load needs",
                    {.range = "more than 0, up to the reference load"}),
      quantityField("cold_pressure", QuantityKind::Pressure, "as set; with hot_temperature",
                    {.range = "0 or more"}),
      quantityField("cold_temperature", QuantityKind::TemperatureDifference,
                    "of the tyre when it was set, above 0 degrees Celsius",
                    {.range = "above absolute zero", .defaultValue = R"("20 K")"}),
      quantityField("hot_temperature", QuantityKind::TemperatureDifference,
                    "of the tyre later, above 0 degrees Celsius",
                    {.range = "above absolute zero"})};
}

std::vector<FieldDescription> optionFields() {
  return {{.name = "assumed_aspect",
           .kind = "number",
           .defaultValue = "82",
           .range = "60 to 100",
           .meaning = "per cent, for a metric radial that is marked without one"},
          quantityField("ambient_pressure", QuantityKind::Pressure, "of the air around",
                        {.range = "more than 0", .defaultValue = R"("1.01325 bar")"})};
}

FieldDescription always(std::string_view name, std::string_view range, std::string_view meaning) {
  return {.name = name,
          .kind = "word",
          .presence = Presence::Required,
          .range = range,
          .meaning = meaning};
}

std::vector<FieldDescription> outputFields() {
  return {
      always("form", "metric_with_aspect | metric_without_aspect | flotation | inch_width",
             "how the size is marked"),
      always("construction", "radial | diagonal | bias_belted", "by the letter before the rim"),
      quantityField("section_width", QuantityKind::Length, "nominal",
                    {.presence = Presence::Required}),
      quantityField("rim_diameter", QuantityKind::Length, "25.4 mm times the code",
                    {.presence = Presence::Required}),
      {.name = "speed_symbol", .kind = "text", .meaning = "where it is marked"},
      quantityField("top_speed", QuantityKind::Speed, "of the symbol"),
      {.name = "ply_rating", .kind = "whole number", .meaning = "where it is marked"},
      {.name = "marks", .kind = "list of text", .meaning = "LT, XL, M+S and the like"},
      {.name = "aspect", .kind = "number", .meaning = "height over width, per cent"},
      {.name = "aspect_from",
       .kind = "word",
       .range = "marked | assumed | from_diameter",
       .meaning = "where the aspect comes from"},
      quantityField("nominal_diameter", QuantityKind::Length, "free, from the marking"),
      quantityField("section_height", QuantityKind::Length, "nominal"),
      quantityField("least_diameter", QuantityKind::Length,
                    "new tyres of a metric radial size, free"),
      quantityField("most_diameter", QuantityKind::Length, "the same"),
      quantityField("diameter", QuantityKind::Length, "the measured one, else the nominal one"),
      always("diameter_from", "measured | designation | not_computable", "what it rests on"),
      {.name = "load_index", .kind = "whole number", .meaning = "for a single wheel"},
      quantityField("load_of_index", QuantityKind::Mass, "of one tyre"),
      {.name = "load_index_dual", .kind = "whole number", .meaning = "for twin wheels"},
      quantityField("load_of_index_dual", QuantityKind::Mass, "of one tyre of a pair"),
      quantityField("load_at_pressure", QuantityKind::Mass, "what one tyre carries at pressure"),
      quantityField("pressure_for_load", QuantityKind::Pressure, "what load needs"),
      quantityField("width_on_rim", QuantityKind::Length, "section width on rim_width"),
      quantityField("hot_pressure", QuantityKind::Pressure, "at hot_temperature")};
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "form": "metric_without_aspect",
    "construction": "radial",
    "section_width": "215 mm",
    "rim_diameter": "381 mm",
    "speed_symbol": "Q",
    "top_speed": "160 km/h",
    "aspect": 82,
    "aspect_from": "assumed",
    "nominal_diameter": "733.6 mm",
    "section_height": "176.3 mm",
    "least_diameter": "723.022 mm",
    "most_diameter": "747.704 mm",
    "diameter": "733.6 mm",
    "diameter_from": "designation",
    "load_index": 99,
    "load_of_index": "775 kg",
    "load_at_pressure": "642.888400427421 kg",
    "pressure_for_load": "1.59889206550158 bar",
    "width_on_rim": "225.16 mm",
    "hot_pressure": "2.21671313343854 bar"},
  "notes": [
    {
      "code": "size",
      "text": "As marked it is 734 mm across and 215 mm wide, on a 15 inch rim."},
    {
      "code": "assumed_aspect",
      "text": "The tyre: no aspect is marked, so 82 % was taken. Trade lists say 82 %,)"
    R"( others 80 %, about 1 % of the diameter apart; a roll-out settles it."},
    {
      "code": "pressure_documentation",
      "text": "Pressures are set cold to the vehicle's documentation; never lower than it)"
    R"( says because of this figure."},
    {
      "code": "never_let_out",
      "text": "A warm tyre reads high: let nothing out of it, set it cold."},
    {
      "code": "documentation",
      "text": "Which tyres may be fitted is in the vehicle's documentation and local rules."}],
  "method": {
    "name": "nominal dimensions, load index, speed symbol; load over pressure to the power)"
    R"( 0.8; constant volume for the temperature",
    "source": "ISO 4000-1, UN R30, R54 and R117 (from memory); public trade tables",
    "options": {"assumed_aspect": 82, "ambient_pressure": "1.01325 bar"}}})";

constexpr std::string_view kFormula =
    "diameter = rim + 2 × height; rim = 25.4 mm × rim code; height = aspect ÷ 100 × width\n"
    "size in inches (31x10.50): diameter and width as marked, height = (diameter − rim) ÷ 2\n"
    "width on another rim = width + 0.4 × (rim width − measuring rim width)\n"
    "load at a lower pressure = load × (pressure ÷ reference pressure)^0.8\n"
    "pressure for a smaller load = reference pressure × (load ÷ reference load)^1.25\n"
    "hot pressure = (cold pressure + A) × (hot °C + 273.15) ÷ (cold °C + 273.15) − A, A the "
    "pressure of the air around, 1.01325 bar unless told otherwise";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Three digits without a decimal mark are millimetres, anything smaller is inches; a "
    "marking that is not understood is refused, never guessed at.",
    "A metric radial without a marked aspect is taken with 82 % unless told otherwise; "
    "others say 80 %, about 1 % of the diameter apart.",
    "The height of a new radial may be 3 % less to 4 % more than marked; the inches of a "
    "size in inches are nominal, and the tyre may be more than 1 % smaller.",
    "Loads are those of one tyre, load index 60 to 126; of two indices the first is for "
    "single fitting.",
    "The tyre keeps its volume and its air; pressures are those a gauge shows.",
    "Not for a frequency finer than 3 %: measure the roll-out.",
    "Not for choosing a pressure: the vehicle's documentation does, and a tyre is set cold.",
});

}  // namespace

Description describeTyre() {
  return {.title = "What the marking of a tyre says",
          .method =
              "nominal dimensions, load index, speed symbol; load over pressure to the power "
              "0.8; constant volume for the temperature",
          .source = "ISO 4000-1, UN R30, R54 and R117 (from memory); public trade tables",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields(), optionFields()),
          .outputs = outputFields(),
          .exampleInput = R"({"designation": "215 R15 99Q", "measuring_rim_width": "6 in",
                              "rim_width": "7 in", "reference_pressure": "2.4 bar",
                              "pressure": "1.9 bar", "load": "560 kg", "cold_pressure": "1.9 bar",
                              "cold_temperature": "12 degC", "hot_temperature": "43 degC"})",
          .exampleOutput = kExampleOutput};
}

}  // namespace sw::compute
