// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/friction_fields.h"

namespace sw::compute {

namespace {

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{
      threadDescription(Presence::Required),
      strengthDescription(Presence::Optional,
                          "marking of the bolt; needed without torque and clamp_force"),
      quantityField("torque", QuantityKind::Torque,
                    "tightening torque; with clamp_force too, the nut factor and the friction "
                    "follow",
                    {.range = "more than 0"}),
      quantityField("clamp_force", QuantityKind::Force, "force wanted in the joint",
                    {.range = "more than 0"}),
      {.name = "nut_factor",
       .kind = "number",
       .range = "above 0, below 2",
       .meaning = "K of torque = K x diameter x force; replaces friction"},
      {.name = "tightening_factor",
       .kind = "number",
       .range = "1 to 10",
       .meaning = "greatest force / least force of the way of tightening; 1.6 is usual with a "
                  "torque wrench"}};
  for (auto& field : frictionDescriptions()) fields.push_back(std::move(field));
  for (auto& field : faceDescriptions()) fields.push_back(std::move(field));
  return withEnvelope(std::move(fields),
                      {{.name = "torsion",
                        .kind = "word",
                        .defaultValue = R"("plastic")",
                        .range = "plastic | elastic",
                        .meaning = "VDI 2230 from 2001 on, or tables up to 1986"},
                       {.name = "formula",
                        .kind = "word",
                        .defaultValue = R"("linear")",
                        .range = "linear | exact",
                        .meaning = "of the thread torque"},
                       {.name = "utilisation",
                        .kind = "number",
                        .defaultValue = "0.9",
                        .range = "0.01 to 1",
                        .meaning = "of yield, for the greatest preload"}});
}

FieldDescription span(std::string_view name, QuantityKind kind, std::string_view meaning) {
  return {.name = name,
          .kind = "object",
          .meaning = meaning,
          .fields = {quantityField("min", kind, ""), quantityField("max", kind, "")}};
}

FieldDescription numberSpan(std::string_view name, std::string_view meaning) {
  return {.name = name, .kind = "object", .meaning = meaning, .fields = spanFields()};
}

FieldDescription number(std::string_view name, std::string_view meaning = {}) {
  return {.name = name, .kind = "number", .meaning = meaning};
}

FieldDescription casesField() {
  return {.name = "cases",
          .kind = "list of object",
          .meaning = "at the least and the greatest friction of the range",
          .fields = {number("thread_friction"), number("head_friction"), number("nut_factor"),
                     number("stretch_share", "part of the torque that stretches the bolt"),
                     number("thread_share", "part lost in the thread"),
                     number("head_share", "part lost under the turned part"),
                     number("undoing_share", "undoing torque / tightening torque"),
                     quantityField("clamp_force", QuantityKind::Force, ""),
                     quantityField("torque", QuantityKind::Torque, ""),
                     quantityField("undoing_torque", QuantityKind::Torque, "")}};
}

std::vector<FieldDescription> outputFields() {
  return {{.name = "thread", .kind = "text", .presence = Presence::Required},
          quantityField("friction_diameter", QuantityKind::Length,
                        "mean diameter of the face that rubs"),
          {.name = "friction_diameter_from",
           .kind = "word",
           .range = "given | standard_head | rule_of_thumb"},
          numberSpan("thread_friction", "as used"),
          numberSpan("head_friction", "as used"),
          numberSpan("nut_factor", "K"),
          number("implied_friction", "one friction for thread and face that fits torque and force"),
          span("clamp_force", QuantityKind::Force, "of the torque"),
          span("torque", QuantityKind::Torque, "for the clamp force"),
          casesField(),
          span("greatest_preload", QuantityKind::Force,
               "with the utilisation of the options; the next two likewise where a class is given"),
          quantityField("greatest_torque", QuantityKind::Torque,
                        "that keeps to it at any friction of the range"),
          quantityField("least_preload", QuantityKind::Force,
                        "greatest preload at the least friction / tightening factor"),
          numberSpan("utilisation", "stress / yield while tightening; above 1 it would yield")};
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "thread": "M14x1.5",
    "friction_diameter": "17.435 mm",
    "friction_diameter_from": "standard_head",
    "thread_friction": {"min": 0.08, "max": 0.16},
    "head_friction": {"min": 0.08, "max": 0.16},
    "nut_factor": {"min": 0.109840336866445, "max": 0.202628358401615},
    "clamp_force": {"min": "45826.3313139504 N", "max": "84538.2903095503 N"},
    "cases": [
      {
        "thread_friction": 0.08,
        "head_friction": 0.08,
        "nut_factor": 0.109840336866445,
        "stretch_share": 0.155246385961184,
        "thread_share": 0.391238201255121,
        "head_share": 0.453515412783695,
        "undoing_share": 0.689507228077632,
        "clamp_force": "84538.2903095503 N",
        "torque": "130 N m",
        "undoing_torque": "89.6359396500922 N m"},
      {
        "thread_friction": 0.16,
        "head_friction": 0.16,
        "nut_factor": 0.202628358401615,
        "stretch_share": 0.0841556209890245,
        "thread_share": 0.424163095036375,
        "head_share": 0.4916812839746,
        "undoing_share": 0.831688758021951,
        "clamp_force": "45826.3313139504 N",
        "torque": "130 N m",
        "undoing_torque": "108.119538542854 N m"}],
    "greatest_preload": {"min": "90548.7735577925 N", "max": "99550.2540756854 N"},
    "greatest_torque": "153.084868199388 N m",
    "least_preload": "58558.9729856973 N",
    "utilisation": {"min": 0.455485994586462, "max": 0.764281939659845}},
  "notes": [
    {
      "code": "face_assumed",
      "text": "A plain hexagon head on a usual clearance hole was taken; flange heads and )"
    R"(cone seats rub further out."},
    {
      "code": "friction_rules",
      "text": "Oil on a dry figure, or paste on an oiled one, raises the force by a third )"
    R"(and more. Undoing torque proves nothing about how tight a bolt was."},
    {
      "code": "documentation",
      "text": "A calculated torque does not replace the figure of the vehicle's )"
    R"(documentation."}],
  "method": {
    "name": "torque of the screw and of the face that rubs; reduced stress against yield",
    "source": "VDI 2230-1, ISO 898-1, SAE J429, ISO 4014, ISO 273",
    "options": {"torsion": "plastic", "formula": "linear", "utilisation": 0.9}}})";

constexpr std::string_view kFormula =
    "torque = clamp force × (pitch ÷ (2 × π) + 0.5774 × pitch diameter × thread friction + "
    "friction diameter ÷ 2 × head friction)\n"
    "friction diameter = (diameter of the face that rubs + diameter of the hole) ÷ 2\n"
    "undoing torque = the same with the pitch part taken off instead of added\n"
    "nut factor = torque ÷ (diameter × clamp force)\n"
    "stress = clamp force ÷ stress area; twist = thread part of the torque ÷ (π ÷ 12 × D³), "
    "D the diameter of the stress area\n"
    "utilisation = √(stress² + 3 × twist²) ÷ yield strength\n"
    "least preload = greatest preload ÷ tightening factor";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Friction is known to ±25 % at best, so answers are ranges; where nothing is said of it, "
    "0.08 to 0.24 is taken (our choice).",
    "One friction holds in the thread and one under the turned part; nothing else rubs and "
    "nothing bends. A self-locking nut adds its own drag.",
    "The head is a standard hexagon unless the face that rubs is given: flange heads, "
    "washers that turn along and the seats of wheel nuts need theirs.",
    "The thread has 60 degrees; the option elastic takes π ÷ 16 for π ÷ 12, the option exact "
    "the tangent of the thread angles.",
    "A utilisation above 1 would yield; no force follows from it any more.",
    "The nut factor is no coefficient of friction, and the undoing torque no proof of how "
    "tight a bolt was.",
    "Not for the lasting force (settling, temperature and load come off it), nor for "
    "angle-tightened bolts, waisted shanks or threads in soft metal.",
});

}  // namespace

Description describeClampForce() {
  return {.title = "Torque and clamp force of a bolt, and how much of its strength they use",
          .method = "torque of the screw and of the face that rubs; reduced stress against yield",
          .source = "VDI 2230-1, ISO 898-1, SAE J429, ISO 4014, ISO 273",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"thread": "M14x1.5", "strength_class": "10.9", "torque": "130 N m",
                              "friction_class": "B", "tightening_factor": 1.7})",
          .exampleOutput = kExampleOutput};
}

}  // namespace sw::compute
