// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/spec_list.h"

#include <nlohmann/json.hpp>

#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "report/text_table.h"
#include "workshop/torque_doubts.h"

namespace sw::report {

namespace {

using model::Json;
using workshop::SpecNeed;

std::string onFileText(const model::SpecItem& line) {
  switch (line.type) {
    case model::SpecKind::Limit:
      return limitText(line).toStdString();
    case model::SpecKind::Torque: {
      const std::string text = torqueText(line).toStdString();
      if (!line.count) return text;
      return text + ", " + std::to_string(*line.count) +
             (*line.count == 1 ? " fastener" : " fasteners");
    }
    case model::SpecKind::Value:
      return line.value ? typed(*line.value).toStdString() : std::string{};
    case model::SpecKind::Text:
      break;
  }
  return line.text;
}

std::string inWords(const std::string& lack) {
  if (lack == "figure") return "no figure";
  if (lack == "kind") return "a figure of another kind";
  if (lack == "count") return "number of fasteners";
  return "sizes that can be read";
}

std::string missingText(const SpecNeed& need, const std::vector<SpecNeed>& all) {
  if (workshop::satisfied(need, all)) return {};
  if (need.state == workshop::SpecLineState::Missing) {
    if (need.instead.empty()) return "not on file";
    return "not on file (or " + phrasing::specKeyName(need.instead).toStdString() + ")";
  }
  std::string text;
  for (const std::string& lack : need.lacks) text += (text.empty() ? "" : ", ") + inWords(lack);
  return text;
}

std::string joined(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : "; ") + item;
  return text;
}

}  // namespace

std::vector<SpecRow> specRows(const std::vector<SpecNeed>& needs, const workshop::ShopState& shop,
                              model::VehicleId vehicle) {
  std::vector<SpecRow> rows;
  for (const SpecNeed& need : needs) {
    SpecRow row{
        need, phrasing::specKeyName(need.key).toStdString(), {}, missingText(need, needs), {}};
    if (const auto* line = shop.spec(vehicle, need.key)) {
      row.onFile = onFileText(line->fact);
      if (const auto doubt = workshop::torqueDoubt(line->fact)) row.doubt = doubt->sentence;
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

Json toJson(std::span<const SpecRow> rows) {
  Json list = Json::array();
  for (const SpecRow& row : rows) {
    Json json = Json::object();
    json["key"] = row.need.key;
    json["name"] = row.name;
    json["type"] = wordOf(row.need.type);
    if (row.need.quantity) json["quantity"] = word(*row.need.quantity);
    json["safety"] = row.need.safety;
    json["state"] = wordOf(row.need.state);
    json["lacks"] = row.need.lacks;
    if (!row.need.instead.empty()) json["instead"] = row.need.instead;
    json["to_enter"] = !row.missing.empty();
    if (!row.doubt.empty()) json["doubt"] = row.doubt;
    json["sourced"] = row.need.sourced;
    if (!row.onFile.empty()) json["on_file"] = row.onFile;
    json["procedures"] = row.need.procedures;
    list.push_back(std::move(json));
  }
  return list;
}

std::string toText(std::span<const SpecRow> rows) {
  std::vector<TextRow> table{{"Key", "Line", "On file", "Missing", "Needed for"}};
  for (const SpecRow& row : rows) {
    table.push_back({row.need.key, row.name, row.onFile,
                     row.doubt.empty() ? row.missing : row.doubt, joined(row.need.procedures)});
  }
  return tableText(std::move(table));
}

}  // namespace sw::report
