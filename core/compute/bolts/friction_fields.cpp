// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/friction_fields.h"

#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/output.h"

namespace sw::compute {

namespace {

using mechanics::FrictionClass;
using mechanics::FrictionDiameterFrom;
using mechanics::FrictionRange;

constexpr NumberRange kCoefficient{.least = 0, .most = 1, .text = "more than 0, up to 1"};

struct GivenEnds {
  std::optional<double> least;
  std::optional<double> most;

  [[nodiscard]] bool any() const { return least || most; }
};

GivenEnds endsField(InputReader& reader, std::string_view key) {
  GivenEnds ends;
  reader.inObject(key, [&](InputReader& inner) {
    ends.least = inner.number("min", kCoefficient);
    ends.most = inner.number("max", kCoefficient);
  });
  return ends;
}

/// What stands in `ends`, an end that is absent from `usual`.
FrictionRange filled(InputReader& reader, std::string_view key, const GivenEnds& ends,
                     const FrictionRange& usual) {
  const FrictionRange range{ends.least.value_or(usual.least), ends.most.value_or(usual.most)};
  if (const auto checked = mechanics::checkFriction(range, key); !checked) {
    reader.fail(checked.error().about(reader.fields().pathOf(key)));
  }
  return range;
}

FieldDescription rangeDescription(std::string_view name, std::string_view meaning) {
  return {.name = name, .kind = "object", .meaning = meaning, .fields = spanFields()};
}

}  // namespace

FrictionInput frictionField(InputReader& reader) {
  FrictionInput input;
  const auto frictionClass = reader.choice<FrictionClass>("friction_class");
  const GivenEnds ends = endsField(reader, "friction");
  FrictionRange range;
  if (frictionClass) {
    const auto named = mechanics::frictionOf(*frictionClass, ends.least, ends.most);
    if (named) range = *named;
    if (!named) reader.fail(named.error().about(reader.fields().pathOf("friction")));
  } else {
    range = filled(reader, "friction", ends, range);
  }
  input.range = {range, range};
  if (frictionClass || ends.any()) input.knowledge = FrictionKnowledge::Given;
  return input;
}

FrictionInput frictionFields(InputReader& reader) {
  FrictionInput input = frictionField(reader);
  const GivenEnds thread = endsField(reader, "thread_friction");
  const GivenEnds head = endsField(reader, "head_friction");
  input.range.thread = filled(reader, "thread_friction", thread, input.range.thread);
  input.range.head = filled(reader, "head_friction", head, input.range.head);
  if (thread.any() || head.any()) input.knowledge = FrictionKnowledge::Given;
  return input;
}

mechanics::BearingFace faceFields(InputReader& reader) {
  return {reader.optional<Length>("bearing_diameter", Sign::Positive),
          reader.optional<Length>("hole_diameter", Sign::Positive)};
}

std::vector<FieldDescription> frictionDescription() {
  return {{.name = "friction_class",
           .kind = "word",
           .range = "A | B | C | D | E",
           .meaning = "VDI 2230: A 0.04-0.10 paste or wax, B 0.08-0.16 greased or oiled, C "
                      "0.14-0.24 as delivered, D 0.20-0.35 dry zinc, E 0.30 and more"},
          rangeDescription("friction",
                           "coefficient in thread and under the head; replaces ends of "
                           "the class. Nothing said: 0.08 to 0.24")};
}

std::vector<FieldDescription> frictionDescriptions() {
  auto fields = frictionDescription();
  fields.push_back(rangeDescription("thread_friction", "where the thread differs"));
  fields.push_back(
      rangeDescription("head_friction", "where the face under the turned part differs"));
  return fields;
}

std::vector<FieldDescription> faceDescriptions() {
  return {quantityField("bearing_diameter", QuantityKind::Length,
                        "outer diameter of the face that rubs under the turned part; else that of "
                        "the standard hexagon head",
                        {.range = "more than 0"}),
          quantityField("hole_diameter", QuantityKind::Length,
                        "inner diameter of that face; else the usual clearance hole",
                        {.range = "more than 0"})};
}

Json spanJson(double least, double most) {
  return {{"min", plainNumber(least)}, {"max", plainNumber(most)}};
}

std::vector<FieldDescription> spanFields() {
  return {{.name = "min", .kind = "number"}, {.name = "max", .kind = "number"}};
}

void noteFriction(const FrictionInput& friction, std::vector<Note>& notes) {
  if (friction.knowledge == FrictionKnowledge::Given) return;
  notes.push_back({"friction_assumed",
                   "Nothing was said about friction: from lightly oiled to dry, 0.08 to 0.24."});
}

void noteFace(FrictionDiameterFrom from, std::vector<Note>& notes) {
  if (from == FrictionDiameterFrom::Given) return;
  const bool head = from == FrictionDiameterFrom::StandardHead;
  notes.push_back(
      {"face_assumed", head ? "A plain hexagon head on a usual clearance hole was taken; flange "
                              "heads and cone seats rub further out."
                            : "The face under the head is not known; 1.3 times the thread diameter "
                              "was taken."});
}

}  // namespace sw::compute
