// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/geometry/geometry.h"
#include "compute/geometry/lift_picture.h"
#include "compute/geometry/limit_reading.h"
#include "compute/output.h"
#include "mechanics/geometry/axle_lift.h"

namespace sw::compute {

namespace {

struct LiftInput {
  mechanics::AxleLift lift;
  std::optional<Angle> casterBefore;
  std::optional<Length> wedgeLength, wedgeRise;
};

Result<LiftInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  LiftInput input;
  input.lift.layout =
      reader.requiredChoice<mechanics::ArmLayout>("arms").value_or(input.lift.layout);
  input.lift.lift = reader.required<Length>("lift");
  const auto arm = reader.optional<Length>("arm_length", Sign::Positive);
  const auto pivot = reader.optional<Length>("pivot_height");
  if (input.lift.layout != mechanics::ArmLayout::Parallel) {
    reader.requireKey("arm_length");
    reader.requireKey("pivot_height");
  }
  input.lift.armLength = arm.value_or(input.lift.armLength);
  input.lift.pivotHeight = pivot.value_or(input.lift.pivotHeight);
  input.casterBefore = reader.optional<Angle>("caster_before");
  input.wedgeLength = reader.optional<Length>("wedge_length", Sign::Positive);
  input.wedgeRise = reader.optional<Length>("wedge_rise", Sign::NotNegative);
  if (input.wedgeRise) reader.requireKey("wedge_length");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Result<Angle> changeOf(const LiftInput& input) {
  // Equal links carry the axle up without turning it, whatever their length.
  if (input.lift.layout == mechanics::ArmLayout::Parallel) return Angle{};
  auto change = mechanics::casterChange(input.lift);
  if (!change) return asInputError(change.error());
  return change;
}

Result<void> putWedge(const LiftInput& input, Angle change, Json& result) {
  if (!input.wedgeLength) return {};
  const auto needed = mechanics::wedgeRise(change, *input.wedgeLength);
  if (!needed) return asInputError(needed.error().about("lift"));
  result["wedge_rise_to_undo"] = quantityText(*needed);
  if (!input.wedgeRise) return {};
  const auto angle = mechanics::wedgeAngle({*input.wedgeRise, *input.wedgeLength});
  if (!angle) return asInputError(angle.error());
  result["wedge_angle"] = quantityText(*angle);
  return {};
}

void noteLift(const LiftInput& input, std::vector<Note>& notes) {
  if (input.lift.layout == mechanics::ArmLayout::Parallel) {
    notes.push_back({"parallel_about_none",
                     "Four equal parallel links or leaf springs turn the "
                     "axle about not at all; unequal ones do."});
  }
  notes.push_back({"pinion_follows",
                   "Turning the axle back for caster turns a rear-facing pinion "
                   "nose down by as much: mind the angles of the shaft's "
                   "joints."});
  notes.push_back({"more_than_caster",
                   "A lift also moves the track rod, drag link, brake hoses, "
                   "shafts and stops, and may need an approval by local "
                   "rules."});
  notes.push_back(documentationNote());
}

std::vector<FieldDescription> inputFields() {
  return {{.name = "arms",
           .kind = "word",
           .presence = Presence::Required,
           .range = "leading | trailing | parallel",
           .meaning = "clamped to the axle with the pivot behind it (leading) or ahead of it "
                      "(trailing); parallel: four equal links or leaf springs"},
          quantityField("lift", QuantityKind::Length, "of the body, negative where it comes down",
                        {.presence = Presence::Required}),
          quantityField("arm_length", QuantityKind::Length,
                        "axle to pivot; required unless parallel", {.range = "more than 0"}),
          quantityField("pivot_height", QuantityKind::Length,
                        "of the pivot above the axle before the lift; required unless parallel",
                        {.range = "less than arm_length, either way"}),
          quantityField("caster_before", QuantityKind::Angle, "gives caster_after",
                        {.range = "-30 to 30 deg"}),
          quantityField("wedge_length", QuantityKind::Length,
                        "along the pad; gives the rise that undoes the change",
                        {.range = "more than 0"}),
          quantityField("wedge_rise", QuantityKind::Length,
                        "of a wedge to hand, thick end less thin end; gives its angle",
                        {.range = "0 to below wedge_length"})};
}

constexpr std::string_view kFormula =
    "turn of the axle = arcsin((pivot height + lift) ÷ arm length) − arcsin(pivot height ÷ "
    "arm length)\n"
    "pivot behind the axle (leading arm): caster falls by it; pivot ahead (trailing arm): "
    "caster rises by it; equal parallel links or leaf springs: about none\n"
    "angle of a wedge = arctan(rise ÷ length); rise that undoes a change = length × "
    "tan(change)";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The arms are clamped to the axle and turn with it; their pivot goes up with the body by "
    "the lift, the axle stays at its height.",
    "The pivot height is that of the pivot above the axle before the lift; bushes do not "
    "give.",
    "Turning the axle back for caster turns a rear-facing pinion nose down by the same "
    "angle, which the joints of its shaft feel.",
    "It says nothing about brake hoses, shafts, the height of the stops or whether a lift is "
    "permitted: the vehicle's documentation and local rules do.",
});

}  // namespace

Description describeLift() {
  return {
      .title = "What a lift does to the caster of a live axle",
      .method = "turn of the arm about its pivot; atan of rise over length for a wedge",
      .source = "plane geometry",
      .formula = kFormula,
      .assumptions = kAssumptions,
      .inputs = withEnvelope(inputFields()),
      .outputs = {quantityField("caster_change", QuantityKind::Angle, "negative: caster falls",
                                {.presence = Presence::Required}),
                  quantityField("pinion_nose_down", QuantityKind::Angle,
                                "turn of a rear-facing pinion, negative: nose up",
                                {.presence = Presence::Required}),
                  quantityField("caster_after", QuantityKind::Angle,
                                "where caster_before is given"),
                  quantityField("wedge_rise_to_undo", QuantityKind::Length,
                                "where wedge_length is given"),
                  quantityField("wedge_angle", QuantityKind::Angle, "where wedge_rise is given")},
      .exampleInput = R"({"arms": "leading", "lift": "40 mm", "arm_length": "760 mm",
                              "pivot_height": "65 mm", "caster_before": "2.5 deg",
                              "wedge_length": "75 mm", "wedge_rise": "4 mm"})",
      .exampleOutput = R"({
  "result": {
    "caster_change": "-3.03497479034902 deg",
    "pinion_nose_down": "-3.03497479034902 deg",
    "caster_after": "-0.534974790349023 deg",
    "wedge_rise_to_undo": "3.97649255753826 mm",
    "wedge_angle": "3.05288251479243 deg"},
  "notes": [
    {
      "code": "pinion_follows",
      "text": "Turning the axle back for caster turns a rear-facing pinion nose down by as)"
                       R"( much: mind the angles of the shaft's joints."},
    {
      "code": "more_than_caster",
      "text": "A lift also moves the track rod, drag link, brake hoses, shafts and stops, and)"
                       R"( may need an approval by local rules."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "turn of the arm about its pivot; atan of rise over length for a wedge",
    "source": "plane geometry",
    "options": {}}})"};
}

Result<Outcome> runLift(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto change = changeOf(*input);
  if (!change) return failAs(change);
  outcome.result["caster_change"] = quantityText(*change);
  outcome.result["pinion_nose_down"] = outcome.result["caster_change"];
  if (input->casterBefore) {
    const auto after = mechanics::casterAfter(*input->casterBefore, *change);
    if (!after) return asInputError(after.error());
    outcome.result["caster_after"] = quantityText(*after);
  }
  if (auto done = putWedge(*input, *change, outcome.result); !done) return failAs(done);
  noteLift(*input, outcome.notes);
  outcome.draw = [lift = input->lift, change = *change, before = input->casterBefore](
                     figure::Size size) { return liftPicture(lift, change, before, size); };
  return outcome;
}

}  // namespace sw::compute
