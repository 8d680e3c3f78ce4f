// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/friction_fields.h"
#include "compute/bolts/torque_plausibility_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/torque_plausibility.h"

namespace sw::compute {

namespace {

using mechanics::FastenerDuty;
using mechanics::StrengthClass;
using mechanics::TorqueClaim;
using mechanics::TorquePlausibility;
using mechanics::TorqueVerdict;

struct PlausibilityInput {
  TorqueClaim claim;
  FrictionInput friction;
};

Result<PlausibilityInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  PlausibilityInput input;
  reader.requireKey("torque");
  const auto torque =
      reader.typed("torque", {.kind = QuantityKind::Torque, .sign = Sign::Positive});
  if (torque) input.claim.torque = *torque;
  const auto thread = requiredThread(reader, "thread");
  if (thread) input.claim.thread = *thread;
  const auto strength = reader.requiredChoice<StrengthClass>("strength_class");
  if (strength) input.claim.strengthClass = *strength;
  input.friction = frictionField(reader);
  input.claim.friction = input.friction.range.thread;
  input.claim.face = faceFields(reader);
  input.claim.duty = reader.choice<FastenerDuty>("duty").value_or(FastenerDuty::Joint);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Json readingsJson(const TorquePlausibility& judged) {
  Json list = Json::array();
  for (const auto& each : judged.readings) {
    list.push_back({{"torque", each.torque.text()},
                    {"as", wordOf(each.as)},
                    {"utilisation", plainNumber(each.utilisation)}});
  }
  return list;
}

Json resultJson(const TorqueClaim& claim, const TorquePlausibility& judged) {
  Json result = {{"verdict", wordOf(judged.verdict)}};
  if (judged.exemptFrom) result["exempt_from"] = wordOf(*judged.exemptFrom);
  result["torque"] = quantityText(claim.torque.as<Torque>());
  result["torque_as_typed"] = claim.torque.text();
  result["thread"] = claim.thread.name;
  Json cases = Json::array();
  const auto put = [&](double friction, double u) {
    cases.push_back({{"friction", plainNumber(friction)}, {"utilisation", plainNumber(u)}});
  };
  put(judged.friction.least, judged.atLeastFriction);
  put(judged.middleFriction, judged.atMiddleFriction);
  put(judged.friction.most, judged.atGreatestFriction);
  result["cases"] = std::move(cases);
  result["other_readings"] = readingsJson(judged);
  return result;
}

const char* explanation(TorqueVerdict verdict) {
  switch (verdict) {
    case TorqueVerdict::Impossible:
      return "This torque breaks or stretches such a bolt at any usual friction. Look at the "
             "figure, its unit, the thread and the class again.";
    case TorqueVerdict::Check:
      return "At usual friction the bolt would be stretched beyond yield. Look at the unit and at "
             "the condition the figure is meant for.";
    case TorqueVerdict::Note:
      return "With slippery threads the bolt would be stretched beyond yield: do not oil a figure "
             "meant for dry threads.";
    case TorqueVerdict::SuspiciouslyLow:
      return "So little hardly clamps such a bolt. Look at the figure and its unit again.";
    case TorqueVerdict::Exempt:
      return "The figure is unusual, which is meant for this duty. Take it from the vehicle's "
             "documentation.";
    case TorqueVerdict::Plausible:
      return "Plausible is not right: lbf ft taken for N m often passes. Compare with the "
             "documentation.";
  }
  return "";
}

void putNotes(const PlausibilityInput& input, const TorquePlausibility& judged,
              std::vector<Note>& notes) {
  notes.push_back({std::string(wordOf(judged.verdict)), explanation(judged.verdict)});
  if (!judged.readings.empty()) {
    notes.push_back({"other_readings",
                     "The other readings would fit this bolt. Nothing was corrected: the source "
                     "decides."});
  }
  noteThread(input.claim.thread, notes);
  noteClass(input.claim.thread, input.claim.strengthClass, notes);
  noteFriction(input.friction, notes);
  noteFace(judged.face.from, notes);
  notes.push_back(documentationNote());
}

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{
      quantityField("torque", QuantityKind::Torque, "as it stands in the source, with its unit",
                    {.presence = Presence::Required, .range = "more than 0"}),
      threadDescription(Presence::Required),
      strengthDescription(Presence::Required, "marking of the bolt")};
  for (auto& field : frictionDescription()) fields.push_back(std::move(field));
  for (auto& field : faceDescriptions()) fields.push_back(std::move(field));
  fields.push_back({.name = "duty",
                    .kind = "word",
                    .defaultValue = R"("joint")",
                    .range = "joint | angle_tightened | bearing | taper_joint",
                    .meaning = "angle-tightened bolts are exempt from all but impossible, bolts "
                               "that clamp a bearing or pull up a taper from suspiciously_low"});
  return withEnvelope(std::move(fields));
}

std::vector<FieldDescription> outputFields() {
  constexpr auto kAlways = Presence::Required;
  return {
      {.name = "verdict",
       .kind = "word",
       .presence = kAlways,
       .range = "plausible | note | check | impossible | suspiciously_low | exempt"},
      {.name = "exempt_from",
       .kind = "word",
       .range = "note | check | suspiciously_low",
       .meaning = "the verdict without the duty"},
      quantityField("torque", QuantityKind::Torque, "", {.presence = kAlways}),
      {.name = "torque_as_typed", .kind = "text", .presence = kAlways},
      {.name = "thread", .kind = "text", .presence = kAlways},
      {.name = "cases",
       .kind = "list of object",
       .presence = kAlways,
       .meaning = "at the least, the middle and the greatest friction judged",
       .fields = {{.name = "friction", .kind = "number"},
                  {.name = "utilisation",
                   .kind = "number",
                   .meaning = "stress / yield; above 1 it would yield"}}},
      {.name = "other_readings",
       .kind = "list of object",
       .presence = kAlways,
       .meaning = "what the figure could mean instead; never put in by itself",
       .fields = {{.name = "torque", .kind = "text"},
                  {.name = "as", .kind = "word", .range = "decimal_slip | other_unit"},
                  {.name = "utilisation", .kind = "number", .meaning = "at the middle friction"}}}};
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "verdict": "impossible",
    "torque": "480 N m",
    "torque_as_typed": "480 N m",
    "thread": "7/16-14 UNC",
    "cases": [
      {"friction": 0.08, "utilisation": 9.01465951572111},
      {"friction": 0.14, "utilisation": 6.13747334088795},
      {"friction": 0.24, "utilisation": 4.42407192401301}],
    "other_readings": [
      {"torque": "48 N m", "as": "decimal_slip", "utilisation": 0.613747334088795},
      {"torque": "480 lbf in", "as": "other_unit", "utilisation": 0.69344137608178},
      {"torque": "480 kgf cm", "as": "other_unit", "utilisation": 0.601880529384188}]},
  "notes": [
    {
      "code": "impossible",
      "text": "This torque breaks or stretches such a bolt at any usual friction. Look at )"
    R"(the figure, its unit, the thread and the class again."},
    {
      "code": "other_readings",
      "text": "The other readings would fit this bolt. Nothing was corrected: the source )"
    R"(decides."},
    {
      "code": "friction_assumed",
      "text": "Nothing was said about friction: from lightly oiled to dry, 0.08 to 0.24."},
    {
      "code": "face_assumed",
      "text": "The face under the head is not known; 1.3 times the thread diameter was )"
    R"(taken."},
    {"code": "documentation", "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "utilisation of yield over the range of friction",
    "source": "VDI 2230-1, ISO 898-1, SAE J429; bounds of the verdicts: common practice, )"
    R"(no source",
    "options": {}}})";

constexpr std::string_view kFormula =
    "clamp force = torque ÷ (pitch ÷ (2 × π) + 0.5774 × pitch diameter × friction + friction "
    "diameter ÷ 2 × friction)\n"
    "stress = clamp force ÷ stress area; twist = thread part of the torque ÷ (π ÷ 12 × D³), "
    "D the diameter of the stress area\n"
    "utilisation = √(stress² + 3 × twist²) ÷ yield strength, at three frictions: the least "
    "of the range, the middle (0.14 or the end nearest to it), the greatest (at least 0.24)\n"
    "impossible: above 1 even at the greatest; check: above 1 at the middle; note: above 1 "
    "only at the least\n"
    "suspiciously low: below 0.2 even at the least\n"
    "other readings: the same number in other units, and × 10, × 100, ÷ 10, ÷ 100, where the "
    "utilisation comes to 0.4 to 1.0 at the middle";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Thread and face have the same friction.",
    "The bounds of the verdicts are common practice, no source.",
    "It finds figures ten times too high or too low; lbf ft taken for N m, a factor of 1.36, "
    "it often does not find, so keep the unit as typed.",
    "Angle-tightened bolts are exempt from all but impossible, fasteners that clamp a "
    "bearing or pull up a taper from suspiciously low.",
    "Nothing is ever corrected by itself.",
    "Not as the source of a torque: plausible is not right.",
});

}  // namespace

Description describeTorquePlausibility() {
  return {.title = "Is a tightening torque believable for this bolt?",
          .method = "utilisation of yield over the range of friction",
          .source =
              "VDI 2230-1, ISO 898-1, SAE J429; bounds of the verdicts: common practice, no "
              "source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"torque": "480 N m", "thread": "7/16-14 UNC",
                              "strength_class": "grade_5"})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runTorquePlausibility(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto judged = mechanics::judgeTorque(input->claim);
  if (!judged) return asInputError(judged.error());
  outcome.result = resultJson(input->claim, *judged);
  putNotes(*input, *judged, outcome.notes);
  outcome.draw = [claim = input->claim, judged = *judged](figure::Size size) {
    return torquePlausibilityPicture(claim, judged, size);
  };
  return outcome;
}

}  // namespace sw::compute
