// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/kit_list.h"

#include <nlohmann/json.hpp>

#include "report/text_table.h"

namespace sw::report {

namespace {

using model::Json;
using workshop::KitLine;
using workshop::KitTick;

KitTick tickOf(const KitTicks& ticks, const KitLine& line) {
  const auto found = ticks.find(line.key);
  return found == ticks.end() ? KitTick::Open : found->second;
}

std::string needOf(const KitLine& line) {
  if (!line.stillNeeded) return "done with";
  std::string need = line.optional ? "if wanted" : "yes";
  if (line.singleUse) need += ", new";
  return need;
}

std::string joined(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : "; ") + item;
  return text;
}

}  // namespace

Json toJson(std::span<const KitLine> lines, const KitTicks& ticks, const workshop::JobState& job) {
  Json list = Json::array();
  for (const KitLine& line : lines) {
    Json json = Json::object();
    json["key"] = line.key;
    json["kind"] = wordOf(line.kind);
    json["name"] = line.name;
    if (!line.instead.empty()) json["instead"] = line.instead;
    if (!line.amount.empty()) json["amount"] = line.amount;
    json["single_use"] = line.singleUse;
    json["optional"] = line.optional;
    json["still_needed"] = line.stillNeeded;
    json["tick"] = wordOf(tickOf(ticks, line));
    Json steps = Json::array();
    for (const std::size_t step : line.steps) steps.push_back(job.stepName(step));
    json["steps"] = std::move(steps);
    list.push_back(std::move(json));
  }
  return list;
}

std::string toText(std::span<const KitLine> lines, const KitTicks& ticks) {
  std::vector<TextRow> table{{"Kind", "Name", "Amount", "Needed", "Ticked", "Or"}};
  for (const KitLine& line : lines) {
    const KitTick tick = tickOf(ticks, line);
    table.push_back({std::string(wordOf(line.kind)), line.name, line.amount, needOf(line),
                     tick == KitTick::Open ? "" : std::string(wordOf(tick)), joined(line.instead)});
  }
  return tableText(std::move(table));
}

}  // namespace sw::report
