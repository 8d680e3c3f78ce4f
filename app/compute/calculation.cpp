// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/calculation.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "compute/calculations.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"series", "Repeated readings judged against a limit", describeSeries, runSeries},
    Calculation{"convert", "A quantity in another unit", describeConvert, runConvert},
    Calculation{"compare-figures", "Do two figures of one limit agree?", describeCompareFigures,
                runCompareFigures},
    Calculation{"starting-force", "Swivel torque from the starting pull", describeStartingForce,
                runStartingForce},
    Calculation{"stand-load", "Are the stands under an axle strong enough?", describeStandLoad,
                runStandLoad},
    Calculation{"tightening-order", "The crosswise order of fasteners on one circle",
                describeTighteningOrder, runTighteningOrder},
};

}  // namespace

std::span<const Calculation> calculations() {
  return kTable;
}

Result<Calculation> findCalculation(std::string_view name) {
  const auto found = std::find_if(kTable.begin(), kTable.end(),
                                  [name](const Calculation& row) { return row.name == name; });
  if (found != kTable.end()) return *found;
  std::string choices;
  for (const auto& row : kTable) {
    choices.append(choices.empty() ? "" : ", ").append(row.name);
  }
  return fail(ErrorCode::NotFound, "compute.unknown_name", {},
              {{"text", std::string(name)}, {"choices", choices}});
}

Result<Json> evaluate(const Calculation& calculation, const Json& input) {
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
  return answer;
}

}  // namespace sw::compute
