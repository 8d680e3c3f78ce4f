// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/history.h"

#include <nlohmann/json.hpp>

#include "report/fact_text.h"
#include "report/text_table.h"

namespace sw::report {

namespace {

using model::Entry;
using model::Json;

/// What stays the same over the revisions of a shop's fact; empty for what has no revisions.
std::string identityOf(const Entry& entry) {
  const std::string kind(model::kindOf(entry.payload));
  const auto numbered = [&](std::int64_t id) { return kind + '/' + std::to_string(id); };
  if (const auto* p = model::as<model::Person>(entry)) return numbered(p->person.value);
  if (const auto* i = model::as<model::Instrument>(entry)) return numbered(i->instrument.value);
  if (const auto* c = model::as<model::InstrumentCheck>(entry)) {
    return numbered(c->instrument.value);
  }
  if (const auto* v = model::as<model::Vehicle>(entry)) return numbered(v->vehicle.value);
  if (const auto* s = model::as<model::SpecItem>(entry)) {
    return numbered(s->vehicle.value) + '/' + s->key;
  }
  if (model::as<model::ShopNamed>(entry) != nullptr) return kind;
  if (model::as<model::CauseNumbers>(entry) != nullptr) return kind;
  return {};
}

HistoryRow rowOf(const Entry& entry, const Entry* before, const workshop::ShopState& shop) {
  HistoryRow row;
  row.entry = entry.id;
  row.kind = std::string(model::kindOf(entry.payload));
  const bool withdrawn = model::as<model::Withdrawal>(entry) != nullptr;
  row.value = withdrawn ? "withdrawn" : fieldsText(entry, before).toStdString();
  row.reason = reasonText(entry).toStdString();
  const auto* person = entry.by ? shop.revision<model::Person>(*entry.by) : nullptr;
  if (person != nullptr) row.by = person->initials;
  row.doneAt = entry.doneAt;
  row.enteredAt = entry.enteredAt;
  return row;
}

}  // namespace

Result<std::vector<HistoryRow>> historyOf(const store::Book& book, model::EntryId id) {
  const auto shopEntries = book.shopEntries();
  if (!shopEntries) return failAs(shopEntries);
  auto chain = book.history(id);
  if (!chain) return failAs(chain);
  if (chain->empty()) {
    return fail(ErrorCode::NotFound, "report.no_entry", "entry",
                {{"text", std::to_string(id.value)}});
  }
  const std::string identity = chain->front().job ? std::string{} : identityOf(chain->front());
  if (!identity.empty()) {
    chain->clear();
    for (const Entry& entry : *shopEntries) {
      if (identityOf(entry) == identity) chain->push_back(entry);
    }
  }
  const workshop::ShopState shop(*shopEntries);
  std::vector<HistoryRow> rows;
  const Entry* before = nullptr;
  for (const Entry& entry : *chain) {
    rows.push_back(rowOf(entry, before, shop));
    before = &entry;
  }
  return rows;
}

Json toJson(std::span<const HistoryRow> rows) {
  Json list = Json::array();
  for (const HistoryRow& row : rows) {
    Json json = Json::object();
    json["entry"] = row.entry.value;
    json["kind"] = row.kind;
    json["value"] = row.value;
    if (!row.reason.empty()) json["reason"] = row.reason;
    if (!row.by.empty()) json["by"] = row.by;
    json["done_at"] = toIso(row.doneAt);
    json["entered_at"] = toIso(row.enteredAt);
    list.push_back(std::move(json));
  }
  return list;
}

std::string toText(std::span<const HistoryRow> rows) {
  std::vector<TextRow> table{{"Entry", "Done at", "Entered at", "By", "Reason", "Value"}};
  for (const HistoryRow& row : rows) {
    table.push_back({std::to_string(row.entry.value), toIso(row.doneAt), toIso(row.enteredAt),
                     row.by, row.reason, row.value});
  }
  return tableText(table);
}

}  // namespace sw::report
