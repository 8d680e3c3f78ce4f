// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/description.h"

#include <nlohmann/json.hpp>

namespace sw::compute {

namespace {

using model::Json;

void putText(Json& object, const char* key, std::string_view text) {
  if (!text.empty()) object[key] = text;
}

enum class Direction { In, Out };

Result<Json> fieldsToJson(const std::vector<FieldDescription>& fields, Direction direction);

Result<Json> fieldToJson(const FieldDescription& field, Direction direction) {
  Json object = Json::object();
  object["name"] = field.name;
  object["kind"] = field.kind;
  putText(object, "unit", field.unit);
  const bool required = field.presence == Presence::Required;
  object[direction == Direction::In ? "required" : "always"] = required;
  if (!field.defaultValue.empty()) {
    auto value = model::parseJson(field.defaultValue);
    if (!value) return failAs(value);
    object["default"] = std::move(*value);
  }
  putText(object, "range", field.range);
  putText(object, "meaning", field.meaning);
  if (field.fields.empty()) return object;
  auto inner = fieldsToJson(field.fields, direction);
  if (!inner) return failAs(inner);
  object["fields"] = std::move(*inner);
  return object;
}

Result<Json> fieldsToJson(const std::vector<FieldDescription>& fields, Direction direction) {
  Json list = Json::array();
  for (const auto& field : fields) {
    auto object = fieldToJson(field, direction);
    if (!object) return failAs(object);
    list.push_back(std::move(*object));
  }
  return list;
}

}  // namespace

Result<Json> toJson(const Description& description) {
  auto inputs = fieldsToJson(description.inputs, Direction::In);
  if (!inputs) return failAs(inputs);
  auto outputs = fieldsToJson(description.outputs, Direction::Out);
  if (!outputs) return failAs(outputs);
  auto exampleInput = model::parseJson(description.exampleInput);
  if (!exampleInput) return failAs(exampleInput);
  auto exampleOutput = model::parseJson(description.exampleOutput);
  if (!exampleOutput) return failAs(exampleOutput);
  Json object = Json::object();
  object["title"] = description.title;
  object["method"] = {{"name", description.method},
                      {"source", description.source},
                      {"formula", description.formula},
                      {"assumptions", description.assumptions}};
  object["inputs"] = std::move(*inputs);
  object["outputs"] = std::move(*outputs);
  object["example"] = {{"input", std::move(*exampleInput)}, {"output", std::move(*exampleOutput)}};
  return object;
}

FieldDescription quantityField(std::string_view name, QuantityKind kind, std::string_view meaning,
                               const FieldNotes& notes) {
  return {.name = name,
          .kind = word(kind),
          .unit = defaultUnit(kind).symbol,
          .presence = notes.presence,
          .defaultValue = notes.defaultValue,
          .range = notes.range,
          .meaning = meaning};
}

std::vector<FieldDescription> envelopeFields(std::vector<FieldDescription> options) {
  std::vector<FieldDescription> fields;
  if (!options.empty()) {
    fields.push_back({.name = "options",
                      .kind = "object",
                      .meaning = "how to calculate",
                      .fields = std::move(options)});
  }
  fields.push_back({.name = "seed",
                    .kind = "whole number",
                    .range = "0 or more",
                    .meaning = "start of random numbers; accepted by every calculation, without "
                               "effect where nothing is drawn"});
  return fields;
}

std::vector<FieldDescription> withEnvelope(std::vector<FieldDescription> fields,
                                           std::vector<FieldDescription> options) {
  for (auto& field : envelopeFields(std::move(options))) fields.push_back(std::move(field));
  return fields;
}

}  // namespace sw::compute
