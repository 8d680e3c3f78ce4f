// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/swivel.h"

#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/output.h"
#include "compute/swivel/starting_force_picture.h"
#include "mechanics/swivel/starting_force.h"

namespace sw::compute {

namespace {

struct StartingForceInput {
  StartingPull pull;
  bool hasForce = false;
  std::optional<Torque> target;
  double confidence = 0.95;
};

constexpr QuantitySpec notNegative(QuantityKind kind) {
  return {.kind = kind, .sign = Sign::NotNegative};
}

void readPull(InputReader& reader, StartingForceInput& input) {
  StartingPull& pull = input.pull;
  const auto force = reader.quantity("force", notNegative(QuantityKind::Force));
  input.hasForce = force.has_value();
  pull.force = Force::fromSi(force.value_or(0.0));
  pull.arm = Length::fromSi(
      reader.requiredQuantity("arm", {.kind = QuantityKind::Length, .sign = Sign::Positive}));
  pull.offSquare =
      Angle::fromSi(reader.quantity("off_square", {.kind = QuantityKind::Angle}).value_or(0.0));
  pull.forceUncertainty = Force::fromSi(
      reader.quantity("force_uncertainty", notNegative(QuantityKind::Force)).value_or(0.0));
  pull.armUncertainty = Length::fromSi(
      reader.quantity("arm_uncertainty", notNegative(QuantityKind::Length)).value_or(0.0));
  pull.offSquareUncertainty = Angle::fromSi(
      reader.quantity("off_square_uncertainty", notNegative(QuantityKind::Angle)).value_or(0.0));
  pull.offSquareWithin = Angle::fromSi(
      reader.quantity("off_square_within", notNegative(QuantityKind::Angle)).value_or(0.0));
  pull.degreesOfFreedom = reader.degreesOfFreedom("degrees_of_freedom");
}

Result<StartingForceInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  StartingForceInput input;
  readPull(reader, input);
  const auto target = reader.quantity("target_torque", notNegative(QuantityKind::Torque));
  if (target) input.target = Torque::fromSi(*target);
  if (!target) reader.requireKey("force");
  reader.inObject("options", [&](InputReader& inner) {
    input.confidence = inner
                           .number("confidence", {.least = 0,
                                                  .most = 1,
                                                  .ends = Ends::Excluded,
                                                  .text = "between 0 and 1, not either"})
                           .value_or(input.confidence);
  });
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

void putTorque(const SwivelTorque& torque, Json& result) {
  result["square_force"] = quantityText(torque.squareForce.si(), QuantityKind::Force);
  result["torque"] = quantityText(torque.torque.si(), QuantityKind::Torque);
  result["standard_uncertainty"] =
      quantityText(torque.standardUncertainty.si(), QuantityKind::Torque);
  result["degrees_of_freedom"] = degreesOfFreedomJson(torque.degreesOfFreedom);
  result["coverage_factor"] = plainNumber(torque.coverageFactor);
  result["expanded_uncertainty"] =
      quantityText(torque.expandedUncertainty.si(), QuantityKind::Torque);
}

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{
      {.name = "force",
       .kind = "force",
       .unit = "N",
       .range = "0 or more",
       .meaning = "pull at first movement; required unless target_torque is given"},
      {.name = "arm",
       .kind = "length",
       .unit = "mm",
       .presence = Presence::Required,
       .range = "more than 0",
       .meaning = "from the swivel axis to where the scale is hooked in"},
      {.name = "off_square",
       .kind = "angle",
       .unit = "deg",
       .defaultValue = R"("0 deg")",
       .range = "-90 to 90 deg, not either",
       .meaning = "measured deviation from square"},
      {.name = "force_uncertainty",
       .kind = "force",
       .unit = "N",
       .defaultValue = R"("0 N")",
       .range = "0 or more",
       .meaning = "standard uncertainty of the force"},
      {.name = "degrees_of_freedom",
       .kind = "number or infinity",
       .defaultValue = R"("infinity")",
       .range = "more than 0",
       .meaning = "of force_uncertainty"},
      {.name = "arm_uncertainty",
       .kind = "length",
       .unit = "mm",
       .defaultValue = R"("0 mm")",
       .range = "0 or more",
       .meaning = "standard uncertainty of the arm"},
      {.name = "off_square_uncertainty",
       .kind = "angle",
       .unit = "deg",
       .defaultValue = R"("0 deg")",
       .range = "0 or more",
       .meaning = "standard uncertainty of the measured deviation"},
      {.name = "off_square_within",
       .kind = "angle",
       .unit = "deg",
       .defaultValue = R"("0 deg")",
       .range = "0 to below 90 deg",
       .meaning = "unknown deviation up to this, either way, about the measured one"},
      {.name = "target_torque",
       .kind = "torque",
       .unit = "N m",
       .range = "0 or more",
       .meaning = "a torque wanted at the swivel"}};
  for (auto& field : envelopeFields({{.name = "confidence",
                     .kind = "number",
                     .defaultValue = "0.95",
                     .range = "between 0 and 1, not either",
                     .meaning = "of the expanded uncertainty"}})) {
    fields.push_back(std::move(field));
  }
  return fields;
}

FieldDescription withForce(std::string_view name, std::string_view kind, std::string_view unit,
                           std::string_view meaning) {
  return {.name = name, .kind = kind, .unit = unit, .meaning = meaning};
}

std::vector<FieldDescription> outputFields() {
  return {withForce("square_force", "force", "N",
                    "the force that, pulled square, gives the same torque; this and the next five "
                    "where a force is given"),
          withForce("torque", "torque", "N m", "about the swivel axis"),
          withForce("standard_uncertainty", "torque", "N m", "of the torque"),
          withForce("degrees_of_freedom", "number or infinity", "", "effective"),
          withForce("coverage_factor", "number", "", "k"),
          withForce("expanded_uncertainty", "torque", "N m", "k times the standard uncertainty"),
          withForce("pull_for_target", "force", "N",
                    "the pull that target_torque needs at this arm and deviation")};
}

constexpr std::string_view kFormula =
    "square force = force × cos(angle off square)\n"
    "torque = square force × arm\n"
    "pull for a torque = torque ÷ (arm × cos(angle off square))\n"
    "where the angle is only known to within ±w: square force × sin(w) ÷ w, w in radians\n"
    "uncertainty of the torque = √(F² + L² + A²): F = arm × cos(angle) × uncertainty of the "
    "force, L = force × cos(angle) × uncertainty of the arm, A = force × arm × sin(angle) × "
    "uncertainty of the angle in radians";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The arm is measured from the swivel axis to the point that is pulled.",
    "The pull lies in the plane in which the arm swings and does not load the bearing along "
    "its axis.",
    "Force, arm and angle are known independently of each other.",
    "A pull off square always reads high: by 1.5 % at 10 degrees, by 6.4 % at 20; a quarter "
    "turn is refused.",
    "Not for working out a bearing preload: at standstill the torque does not follow the "
    "friction figures of handbooks, so compare a pull with the target pull only.",
});

}  // namespace

Description describeStartingForce() {
  return {.title = "Swivel torque from the starting pull",
          .method = "moment of the square part of the pull about the swivel axis",
          .source = "plane statics; JCGM 100:2008 5.1",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"force": "32 N", "arm": "165 mm", "off_square": "12 deg",
                              "force_uncertainty": "0.6 N", "degrees_of_freedom": 7,
                              "arm_uncertainty": "1 mm", "target_torque": "4.5 N m"})",
          .exampleOutput = R"({
  "result": {
    "square_force": "31.3007232234818 N",
    "torque": "5.16461933187449 N m",
    "standard_uncertainty": "0.101769665369847 N m",
    "degrees_of_freedom": 8.53911911418412,
    "coverage_factor": 2.28090632240887,
    "expanded_uncertainty": "0.232127073171518 N m",
    "pull_for_target": "27.8820162235917 N"},
  "notes": [{
    "code": "no_preload",
    "text": "A bearing preload does not follow from a pull: compare it with the target."}],
  "method": {
    "name": "moment of the square part of the pull about the swivel axis",
    "source": "plane statics; JCGM 100:2008 5.1",
    "options": {"confidence": 0.95}}
})"};
}

Result<Outcome> runStartingForce(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  StartingForceShown shown{.pull = input->pull, .torque = {}, .forTarget = {}, .target = {}};
  if (input->hasForce) {
    const auto torque = swivelTorque(input->pull, input->confidence);
    if (!torque) return asInputError(torque.error());
    putTorque(*torque, outcome.result);
    shown.torque = *torque;
  }
  if (input->target) {
    const auto pull = forceForTorque(*input->target, input->pull.arm, input->pull.offSquare);
    if (!pull) return asInputError(pull.error());
    outcome.result["pull_for_target"] = quantityText(pull->si(), QuantityKind::Force);
    shown.forTarget = *pull;
    shown.target = *input->target;
  }
  outcome.notes.push_back(
      {"no_preload", "A bearing preload does not follow from a pull: compare it with the target."});
  outcome.options = {{"confidence", plainNumber(input->confidence)}};
  outcome.draw = [shown](figure::Size size) { return startingForcePicture(shown, size); };
  return outcome;
}

}  // namespace sw::compute
