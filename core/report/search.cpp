// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/search.h"

#include <nlohmann/json.hpp>

#include "phrasing/names.h"
#include "report/text_table.h"

namespace sw::report {

using model::Json;

std::vector<SearchRow> searchRows(std::span<const store::SearchHit> hits,
                                  const workshop::ShopState& shop) {
  std::vector<SearchRow> rows;
  rows.reserve(hits.size());
  for (const store::SearchHit& hit : hits) {
    SearchRow row;
    row.vehicle = hit.vehicle;
    if (const auto* vehicle = shop.vehicle(hit.vehicle)) {
      row.registration = vehicle->fact.registration;
    }
    row.job = hit.job;
    row.entry = hit.entry;
    row.kind = std::string(wordOf(hit.kind));
    row.what = phrasing::foundName(row.kind).toStdString();
    row.text = hit.text;
    rows.push_back(std::move(row));
  }
  return rows;
}

Result<std::vector<SearchRow>> searchRowsOf(const workshop::Workshop& workshop,
                                            const std::string& text, std::size_t limit) {
  const auto hits = workshop.book().search(text, limit);
  if (!hits) return failAs(hits);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  return searchRows(*hits, **shop);
}

Json toJson(std::span<const SearchRow> rows) {
  Json list = Json::array();
  for (const SearchRow& row : rows) {
    Json json = Json::object();
    json["vehicle"] = row.vehicle.value;
    json["registration"] = row.registration;
    if (row.job) json["job"] = row.job->value;
    json["entry"] = row.entry.value;
    json["kind"] = row.kind;
    json["text"] = row.text;
    list.push_back(std::move(json));
  }
  return list;
}

std::string toText(std::span<const SearchRow> rows) {
  std::vector<TextRow> table{{"Registration", "Job", "What", "Text"}};
  for (const SearchRow& row : rows) {
    table.push_back(
        {row.registration, row.job ? std::to_string(row.job->value) : "", row.what, row.text});
  }
  return tableText(std::move(table));
}

}  // namespace sw::report
