// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/unbalance_fields.h"

#include "compute/geometry/limit_reading.h"
#include "compute/wheels/tyre_reading.h"
#include "compute/wheels/vector_reading.h"

namespace sw::compute {

namespace {

constexpr FieldNotes kAlways{.presence = Presence::Required};

FieldDescription word(std::string_view name, std::string_view range, std::string_view meaning) {
  return {.name = name,
          .kind = "word",
          .presence = Presence::Required,
          .range = range,
          .meaning = meaning};
}

FieldDescription planeField(std::string_view name) {
  FieldDescription field = weightField(name, "what the weights in this plane come to",
                                       Presence::Required, Sign::NotNegative);
  field.fields.push_back(quantityField("unbalance", QuantityKind::Unbalance, "of it", kAlways));
  field.fields.push_back(
      word("verdict", "within | outside | undecided | no_limit", "against limit_each_plane"));
  return field;
}

FieldDescription gradeField() {
  return {.name = "grade",
          .kind = "object",
          .meaning = "for information, where wheel_mass is given",
          .fields = {{.name = "reached",
                      .kind = "number",
                      .presence = Presence::Required,
                      .meaning = "of the static unbalance, mm/s"},
                     {.name = "asked",
                      .kind = "number",
                      .presence = Presence::Required,
                      .meaning = "the option grade, mm/s"},
                     quantityField("eccentricity", QuantityKind::Length, "it allows", kAlways),
                     quantityField("unbalance", QuantityKind::Unbalance, "it allows", kAlways),
                     gramsField("at_radius", "it allows, both planes together", kAlways),
                     gramsField("each_plane", "half of it", kAlways)}};
}

}  // namespace

std::vector<FieldDescription> unbalanceInputFields() {
  std::vector<FieldDescription> fields{
      {.name = "weights",
       .kind = "list of object",
       .presence = Presence::Required,
       .range = "at most 100",
       .meaning = "weights that are too much, or the readings of a balancing machine",
       .fields = {word("plane", "inner | outer", "edge of the rim"),
                  gramsField("amount", "mass",
                             {.presence = Presence::Required, .range = "0 or more"}),
                  quantityField("angle", QuantityKind::Angle, "from a mark on the wheel",
                                kAlways)}},
      quantityField("weight_radius", QuantityKind::Length,
                    "from the axis to the weights, about that of the rim: measure it",
                    {.presence = Presence::Required, .range = "more than 0"}),
      quantityField("plane_spacing", QuantityKind::Length, "between the two edges",
                    {.presence = Presence::Required, .range = "0 or more"}),
      quantityField("speed", QuantityKind::Speed, "of the vehicle",
                    {.presence = Presence::Required, .range = "0 or more"})};
  for (auto& field : rollingFields()) fields.push_back(std::move(field));
  fields.push_back(quantityField("lever", QuantityKind::Length,
                                 "of the force about the swivel axis, to compare with the couple",
                                 {.range = "0 or more"}));
  fields.push_back(
      gramsField("limit_each_plane", "what a plane may keep", {.range = "more than 0"}));
  fields.push_back(gramsField("weight_uncertainty", "standard uncertainty of a plane's amount",
                              {.range = "0 or more", .defaultValue = R"("0 g")"}));
  fields.push_back(quantityField("wheel_mass", QuantityKind::Mass, "of wheel and tyre, for a grade",
                                 {.range = "more than 0"}));
  return fields;
}

std::vector<FieldDescription> unbalanceOptionFields() {
  std::vector<FieldDescription> fields = rollingOptionFields();
  fields.push_back({.name = "grade",
                    .kind = "number",
                    .defaultValue = "40",
                    .range = "more than 0",
                    .meaning = "mm/s; 40 is the class of car wheels in ISO 21940-11"});
  fields.push_back(confidenceField());
  return fields;
}

std::vector<FieldDescription> unbalanceOutputFields() {
  return {quantityField("wheel_frequency", QuantityKind::Frequency, "turns of the wheel", kAlways),
          planeField("inner"),
          planeField("outer"),
          {.name = "static_unbalance",
           .kind = "object",
           .presence = Presence::Required,
           .meaning = "sum of both planes, all that a bubble balance shows",
           .fields = {quantityField("unbalance", QuantityKind::Unbalance, "of it", kAlways),
                      quantityField("angle", QuantityKind::Angle, "of it", kAlways)}},
          quantityField("force", QuantityKind::Force, "of the static unbalance, turning", kAlways),
          quantityField("couple", QuantityKind::Torque,
                        "of the difference between the planes, about the middle, turning", kAlways),
          quantityField("couple_angle", QuantityKind::Angle, "of the outer plane's share", kAlways),
          quantityField("moment_of_force", QuantityKind::Torque, "force times lever"),
          gradeField()};
}

}  // namespace sw::compute
