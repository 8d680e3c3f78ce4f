// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/tyre_reading.h"
#include "compute/wheels/wheels.h"

namespace sw::compute {

namespace {

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields = rollingFields();
  for (auto& field : std::vector<FieldDescription>{
           {.name = "built_with_tyre",
         .kind = "text",
         .range = "at most 60 characters",
         .meaning = "size the vehicle was built with; the dial goes by it"},
           {.name = "speed_from",
           .kind = "word",
           .defaultValue = R"("true")",
           .range = "true | dial",
           .meaning = "what the speeds are, and those that come out for frequencies"},
           {.name = "speeds",
           .kind = "list of speed",
           .unit = "km/h",
           .range = "0 or more each",
           .meaning = "required unless frequencies is given"},
           {.name = "frequencies",
           .kind = "list of frequency",
           .unit = "Hz",
           .range = "0 or more each",
           .meaning = "felt or measured: at which speed does each order have them?"},
           quantityField("speed_uncertainty", QuantityKind::Speed,
                         "standard uncertainty of a speed",
                         {.range = "0 or more", .defaultValue = R"("0 km/h")"}),
           quantityField("frequency_uncertainty", QuantityKind::Frequency,
                         "standard uncertainty of a frequency",
                         {.range = "0 or more", .defaultValue = R"("0 Hz")"}),
           {.name = "final_drive",
           .kind = "number",
           .range = "more than 0",
           .meaning = "turns of the prop shaft for one of the wheel"}}) {
    fields.push_back(std::move(field));
  }
  return fields;
}

std::vector<FieldDescription> optionFields() {
  std::vector<FieldDescription> fields = rollingOptionFields();
  fields.push_back({.name = "orders",
                    .kind = "whole number",
                    .defaultValue = "3",
                    .range = "1 to 20",
                    .meaning = "how many orders of the wheel"});
  fields.push_back({.name = "speed_growth",
                    .kind = "word",
                    .defaultValue = R"("none")",
                    .range = "none | linear",
                    .meaning = "whether the circumference grows with speed, 0.1 % for 10 km/h"});
  return fields;
}

FieldDescription frequencyField() {
  return quantityField("frequency", QuantityKind::Frequency, "at this speed",
                       {.presence = Presence::Required});
}
FieldDescription speedField(std::string_view meaning) {
  return quantityField("speed", QuantityKind::Speed, meaning, {.presence = Presence::Required});
}
FieldDescription spreadField(QuantityKind kind) {
  return quantityField("standard_uncertainty", kind, "of it", {.presence = Presence::Required});
}
FieldDescription orderField() {
  return {.name = "order",
          .kind = "whole number",
          .presence = Presence::Required,
          .meaning = "events in one turn of the wheel"};
}

FieldDescription atSpeeds() {
  return {
      .name = "at_speeds",
      .kind = "list of object",
      .meaning = "one for each of speeds",
      .fields = {speedField("as given"),
                 quantityField("true_speed", QuantityKind::Speed, "where speeds are the dial's"),
                 quantityField("circumference", QuantityKind::Length,
                               "that the frequencies rest on", {.presence = Presence::Required}),
                 {.name = "orders",
                  .kind = "list of object",
                  .presence = Presence::Required,
                  .meaning = "the wheel",
                  .fields = {orderField(), frequencyField(), spreadField(QuantityKind::Frequency)}},
                 {.name = "prop_shaft",
                  .kind = "object",
                  .meaning = "where final_drive is given",
                  .fields = {frequencyField(), spreadField(QuantityKind::Frequency)}}}};
}

FieldDescription atFrequencies() {
  const FieldDescription speed = speedField("where it has this frequency");
  return {.name = "at_frequencies",
          .kind = "list of object",
          .meaning = "one for each of frequencies",
          .fields = {frequencyField(),
                     {.name = "orders",
                      .kind = "list of object",
                      .presence = Presence::Required,
                      .meaning = "the wheel",
                      .fields = {orderField(), speed, spreadField(QuantityKind::Speed)}},
                     {.name = "prop_shaft",
                      .kind = "object",
                      .meaning = "where final_drive is given",
                      .fields = {speed, spreadField(QuantityKind::Speed)}}}};
}

std::vector<FieldDescription> outputFields() {
  return {quantityField("circumference", QuantityKind::Length, "way of one turn, tyre on",
                        {.presence = Presence::Required}),
          quantityField("standard_uncertainty", QuantityKind::Length, "of the circumference",
                        {.presence = Presence::Required}),
          quantityField("dynamic_radius", QuantityKind::Length, "circumference over 2 pi",
                        {.presence = Presence::Required}),
          {.name = "turns_per_kilometre",
           .kind = "number",
           .presence = Presence::Required,
           .meaning = "of the wheel"},
          {.name = "true_over_dial",
           .kind = "number",
           .meaning = "true speed over dial speed, where built_with_tyre is given"},
          atSpeeds(),
          atFrequencies()};
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "circumference": "2268.895 mm",
    "standard_uncertainty": "34.033425 mm",
    "dynamic_radius": "361.105854606486 mm",
    "turns_per_kilometre": 440.743181152059,
    "true_over_dial": 1.02606896551724,
    "at_speeds": [
      {
        "speed": "70 km/h",
        "true_speed": "71.8248275862069 km/h",
        "circumference": "2211.25 mm",
        "orders": [
          {
            "order": 1,
            "frequency": "8.79341749890082 Hz",
            "standard_uncertainty": "0.182149362477231 Hz"},
          {
            "order": 2,
            "frequency": "17.5868349978016 Hz",
            "standard_uncertainty": "0.364298724954463 Hz"}],
        "prop_shaft": {
          "frequency": "32.535644745933 Hz",
          "standard_uncertainty": "0.673952641165756 Hz"}}],
    "at_frequencies": [
      {
        "frequency": "11.2 Hz",
        "orders": [
          {
            "order": 1,
            "speed": "89.1576 km/h",
            "standard_uncertainty": "1.337364 km/h"},
          {
            "order": 2,
            "speed": "44.5788 km/h",
            "standard_uncertainty": "0.668682 km/h"}],
        "prop_shaft": {
          "speed": "24.0966486486486 km/h",
          "standard_uncertainty": "0.36144972972973 km/h"}}]},
  "notes": [
    {
      "code": "order_tolerance",
      "text": "The circumference is known to 3 % (k = 2): take no order for found that fits)"
    R"( closer than that, and measure a roll-out for less."},
    {
      "code": "dial_follows_its_tyre",
      "text": "The dial counts turns for the tyre the vehicle was built with, so its speed)"
    R"( gives the frequency whatever tyre is on."},
    {
      "code": "dial_reads_high",
      "text": "A dial may show more than the true speed; a satellite speed is better."}],
  "method": {
    "name": "speed over rolling circumference, times the order or the final drive ratio",
    "source": "ETRTO and WdK factors as quoted; JCGM 100:2008 5.1.6",
    "options": {
      "convention": "dynamic_radial",
      "circumference_uncertainty": 0.015,
      "assumed_aspect": 82,
      "orders": 2,
      "speed_growth": "none"}}})";

constexpr std::string_view kFormula =
    "frequency = order × speed ÷ rolling circumference; speed = frequency × rolling "
    "circumference ÷ order\n"
    "prop shaft: the final drive ratio in place of the order\n"
    "circumference = 3.05 × diameter (radial), 2.99 × diameter (diagonal), 2 × π × static "
    "radius, or way ÷ turns of a roll-out\n"
    "worn tread: diameter − 2 × tread gone\n"
    "dial: true speed = dial × circumference of the tyre on ÷ circumference of the tyre the "
    "vehicle was built with\n"
    "growth with speed, if asked for: circumference × (1 + (speed in km/h − 60) ÷ 10 000)\n"
    "relative uncertainty = √(that of the speed² + that of the circumference²)";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The wheel does not slip; speed and circumference are known independently of each other.",
    "The circumference has a standard uncertainty of 1.5 % from a marking, diameter or "
    "static radius and of 0.3 % from a roll-out, unless told otherwise.",
    "A roll-out is done with the driver aboard at road pressure.",
    "The dial is taken as true with the tyre the vehicle was built with; it may show more "
    "than the true speed, never less (UN R39, from memory).",
    "π × diameter is about 3 % too long for a radial, 2 × π × static radius about 1 % too "
    "short; they are here to compare figures.",
    "Not for matching an order closer than the uncertainty allows, about 3 % from a marking.",
});

}  // namespace

Description describeWheelFrequency() {
  return {.title = "How often a wheel shakes at a speed, and the speed for a shake",
          .method = "speed over rolling circumference, times the order or the final drive ratio",
          .source = "ETRTO and WdK factors as quoted; JCGM 100:2008 5.1.6",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields(), optionFields()),
          .outputs = outputFields(),
          .exampleInput = R"({"tyre_on": "225/75 R16", "built_with_tyre": "215/80 R15",
                              "speed_from": "dial", "speeds": ["70 km/h"],
                              "frequencies": ["11.2 Hz"], "speed_uncertainty": "1 km/h",
                              "final_drive": 3.7, "options": {"orders": 2}})",
          .exampleOutput = kExampleOutput};
}

}  // namespace sw::compute
