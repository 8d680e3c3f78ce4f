// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/calculation.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "compute/calculations.h"

namespace sw::compute {

namespace {

std::vector<Calculation> allAreas() {
  std::vector<Calculation> all;
  for (const auto area :
       {swivelCalculations(), bearingCalculations(), brakeCalculations(), boltCalculations(),
        wheelCalculations(), geometryCalculations(), supportCalculations(), measuringCalculations(),
        diagnosisCalculations()}) {
    all.insert(all.end(), area.begin(), area.end());
  }
  return all;
}

}  // namespace

std::span<const Calculation> calculations() {
  static const std::vector<Calculation> kAll = allAreas();
  return kAll;
}

Result<Calculation> findCalculation(std::string_view name) {
  const auto all = calculations();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [name](const Calculation& row) { return row.name == name; });
  if (found != all.end()) return *found;
  std::string choices;
  for (const auto& row : all) {
    choices.append(choices.empty() ? "" : ", ").append(row.name);
  }
  return fail(ErrorCode::NotFound, "compute.unknown_name", {},
              {{"text", std::string(name)}, {"choices", choices}});
}

Result<Answer> answerTo(const Calculation& calculation, const Json& input) {
  auto outcome = calculation.run(input);
  if (!outcome) return failAs(outcome);
  Json notes = Json::array();
  for (const auto& note : outcome->notes)
    notes.push_back({{"code", note.code}, {"text", note.text}});
  const Description description = calculation.describe();
  Json answer = Json::object();
  answer["result"] = std::move(outcome->result);
  answer["notes"] = std::move(notes);
  answer["method"] = {{"name", description.method},
                      {"source", description.source},
                      {"options", std::move(outcome->options)}};
  return Answer{std::move(answer), std::move(outcome->draw), std::move(outcome->shown)};
}

Result<Json> evaluate(const Calculation& calculation, const Json& input) {
  auto answer = answerTo(calculation, input);
  if (!answer) return failAs(answer);
  return std::move(answer->json);
}

}  // namespace sw::compute
