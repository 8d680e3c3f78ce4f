// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/torque_doubts.h"

#include <nlohmann/json.hpp>

#include "compute/calculation.h"

namespace sw::workshop {

namespace {

using model::Json;

/// "It could be 25 N m, 250 lbf in or 250 kgf cm."
std::string otherReadings(const Json& result) {
  std::string text;
  const Json others = result.value("other_readings", Json::array());
  for (std::size_t i = 0; i < others.size(); ++i) {
    if (i > 0) text += i + 1 == others.size() ? " or " : ", ";
    text += others[i].value("torque", std::string{});
  }
  return text.empty() ? text : " It could be " + text + ".";
}

}  // namespace

std::optional<TorqueDoubt> torqueDoubt(const model::SpecItem& item) {
  if (item.type != model::SpecKind::Torque || !item.value || item.fastenerSize.empty() ||
      item.fastenerClass.empty()) {
    return std::nullopt;
  }
  const auto calculation = compute::findCalculation("torque-plausibility");
  if (!calculation) return std::nullopt;
  const auto answer = compute::evaluate(*calculation, {{"torque", item.value->text()},
                                                       {"thread", item.fastenerSize},
                                                       {"strength_class", item.fastenerClass}});
  // A size or class the standard does not have is no doubt about the torque.
  if (!answer) return std::nullopt;
  const Json& result = answer->at("result");
  const auto verdict = result.value("verdict", std::string{});
  // "note": above yield at low friction alone, as many a believable torque is.
  if (verdict.empty() || verdict == "plausible" || verdict == "note") return std::nullopt;
  const Json& notes = answer->at("notes");
  const std::string why =
      notes.empty() ? std::string{} : notes.front().value("text", std::string{});
  return TorqueDoubt{verdict, why + otherReadings(result)};
}

}  // namespace sw::workshop
