// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/brake_torque_variation.h"

#include <nlohmann/json.hpp>

#include "compute/brakes/brake_torque_variation_picture.h"
#include "compute/brakes/brakes.h"
#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

constexpr int kMostOrder = 20;

struct VariationInput {
  mechanics::TorqueVariationInput brake;
  std::optional<Speed> speed;
  std::optional<Length> circumference;
  int order = 1;
};

Result<VariationInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  VariationInput input;
  input.brake.thicknessVariation =
      reader.required<Length>("thickness_variation", Sign::NotNegative);
  input.brake.stiffness = reader.required<Stiffness>("stiffness", Sign::Positive);
  input.brake.friction = reader.number("friction", kPositiveNumber).value_or(input.brake.friction);
  input.brake.effectiveRadius = reader.required<Length>("effective_radius", Sign::Positive);
  input.brake.pistonDiameter = reader.optional<Length>("piston_diameter", Sign::Positive);
  input.speed = reader.optional<Speed>("speed", Sign::Positive);
  input.circumference = reader.optional<Length>("rolling_circumference", Sign::Positive);
  input.order = reader.wholeNumber("order", 1, kMostOrder).value_or(input.order);
  if (input.speed) reader.requireKey("rolling_circumference");
  if (input.circumference) reader.requireKey("speed");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes required{.presence = Presence::Required, .range = "more than 0"};
  const FieldNotes positive{.range = "more than 0"};
  return withEnvelope(
      {quantityField("thickness_variation", QuantityKind::Length, "largest less smallest",
                     {.presence = Presence::Required, .range = "0 or more"}),
       quantityField("stiffness", QuantityKind::Stiffness,
                     "of caliper, pads and fluid along the axle at that pressure; not in books",
                     required),
       {.name = "friction",
        .kind = "number",
        .defaultValue = "0.4",
        .range = "more than 0",
        .meaning = "between pad and disc"},
       quantityField("effective_radius", QuantityKind::Length, "middle of the pads' track",
                     required),
       quantityField("piston_diameter", QuantityKind::Length, "for the pressure", positive),
       quantityField("speed", QuantityKind::Speed, "for the frequency", positive),
       quantityField("rolling_circumference", QuantityKind::Length,
                     "road of one wheel turn; needed with speed", positive),
       {.name = "order",
        .kind = "whole number",
        .defaultValue = "1",
        .range = "1 to 20",
        .meaning = "thick places a turn"}});
}

constexpr std::string_view kFormula =
    "force variation = stiffness of the caliper × thickness variation\n"
    "torque variation = 2 × friction × effective radius × force variation\n"
    "pressure variation = force variation ÷ (π ÷ 4 × piston diameter²)\n"
    "frequency = thick places a turn × road speed ÷ rolling circumference\n"
    "all variations from largest to smallest";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Caliper, pads and fluid act as one even spring, the friction is constant, and all goes "
    "slowly against the fluid.",
    "No published stiffness is known: that of a given caliper grows with the pressure, and "
    "10 to 30 kN/mm is a guess (common practice, no source).",
    "Use it to compare discs, not to set a limit.",
});

}  // namespace

Description describeBrakeTorqueVariation() {
  const FieldNotes always{.presence = Presence::Required};
  return {
      .title = "Brake torque from a disc of uneven thickness",
      .method = "spring of the caliper, friction on two faces",
      .source = "plane statics; no published stiffness is known",
      .formula = kFormula,
      .assumptions = kAssumptions,
      .inputs = inputFields(),
      .outputs = {quantityField("clamping_force", QuantityKind::Force, "peak to peak", always),
                  quantityField("torque", QuantityKind::Torque, "peak to peak, two faces", always),
                  quantityField("pressure", QuantityKind::Pressure, "peak to peak"),
                  quantityField("frequency", QuantityKind::Frequency,
                                "of that order at the speed")},
      .exampleInput = R"({"thickness_variation": "0.018 mm", "stiffness": "14 kN/mm",
                              "friction": 0.37, "effective_radius": "112 mm",
                              "piston_diameter": "48 mm", "speed": "85 km/h",
                              "rolling_circumference": "2190 mm", "order": 2})",
      .exampleOutput = R"({
  "result": {
    "clamping_force": "252 N", "torque": "20.88576 N m", "pressure": "1.39260575205408 bar",
    "frequency": "21.5626585489599 Hz"},
  "notes": [
    {
      "code": "stiffness_guessed",
      "text": "The stiffness of a caliper is in no book: 10 to 30 kN/mm is a guess. )"
                       R"(Compare with it, set no limit by it."},
    {
      "code": "tell_from_balance",
      "text": "Judder of this kind is there only with the brake on, and its frequency )"
                       R"(falls with road speed; unbalance is there without the brake."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "spring of the caliper, friction on two faces",
    "source": "plane statics; no published stiffness is known",
    "options": {}}})"};
}

Result<Outcome> runBrakeTorqueVariation(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto variation = mechanics::brakeTorqueVariation(input->brake);
  if (!variation) return asInputError(variation.error());
  outcome.result = {{"clamping_force", quantityText(variation->clampingForce)},
                    {"torque", quantityText(variation->torque)}};
  if (variation->pressure) outcome.result["pressure"] = quantityText(*variation->pressure);
  TorqueVariationShown shown{input->brake.thicknessVariation, input->order, *variation, {}};
  if (input->speed && input->circumference) {
    const auto frequency =
        mechanics::judderFrequency(*input->speed, *input->circumference, input->order);
    if (!frequency) return asInputError(frequency.error());
    outcome.result["frequency"] = quantityText(*frequency);
    shown.frequency = *frequency;
  }
  outcome.notes.push_back({"stiffness_guessed",
                           "The stiffness of a caliper is in no book: 10 to 30 kN/mm is a guess. "
                           "Compare with it, set no limit by it."});
  outcome.notes.push_back({"tell_from_balance",
                           "Judder of this kind is there only with the brake on, and its frequency "
                           "falls with road speed; unbalance is there without the brake."});
  outcome.notes.push_back(documentationNote());
  outcome.draw = [shown](figure::Size size) { return torqueVariationPicture(shown, size); };
  return outcome;
}

}  // namespace sw::compute
