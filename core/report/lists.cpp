// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/lists.h"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "report/quantity_text.h"
#include "report/text_table.h"

namespace sw::report {

namespace {

using model::Json;

std::string dayText(const std::optional<Timestamp>& time) {
  return time ? toIso(localDate(*time)) : "";
}

void put(Json& json, const char* key, const std::string& text) {
  if (!text.empty()) json[key] = text;
}

std::string sideText(std::optional<model::Side> side) {
  return side ? " (" + std::string(wordOf(*side)) + ")" : std::string{};
}

std::string joined(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : ", ") + item;
  return text;
}

std::string stateOf(const model::RecheckDue& due, const Date& today) {
  if (!due.on) return "by odometer";
  return *due.on < today ? "overdue" : "coming";
}

}  // namespace

std::vector<VehicleRow> vehicleRows(const workshop::ShopState& shop,
                                    std::span<const store::JobSummary> jobs) {
  std::vector<VehicleRow> rows;
  std::map<model::VehicleId, std::size_t> rowOf;
  for (const auto* vehicle : shop.vehicles()) {
    const model::Vehicle& fact = vehicle->fact;
    rowOf.emplace(fact.vehicle, rows.size());
    rows.push_back(
        {fact.vehicle, fact.registration, fact.makeModel, fact.vin, fact.owner, 0, 0, {}});
  }
  for (const store::JobSummary& job : jobs) {
    const auto found = rowOf.find(job.vehicle);
    if (found == rowOf.end()) continue;
    VehicleRow& row = rows[found->second];
    ++row.jobs;
    if (!job.closedAt) ++row.openJobs;
    row.lastOpened = std::max(row.lastOpened, std::optional(job.openedAt));
  }
  return rows;
}

JobRow closedJobRow(const store::JobSummary& summary, const model::Vehicle* vehicle) {
  JobRow row;
  row.job = summary.job;
  if (vehicle != nullptr) row.registration = vehicle->registration;
  row.openedAt = summary.openedAt;
  row.closedAt = summary.closedAt;
  row.state = summary.outcome ? std::string(wordOf(*summary.outcome)) : "open";
  return row;
}

JobRow openJobRow(const workshop::JobState& job) {
  JobRow row;
  row.job = job.job;
  row.registration = job.vehicle.fact.registration;
  row.openedAt = job.openedAt;
  row.closedAt = job.closedAt;
  row.state = job.closed ? std::string(wordOf(job.closed->outcome)) : "open";
  const auto resume = workshop::resumePoint(job);
  if (!job.closed && resume.step) {
    const auto& view = job.steps[*resume.step];
    row.step = job.runs[view.run].procedure->title + ": " + view.step->title;
    row.step += sideText(view.side);
  }
  for (const std::size_t i : resume.handTight) {
    row.handTight.push_back(job.ledger[i].name + sideText(job.ledger[i].side));
  }
  for (const std::size_t i : resume.holdsToAnswer) {
    row.holdsToAsk.push_back(job.steps[job.holds[i].step].step->title);
  }
  return row;
}

std::vector<DueRow> dueRows(std::span<const model::Entry> entries, model::JobId job,
                            const std::string& registration, const Date& today) {
  std::set<std::int64_t> replaced;
  for (const model::Entry& entry : entries) {
    if (entry.replaces) replaced.insert(entry.replaces->value);
  }
  std::set<std::int64_t> done;
  for (const model::Entry& entry : entries) {
    const auto* fact = model::as<model::RecheckDone>(entry);
    if (fact != nullptr && !replaced.contains(entry.id.value)) done.insert(fact->recheck.value);
  }
  std::vector<DueRow> rows;
  for (const model::Entry& entry : entries) {
    const auto* due = model::as<model::RecheckDue>(entry);
    if (due == nullptr || replaced.contains(entry.id.value) || done.contains(entry.id.value)) {
      continue;
    }
    rows.push_back(
        {registration, job, entry.id, due->what, due->on, due->atOdometer, stateOf(*due, today)});
  }
  return rows;
}

void sortByDate(std::vector<DueRow>& rows) {
  std::stable_sort(rows.begin(), rows.end(), [](const DueRow& a, const DueRow& b) {
    if (a.on && b.on) return *a.on < *b.on;
    return a.on.has_value() && !b.on.has_value();
  });
}

Json toJson(std::span<const VehicleRow> rows) {
  Json list = Json::array();
  for (const VehicleRow& row : rows) {
    Json json = Json::object();
    json["vehicle"] = row.vehicle.value;
    json["registration"] = row.registration;
    put(json, "make_model", row.makeModel);
    put(json, "vin", row.vin);
    put(json, "owner", row.owner);
    json["jobs"] = row.jobs;
    json["open_jobs"] = row.openJobs;
    if (row.lastOpened) json["last_opened"] = toIso(*row.lastOpened);
    list.push_back(std::move(json));
  }
  return list;
}

Json toJson(std::span<const JobRow> rows) {
  Json list = Json::array();
  for (const JobRow& row : rows) {
    Json json = Json::object();
    json["job"] = row.job.value;
    json["registration"] = row.registration;
    json["opened_at"] = toIso(row.openedAt);
    if (row.closedAt) json["closed_at"] = toIso(*row.closedAt);
    json["state"] = row.state;
    put(json, "step", row.step);
    if (!row.handTight.empty()) json["hand_tight"] = row.handTight;
    if (!row.holdsToAsk.empty()) json["holds_to_ask_again"] = row.holdsToAsk;
    list.push_back(std::move(json));
  }
  return list;
}

Json toJson(std::span<const DueRow> rows) {
  Json list = Json::array();
  for (const DueRow& row : rows) {
    Json json = Json::object();
    json["registration"] = row.registration;
    json["job"] = row.job.value;
    json["entry"] = row.entry.value;
    json["what"] = row.what;
    if (row.on) json["on"] = toIso(*row.on);
    if (row.atOdometer) json["at_odometer"] = row.atOdometer->text();
    json["state"] = row.state;
    list.push_back(std::move(json));
  }
  return list;
}

std::string toText(std::span<const VehicleRow> rows) {
  std::vector<TextRow> table{
      {"Registration", "Make and model", "Owner", "Jobs", "Open", "Last job"}};
  for (const VehicleRow& row : rows) {
    table.push_back({row.registration, row.makeModel, row.owner, std::to_string(row.jobs),
                     std::to_string(row.openJobs), dayText(row.lastOpened)});
  }
  return tableText(std::move(table));
}

std::string toText(std::span<const JobRow> rows) {
  std::vector<TextRow> table{{"Job", "Registration", "Opened", "Closed", "State", "Goes on at",
                              "Hand-tight", "To be asked again"}};
  for (const JobRow& row : rows) {
    std::string state = row.state;
    std::replace(state.begin(), state.end(), '_', ' ');
    table.push_back({std::to_string(row.job.value), row.registration, dayText(row.openedAt),
                     dayText(row.closedAt), state, row.step, joined(row.handTight),
                     joined(row.holdsToAsk)});
  }
  return tableText(std::move(table));
}

std::string toText(std::span<const DueRow> rows) {
  std::vector<TextRow> table{{"Registration", "Job", "Entry", "Recheck", "On", "At", "State"}};
  for (const DueRow& row : rows) {
    table.push_back({row.registration, std::to_string(row.job.value),
                     std::to_string(row.entry.value), row.what, row.on ? toIso(*row.on) : "",
                     row.atOdometer ? row.atOdometer->text() : "", row.state});
  }
  return tableText(std::move(table));
}

}  // namespace sw::report
