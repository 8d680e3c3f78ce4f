// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/bearing_stiffness.h"

#include <nlohmann/json.hpp>

#include "compute/bearings/bearing_stiffness_picture.h"
#include "compute/bearings/bearings.h"
#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

constexpr int kMostRollers = 200;

struct StiffnessInput {
  mechanics::TaperBearing bearing;
  std::optional<Force> load;
  std::optional<Length> displacement;
};

Result<StiffnessInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  StiffnessInput input;
  reader.requireKey("rollers");
  input.bearing.rollers = reader.wholeNumber("rollers", 3, kMostRollers).value_or(0);
  input.bearing.contactAngle = reader.required<Angle>("contact_angle", Sign::Positive);
  input.bearing.rollerLength = reader.required<Length>("roller_length", Sign::Positive);
  input.load = reader.optional<Force>("load", Sign::NotNegative);
  input.displacement = reader.optional<Length>("displacement", Sign::NotNegative);
  if (!input.displacement) reader.requireKey("load");
  if (input.load && input.displacement) reader.fail(oneOfTwo("load", "displacement"));
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  return withEnvelope(
      {{.name = "rollers",
        .kind = "whole number",
        .presence = Presence::Required,
        .range = "3 to 200"},
       quantityField("contact_angle", QuantityKind::Angle, "of the cup, from the axis",
                     {.presence = Presence::Required, .range = "more than 0, below 90 deg"}),
       quantityField("roller_length", QuantityKind::Length, "in contact",
                     {.presence = Presence::Required, .range = "more than 0"}),
       quantityField("load", QuantityKind::Force, "along the axis; this or displacement",
                     {.range = "0 or more"}),
       quantityField("displacement", QuantityKind::Length, "along the axis",
                     {.range = "0 or more"})});
}

constexpr std::string_view kFormula =
    "load of one roller Q = load along the axis ÷ (number of rollers × sin(contact angle))\n"
    "displacement = 0.0000768 × Q^0.9 ÷ (sin(contact angle) × roller length^0.8), in newtons "
    "and millimetres\n"
    "slope = load along the axis ÷ (0.9 × displacement)\n"
    "opposed pair: slope for the thickness of a shim = slope ÷ 2";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "All rollers, three or more, share the load alike, and both contacts of a roller are "
    "alike.",
    "The raceways are rigid but for the contact.",
    "An opposed pair sits in a rigid housing, where a shim brings each bearing half of its "
    "thickness.",
    "The formula itself is good to some 10 % (from memory).",
    "Not as the slope of a hub: castings and pins are far softer and begin with float and a "
    "knee, so learn the slope from this axle's own pulls.",
});

}  // namespace

Description describeBearingStiffness() {
  const FieldNotes always{.presence = Presence::Required};
  return {.title = "How far a taper bearing gives along its axis",
          .method = "F = K d^(10/9): line contact of steel, load shared alike",
          .source = "from memory of Palmgren and of Harris, Rolling Bearing Analysis",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = {quantityField("load", QuantityKind::Force, "", always),
                      quantityField("displacement", QuantityKind::Length, "", always),
                      quantityField("slope", QuantityKind::Stiffness,
                                    "of load over displacement, here", always),
                      quantityField("shim_slope", QuantityKind::Stiffness,
                                    "preload a thickness of shim, for an opposed pair of these in "
                                    "a rigid housing",
                                    always)},
          .exampleInput = R"({"rollers": 21, "contact_angle": "13 deg", "roller_length": "15 mm",
                              "load": "1.6 kN"})",
          .exampleOutput =
              R"({
  "result": {
    "load": "1600 N", "displacement": "0.00739999743403367 mm",
    "slope": "240240.323544103 N/mm", "shim_slope": "120120.161772051 N/mm"},
  "notes": [
    {
      "code": "rigid_housing",
      "text": "Castings and pins are far softer and begin with float and a knee: this is )"
              R"(how coarse a shim step can be at worst, not the slope of a hub. Learn that from )"
              R"(this axle's own pulls."}],
  "method": {
    "name": "F = K d^(10/9): line contact of steel, load shared alike",
    "source" : "from memory of Palmgren and of Harris, Rolling Bearing Analysis", "options" : {}
  }
})"};
}

Result<Outcome> runBearingStiffness(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto state =
      input->displacement
          ? mechanics::axialLoad(input->bearing, *input->displacement)
          : mechanics::axialDisplacement(input->bearing, input->load.value_or(Force{}));
  if (!state) return asInputError(state.error());
  outcome.result = {{"load", quantityText(state->load)},
                    {"displacement", quantityText(state->displacement)},
                    {"slope", quantityText(state->slope)},
                    {"shim_slope", quantityText(state->shimSlope)}};
  outcome.notes.push_back(
      {"rigid_housing",
       "Castings and pins are far softer and begin with float and a knee: this "
       "is how coarse a shim step can be at worst, not the slope of a hub. Learn "
       "that from this axle's own pulls."});
  outcome.draw = [bearing = input->bearing, state = *state](figure::Size size) {
    return bearingStiffnessPicture(bearing, state, size);
  };
  return outcome;
}

}  // namespace sw::compute
