// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/procedure.h"

#include <QtCore/QByteArrayView>
#include <QtCore/QCryptographicHash>
#include <nlohmann/json.hpp>

#include "procedures/procedure_check.h"
#include "procedures/reading.h"

namespace sw::procedures {

using model::Json;
using model::ObjectReader;

namespace {

constexpr std::int64_t kSchema = 1;

std::string sha256(std::string_view bytes) {
  const QByteArrayView view(bytes.data(), static_cast<qsizetype>(bytes.size()));
  return QCryptographicHash::hash(view, QCryptographicHash::Sha256).toHex().toStdString();
}

tl::unexpected<Error> inFile(Error error, const std::string& fileName) {
  error.details.emplace_back("file", fileName);
  return tl::make_unexpected(std::move(error));
}

void readSchema(ObjectReader& in) {
  const auto schema = in.integer("schema");
  if (!schema) return in.fail({ErrorCode::Missing, "json.missing", in.pathOf("schema"), {}});
  if (*schema != kSchema)
    refuse(in, "schema", "procedure.schema", {{"text", std::to_string(*schema)}});
}

/// The step's id where it has one, else its number, so that people find the place.
std::string stepName(const Json& json, std::size_t index) {
  if (json.is_object() && json.contains("id") && json["id"].is_string()) {
    return json["id"].get<std::string>();
  }
  return std::to_string(index + 1);
}

void needStepBefore(const Json& json, std::vector<Step>& steps) {
  if (json.contains("needs") || steps.size() < 2) return;
  steps.back().needs = {steps[steps.size() - 2].id};
}

void readSteps(ObjectReader& in, std::vector<Step>& steps) {
  const Json* list = in.array("steps");
  if (!in.ok()) return;
  if (list == nullptr || list->empty()) return refuse(in, "steps", "procedure.no_steps");
  if (list->size() > kMaxSteps) return refuse(in, "steps", "procedure.too_many_steps");
  for (const Json& json : *list) {
    const std::size_t index = steps.size();
    ObjectReader reader(json, in.pathOf("steps") + "/" + std::to_string(index));
    readStep(reader, steps.emplace_back());
    if (const auto done = reader.finish(); !done) {
      Error error = done.error();
      error.details.emplace_back("step", stepName(json, index));
      return in.fail(std::move(error));
    }
    needStepBefore(json, steps);
  }
  if (auto error = checkSteps(steps)) in.fail(std::move(*error));
}

void readProcedure(ObjectReader& in, Procedure& procedure) {
  readSchema(in);
  requireId(in, "id", procedure.id);
  readCount(in, "version", 1, procedure.version);
  requireText(in, "title", procedure.title);
  requireText(in, "purpose", procedure.purpose);
  readTexts(in, "after", procedure.after);
  if (in.ok()) readSteps(in, procedure.steps);
}

void readPlan(ObjectReader& in, PlanTemplate& plan) {
  readSchema(in);
  requireId(in, "id", plan.id);
  requireText(in, "title", plan.title);
  readTexts(in, "procedures", plan.procedures);
  if (in.ok() && plan.procedures.empty()) refuse(in, "procedures", "procedure.empty_list");
}

template <class T, class Read>
Result<T> parseFile(std::string_view text, const std::string& fileName, Read read) {
  if (text.size() > kMaxFileBytes) {
    return inFile({ErrorCode::InvalidInput, "procedure.too_large", {}, {}}, fileName);
  }
  const auto json = model::parseJson(text);
  if (!json) return inFile(json.error(), fileName);
  ObjectReader in(*json, "");
  T value;
  read(in, value);
  if (auto done = in.finish(); !done) return inFile(done.error(), fileName);
  return value;
}

}  // namespace

Result<Procedure> parseProcedure(std::string_view text, const std::string& fileName) {
  auto procedure = parseFile<Procedure>(text, fileName, readProcedure);
  if (!procedure) return procedure;
  procedure->text = std::string(text);
  procedure->hash = sha256(text);
  return procedure;
}

Result<PlanTemplate> parsePlan(std::string_view text, const std::string& fileName) {
  return parseFile<PlanTemplate>(text, fileName, readPlan);
}

}  // namespace sw::procedures
