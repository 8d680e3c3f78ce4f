// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/bearing_friction.h"

#include <nlohmann/json.hpp>

#include "compute/bearings/bearings.h"
#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

Result<mechanics::BearingFrictionInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  mechanics::BearingFrictionInput input;
  input.load = reader.required<Force>("load", Sign::NotNegative);
  input.bore = reader.required<Length>("bore", Sign::Positive);
  input.factor = reader.number("friction_factor", kPositiveNumber).value_or(input.factor);
  input.startFactor =
      reader.number("start_factor", {.least = 1, .text = "1 or more"}).value_or(input.startFactor);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

constexpr std::string_view kFormula =
    "running torque = friction figure × load × bore ÷ 2\n"
    "starting torque = up to start factor × running torque\n"
    "friction figure about 0.0018 for taper rollers, start factor up to 2";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The bearing runs, oiled and without seals, at moderate load and speed.",
    "Seals and rods add drag of their own.",
    "Not for turning a pull into a preload: at standstill under a load along the axis the "
    "roller ends rub on the rib, and this form misses the true torque.",
    "A pull is compared with the target pull of the same arrangement, nothing else.",
});

}  // namespace

Description describeBearingFriction() {
  const FieldNotes always{.presence = Presence::Required};
  return {.title = "Friction torque of a running bearing",
          .method = "handbook form M = f F d / 2",
          .source = "machine design tables: f about 0.0018 for taper rollers, starting up to twice",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs =
              withEnvelope({quantityField("load", QuantityKind::Force, "on the bearing",
                                          {.presence = Presence::Required, .range = "0 or more"}),
                            quantityField("bore", QuantityKind::Length, "",
                                          {.presence = Presence::Required, .range = "more than 0"}),
                            {.name = "friction_factor",
                             .kind = "number",
                             .defaultValue = "0.0018",
                             .range = "more than 0",
                             .meaning = "of the bearing kind; the default is for taper rollers"},
                            {.name = "start_factor",
                             .kind = "number",
                             .defaultValue = "2",
                             .range = "1 or more",
                             .meaning = "starting over running, at most"}}),
          .outputs = {quantityField("running", QuantityKind::Torque, "without seals", always),
                      quantityField("starting_up_to", QuantityKind::Torque, "", always)},
          .exampleInput = R"({"load": "3.1 kN", "bore": "42 mm"})",
          .exampleOutput =
              R"({
  "result": {"running": "0.11718 N m", "starting_up_to": "0.23436 N m"},
  "notes": [
    {
      "code": "no_preload",
      "text": "A preload never follows from a pull: at standstill under axial load the )"
              R"(roller ends rub on the rib and this form misses the true torque. Compare pulls )"
              R"(with the target pull only."},
    {"code": "seals", "text": "Seals, rods and cold grease add more than the bearing."}],
  "method": {
    "name": "handbook form M = f F d / 2",
    "source": "machine design tables: f about 0.0018 for taper rollers, starting up to twice",
    "options": {}}})"};
}

Result<Outcome> runBearingFriction(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto friction = mechanics::bearingFriction(*input);
  if (!friction) return asInputError(friction.error());
  outcome.result = {{"running", quantityText(friction->running)},
                    {"starting_up_to", quantityText(friction->startingUpTo)}};
  outcome.notes.push_back(
      {"no_preload",
       "A preload never follows from a pull: at standstill under axial load the "
       "roller ends rub on the rib and this form misses the true torque. Compare "
       "pulls with the target pull only."});
  outcome.notes.push_back({"seals", "Seals, rods and cold grease add more than the bearing."});
  return outcome;
}

}  // namespace sw::compute
