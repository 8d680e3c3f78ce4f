// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/export_json.h"

#include <nlohmann/json.hpp>
#include <set>

#include "model/entry_json.h"

namespace sw::report {

namespace {

using model::EntryId;
using model::Json;

/// The shop revisions that the job's facts point at.
struct References {
  std::set<EntryId> people, instruments, checks, specs;

  void add(const std::optional<EntryId>& id, std::set<EntryId>& to) const {
    if (id) to.insert(*id);
  }
  void addAll(const model::Entry& entry) {
    add(entry.by, people);
    if (const auto* series = model::as<model::Series>(entry)) {
      instruments.insert(series->instrument);
      add(series->instrumentCheck, checks);
      add(series->limit, specs);
    }
    if (const auto* check = model::as<model::TorqueCheck>(entry)) {
      instruments.insert(check->wrench);
      add(check->spec, specs);
    }
    if (const auto* pack = model::as<model::ShimPack>(entry)) add(pack->instrument, instruments);
  }
};

Json revisionJson(EntryId entry, const model::Payload& payload) {
  Json json = Json::object();
  json["entry"] = entry.value;
  json.update(model::payloadJson(payload));
  return json;
}

template <class T>
Json revisionsJson(const workshop::ShopState& shop, const std::set<EntryId>& ids) {
  Json list = Json::array();
  for (const EntryId id : ids) {
    if (const auto* fact = shop.revision<T>(id)) list.push_back(revisionJson(id, *fact));
  }
  return list;
}

Json jobJson(const workshop::JobState& job) {
  Json json = Json::object();
  json["job"] = job.job.value;
  json["opened_at"] = toIso(job.openedAt);
  if (job.closedAt) json["closed_at"] = toIso(*job.closedAt);
  if (job.closed) json["outcome"] = std::string(wordOf(job.closed->outcome));
  const Json opened = model::payloadJson(job.opened);
  for (const char* key : {"odometer", "request"}) {
    if (opened.contains(key)) json[key] = opened[key];
  }
  return json;
}

Json proceduresJson(const workshop::JobState& job) {
  Json list = Json::array();
  std::set<std::string> seen;
  for (const auto& run : job.runs) {
    if (!seen.insert(run.fact.hash).second) continue;
    Json one = Json::object();
    one["id"] = run.fact.procedure;
    one["version"] = run.procedure->version;
    one["hash"] = run.fact.hash;
    list.push_back(std::move(one));
  }
  return list;
}

void putSide(Json& json, const std::optional<model::Side>& side) {
  if (side) json["side"] = std::string(wordOf(*side));
}

Json seriesJson(const workshop::SeriesView& series) {
  Json json = Json::object();
  json["series"] = series.id.value;
  json["step"] = series.step;
  putSide(json, series.side);
  json["limit_key"] = series.fact.limitKey;
  Json readings = Json::array();
  for (const auto& reading : series.readings) readings.push_back(reading.entry.value);
  json["readings"] = std::move(readings);
  if (series.verdict) json["verdict"] = model::payloadJson(*series.verdict);
  return json;
}

Json packJson(const workshop::PackView& pack) {
  Json json = Json::object();
  json["entry"] = pack.entry.value;
  putSide(json, pack.side);
  json.update(model::payloadJson(pack.fact));
  return json;
}

Json ledgerJson(const workshop::LedgerView& item) {
  Json json = Json::object();
  json["item"] = item.item;
  putSide(json, item.side);
  json["type"] = std::string(wordOf(item.type));
  json["state"] = std::string(wordOf(item.state));
  json["clear"] = item.clear();
  if (!item.reason.empty()) json["reason"] = item.reason;
  return json;
}

template <class List, class F>
Json listJson(const List& list, F&& one) {
  Json json = Json::array();
  for (const auto& item : list) json.push_back(one(item));
  return json;
}

Json summaryJson(const workshop::JobState& job) {
  Json json = Json::object();
  json["outcome"] = job.closed ? std::string(wordOf(job.closed->outcome)) : "open";
  json["series"] = listJson(job.series, seriesJson);
  json["packs"] = listJson(job.packs, packJson);
  json["ledger"] = listJson(job.ledger, ledgerJson);
  return json;
}

}  // namespace

Json exportJob(const workshop::JobState& job, const workshop::ShopState& shop) {
  References references;
  for (const auto& entry : job.entries) references.addAll(*entry);
  Json json = Json::object();
  json["schema"] = 1;
  json["job"] = jobJson(job);
  json["vehicle"] = revisionJson(job.vehicle.entry, job.vehicle.fact);
  json["people"] = revisionsJson<model::Person>(shop, references.people);
  json["instruments"] = revisionsJson<model::Instrument>(shop, references.instruments);
  json["instrument_checks"] = revisionsJson<model::InstrumentCheck>(shop, references.checks);
  json["spec"] = revisionsJson<model::SpecItem>(shop, references.specs);
  json["procedures"] = proceduresJson(job);
  json["entries"] = listJson(job.entries, [](const auto& entry) { return model::toJson(*entry); });
  json["summary"] = summaryJson(job);
  return json;
}

}  // namespace sw::report
