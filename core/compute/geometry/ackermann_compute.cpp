// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/geometry/ackermann_picture.h"
#include "compute/geometry/geometry.h"
#include "compute/geometry/limit_reading.h"
#include "compute/output.h"
#include "mechanics/geometry/ackermann.h"

namespace sw::compute {

namespace {

struct AckermannInput {
  mechanics::SteeredAxle axle;
  std::optional<Angle> outer, inner, measuredInner;
};

Result<AckermannInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  AckermannInput input;
  input.axle.kingpinSpacing = reader.required<Length>("kingpin_spacing", Sign::Positive);
  input.axle.wheelbase = reader.required<Length>("wheelbase", Sign::Positive);
  input.outer = reader.optional<Angle>("outer", Sign::NotNegative);
  input.inner = reader.optional<Angle>("inner", Sign::NotNegative);
  input.measuredInner = reader.optional<Angle>("measured_inner", Sign::NotNegative);
  requireOneOf(reader, {"outer", "inner"});
  if (input.measuredInner) reader.requireKey("outer");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes positive{.presence = Presence::Required, .range = "more than 0"};
  return {quantityField("kingpin_spacing", QuantityKind::Length,
                        "between the swivel axes at the ground", positive),
          quantityField("wheelbase", QuantityKind::Length, "axle to axle", positive),
          quantityField("outer", QuantityKind::Angle,
                        "steer angle of the outer wheel; this or inner is required",
                        {.range = "0 to below 90 deg"}),
          quantityField("inner", QuantityKind::Angle, "steer angle of the inner wheel",
                        {.range = "0 to below 90 deg"}),
          quantityField("measured_inner", QuantityKind::Angle,
                        "as read with the outer wheel at outer", {.range = "0 to below 90 deg"})};
}

constexpr std::string_view kFormula =
    "1 ÷ tan(outer angle) − 1 ÷ tan(inner angle) = distance of the kingpins at the ground ÷ "
    "wheelbase\n"
    "toe-out on the turn = inner angle − outer angle\n"
    "deviation = measured inner angle − inner angle of the formula";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "No slip, low speed, rear wheels straight.",
    "Straight ahead both angles are 0; an outer angle that would take the inner one to 90 "
    "degrees is refused.",
    "Not for judging a steering: vehicles are built away from it on purpose, and the angle "
    "that counts is in the vehicle's documentation.",
});

}  // namespace

Description describeAckermann() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {.title = "Steer angles of inner and outer wheel on a bend",
          .method = "both front wheels roll about one point on the line of the rear axle",
          .source = "Ackermann's condition, any textbook",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields()),
          .outputs = {quantityField("outer", QuantityKind::Angle, "outer wheel", kAlways),
                      quantityField("inner", QuantityKind::Angle, "inner wheel", kAlways),
                      quantityField("toe_out_on_turn", QuantityKind::Angle, "inner less outer",
                                    kAlways),
                      quantityField("deviation", QuantityKind::Angle,
                                    "measured_inner less inner, where it is given")},
          .exampleInput = R"({"kingpin_spacing": "1220 mm", "wheelbase": "2.36 m",
                              "outer": "18 deg", "measured_inner": "20.5 deg"})",
          .exampleOutput =
              R"({
  "result": {
    "outer": "18 deg",
    "inner": "21.3312902029147 deg",
    "toe_out_on_turn": "3.33129020291474 deg",
    "deviation": "-0.831290202914743 deg"},
  "notes": [
    {
      "code": "built_away_from_it",
      "text": "Vehicles are built away from this on purpose. What shows a bent arm is a)"
              R"( difference between left and right bends, or from the documentation."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "both front wheels roll about one point on the line of the rear axle",
    "source": "Ackermann's condition, any textbook",
    "options": {}}})"};
}

Result<Outcome> runAckermann(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto other = input->outer
                         ? mechanics::innerAngle(input->axle, *input->outer)
                         : mechanics::outerAngle(input->axle, input->inner.value_or(Angle{}));
  if (!other) return asInputError(other.error());
  const Angle outer = input->outer.value_or(*other);
  const Angle inner = input->outer ? *other : input->inner.value_or(Angle{});
  outcome.result = {{"outer", quantityText(outer)},
                    {"inner", quantityText(inner)},
                    {"toe_out_on_turn", quantityText(inner - outer)}};
  if (input->measuredInner) {
    const auto deviation = mechanics::innerDeviation(input->axle, outer, *input->measuredInner);
    if (!deviation) return asInputError(deviation.error());
    outcome.result["deviation"] = quantityText(*deviation);
  }
  outcome.notes.push_back({"built_away_from_it",
                           "Vehicles are built away from this on purpose. What shows a bent arm is "
                           "a difference between left and right bends, or from the "
                           "documentation."});
  outcome.notes.push_back(documentationNote());
  outcome.draw = [drawing = AckermannDrawing{input->axle, outer, inner, input->measuredInner}](
                     figure::Size size) { return ackermannPicture(drawing, size); };
  return outcome;
}

}  // namespace sw::compute
