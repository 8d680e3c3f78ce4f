// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/rock_test.h"

#include <nlohmann/json.hpp>

#include "compute/bearings/bearings.h"
#include "compute/bearings/rock_test_picture.h"
#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

using mechanics::PlayState;
using mechanics::RockPart;
using mechanics::RockTest;

struct RockInput {
  mechanics::RockTestInput test;
  std::optional<mechanics::BearingFloat> bearing;
};

Result<RockInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  RockInput input;
  reader.requireKey("brake_on");
  input.test.brakeOn = reader.list<Length>("brake_on", Sign::NotNegative);
  reader.requireKey("brake_off");
  input.test.brakeOff = reader.list<Length>("brake_off", Sign::NotNegative);
  input.test.instrument = readGauge(reader, QuantityKind::Length);
  input.test.diameter = reader.required<Length>("diameter", Sign::Positive);
  input.test.noticeable =
      reader.optional<Length>("noticeable", Sign::Positive).value_or(input.test.noticeable);
  reader.inObject("bearing", [&](InputReader& inner) {
    mechanics::BearingFloat bearing;
    bearing.endFloat = inner.required<Length>("end_float", Sign::NotNegative);
    bearing.contactAngle = inner.required<Angle>("contact_angle", Sign::Positive);
    bearing.spread = inner.required<Length>("spread", Sign::Positive);
    input.bearing = bearing;
  });
  input.test.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes required{.presence = Presence::Required, .range = "more than 0"};
  return withEnvelope(
      {{.name = "brake_on",
        .kind = "list of length",
        .unit = "mm",
        .presence = Presence::Required,
        .range = "0 or more each; three or more to tell anything",
        .meaning = "whole travel at the rim, rocked top and bottom, brake held on"},
       {.name = "brake_off",
        .kind = "list of length",
        .unit = "mm",
        .presence = Presence::Required,
        .range = "0 or more each; three or more to tell anything",
        .meaning = "the same with the brake off"},
       gaugeField(QuantityKind::Length),
       quantityField("diameter", QuantityKind::Length, "on which the rock is read", required),
       quantityField("noticeable", QuantityKind::Length,
                     "play below this does not matter here (common practice, no source)",
                     {.range = "more than 0", .defaultValue = R"("0.5 mm")"}),
       {.name = "bearing",
        .kind = "object",
        .meaning = "for the rock to expect from a taper pair's end float",
        .fields =
            {quantityField("end_float", QuantityKind::Length, "",
                           {.presence = Presence::Required, .range = "0 or more"}),
             quantityField("contact_angle", QuantityKind::Angle, "",
                           {.presence = Presence::Required, .range = "more than 0, below 90 deg"}),
             quantityField("spread", QuantityKind::Length, "between the two bearings", required)}}},
      {confidenceField()});
}

FieldDescription partField(std::string_view name, std::string_view meaning) {
  return {.name = name,
          .kind = "object",
          .presence = Presence::Required,
          .meaning = meaning,
          .fields = {judgedField("rock", QuantityKind::Length, "against its floor"),
                     quantityField("floor", QuantityKind::Length,
                                   "most a roadworthiness inspection lets pass",
                                   {.presence = Presence::Required}),
                     {.name = "state",
                      .kind = "word",
                      .presence = Presence::Required,
                      .range = "found | none_noticeable | cannot_tell"}}};
}

Json partJson(const RockPart& part) {
  return {{"rock", judgedJson(part.rock)},
          {"floor", quantityText(part.floor)},
          {"state", word(part.state)}};
}

void noteStates(const RockTest& test, std::vector<Note>& notes) {
  if (!test.repeated) {
    notes.push_back({"not_repeated",
                     "One reading shows no scatter: rock three times or more "
                     "each way before blaming a part."});
  }
  if (test.reversed) {
    notes.push_back({"reversed",
                     "Less rock with the brake off cannot be: the readings are "
                     "swapped, or the brake did not hold."});
  }
  if (test.bearing.state == PlayState::Found) {
    notes.push_back({"bearing_play",
                     "The increase is the wheel bearing: set it by its kind, then "
                     "rock again."});
  }
  if (test.swivel.state == PlayState::Found) {
    notes.push_back({"swivel_play",
                     "What is left with the brake on is swivel or suspension: "
                     "watch where it moves, then rock 3 and 9 for the rods."});
  }
  const bool cannotTell =
      test.repeated && !test.reversed &&
      (test.bearing.state == PlayState::CannotTell || test.swivel.state == PlayState::CannotTell);
  if (cannotTell) {
    notes.push_back({"cannot_tell",
                     "The readings do not part the two: rock more often, with a "
                     "dial gauge and the same effort."});
  }
  notes.push_back({"floor_only",
                   "The floors are those of roadworthiness, far too loose to cure "
                   "shimmy: within them is not good."});
}

constexpr std::string_view kExampleInput = R"({
  "brake_on": ["0.35 mm", "0.40 mm", "0.35 mm", "0.45 mm"],
  "brake_off": ["1.60 mm", "1.55 mm", "1.65 mm", "1.60 mm"],
  "instrument": {"graduation": "0.05 mm"},
  "diameter": "430 mm",
  "noticeable": "0.6 mm",
  "bearing": {"end_float": "0.25 mm", "contact_angle": "17 deg", "spread": "48 mm"}
})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "swivel": {
      "rock": {
        "value": "0.3875 mm", "standard_uncertainty": "0.0314576434802948 mm",
        "degrees_of_freedom": 8.9504132231405, "coverage_factor": 2.26406903749232,
        "expanded_uncertainty": "0.0712222765962075 mm", "verdict": "within", "side": "none",
        "conformance_probability": 1},
      "floor": "8.6 mm", "state": "none_noticeable"},
    "bearing": {
      "rock": {
        "value": "1.2125 mm", "standard_uncertainty": "0.0426956281914983 mm",
        "degrees_of_freedom": 19.8648648648649, "coverage_factor": 2.08687351802294,
        "expanded_uncertainty": "0.0891003758081917 mm", "verdict": "within", "side": "none",
        "conformance_probability": 1},
      "floor": "3.175 mm", "state": "found"},
    "expected_rock": "0.684709338683458 mm"},
  "notes": [
    {
      "code": "bearing_play",
      "text": "The increase is the wheel bearing: set it by its kind, then rock again."},
    {
      "code": "floor_only",
      "text": "The floors are those of roadworthiness, far too loose to cure shimmy: )"
                                            R"(within them is not good."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "difference of two series, one-sided intervals, floors in proportion",
    "source": "British inspection guides; COMAR 11.22.03.04; JCGM 100:2008; JCGM 106:2012",
    "options": {"confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "swivel = mean rock with the brake on\n"
    "wheel bearing = mean rock with the brake off − mean rock with the brake on\n"
    "none noticeable: the upper end of its interval lies below what is noticeable; found: "
    "the lower end lies above 0; else it cannot be told\n"
    "floors: swivel 10 mm × diameter ÷ 500 mm; wheel bearing 3.2 mm (1/8 in)\n"
    "rock to expect of a taper pair = 2 × end float × tan(contact angle) × (diameter ÷ 2) ÷ "
    "spread of the bearings";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The wheel is rocked top and bottom by the same hands, at the same place, with the same "
    "effort; the rock is the whole travel.",
    "The brake holds hub and carrier together.",
    "Scatter shows only in repetition: one reading each way gives values and no state.",
    "The rock to expect is simplified (own formula): each bearing gives the same either way.",
    "The floors are those of roadworthiness, far too loose to cure shimmy.",
    "Not where the brake itself has play: drums, or pads that move in their carrier, add "
    "theirs with the brake on.",
});

}  // namespace

Description describeRockTest() {
  return {.title = "Wheel bearing or swivel? Rock with the brake on and off",
          .method = "difference of two series, one-sided intervals, floors in proportion",
          .source = "British inspection guides; COMAR 11.22.03.04; JCGM 100:2008; JCGM 106:2012",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = {partField("swivel", "brake on: swivel or suspension"),
                      partField("bearing", "the increase with the brake off: wheel bearing"),
                      quantityField("expected_rock", QuantityKind::Length,
                                    "of the end float given, on that diameter; simplified")},
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runRockTest(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto test = mechanics::rockTest(input->test);
  if (!test) return asInputError(test.error());
  outcome.result = {{"swivel", partJson(test->swivel)}, {"bearing", partJson(test->bearing)}};
  std::optional<Length> expected;
  if (input->bearing) {
    const auto rock = mechanics::rockFromFloat(*input->bearing, input->test.diameter / 2);
    if (!rock) return asInputError(rock.error());
    outcome.result["expected_rock"] = quantityText(*rock);
    expected = *rock;
  }
  noteStates(*test, outcome.notes);
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->test.confidence);
  outcome.draw = [input = input->test, test = *test, expected](figure::Size size) {
    return rockTestPicture(input, test, expected, size);
  };
  return outcome;
}

}  // namespace sw::compute
