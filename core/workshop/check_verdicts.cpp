// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/check_verdicts.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "workshop/series_judge.h"

namespace sw::workshop {

namespace {

using model::Entry;

constexpr double kSameWithin = 1e-9;  ///< relative: the same arithmetic on the same numbers

bool same(double a, double b) {
  return std::abs(a - b) <= kSameWithin * std::max({1.0, std::abs(a), std::abs(b)});
}

bool same(const std::optional<double>& a, const std::optional<double>& b) {
  return a.has_value() == b.has_value() && (!a || same(*a, *b));
}

bool same(const model::VerdictGiven& a, const model::VerdictGiven& b) {
  return a.verdict == b.verdict && a.soFar == b.soFar && same(a.value, b.value) &&
         same(a.standardUncertainty, b.standardUncertainty) &&
         same(a.degreesOfFreedom, b.degreesOfFreedom) && same(a.probability, b.probability) &&
         same(a.bar, b.bar) && a.used == b.used && a.rule == b.rule && a.limitSide == b.limitSide;
}

/// The readings of the series that were valid just before `verdict`, in the place of what they
/// replace.
std::vector<ReadingView> readingsBefore(const std::vector<Entry>& entries, const Entry& verdict,
                                        model::EntryId series) {
  std::set<std::int64_t> replaced;
  std::map<std::int64_t, std::int64_t> root;
  for (const Entry& entry : entries) {
    if (entry.id >= verdict.id) break;
    root[entry.id.value] = entry.id.value;
    if (!entry.replaces) continue;
    replaced.insert(entry.replaces->value);
    const auto before = root.find(entry.replaces->value);
    if (before != root.end()) root[entry.id.value] = before->second;
  }
  std::vector<std::pair<std::int64_t, ReadingView>> found;
  for (const Entry& entry : entries) {
    if (entry.id >= verdict.id) break;
    const auto* reading = model::as<model::Reading>(entry);
    if (reading == nullptr || reading->series != series || replaced.contains(entry.id.value)) {
      continue;
    }
    found.push_back({root[entry.id.value], {entry.id, *reading, entry.replaces.has_value()}});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<ReadingView> readings;
  for (auto& [key, view] : found) readings.push_back(std::move(view));
  return readings;
}

const model::Series* seriesFact(const std::vector<Entry>& entries, model::EntryId id) {
  for (const Entry& entry : entries) {
    if (entry.id == id) return model::as<model::Series>(entry);
  }
  return nullptr;
}

std::optional<model::VerdictGiven> recompute(const std::vector<Entry>& entries,
                                             const ShopState& shop, const Entry& verdict,
                                             model::EntryId id) {
  const auto* fact = seriesFact(entries, id);
  if (fact == nullptr) return std::nullopt;
  SeriesView series;
  series.id = id;
  series.fact = *fact;
  series.readings = readingsBefore(entries, verdict, id);
  const auto basis = basisOf(*fact, shop);
  if (!basis) return std::nullopt;
  const auto outcome = judgeSeries(series, *basis);
  if (!outcome) return std::nullopt;
  return verdictFact(id, *outcome);
}

void checkJob(const std::vector<Entry>& entries, const ShopState& shop,
              std::vector<store::CheckFinding>& findings) {
  for (const Entry& entry : entries) {
    const auto* given = model::as<model::VerdictGiven>(entry);
    if (given == nullptr) continue;
    const std::string id = std::to_string(entry.id.value);
    const auto computed = recompute(entries, shop, entry, given->series);
    if (!computed) {
      findings.push_back({store::Severity::Fault, "check.verdict_without_basis", {{"entry", id}}});
    } else if (!same(*given, *computed)) {
      findings.push_back(
          {store::Severity::Fault,
           "check.verdict_differs",
           {{"entry", id}, {"given", given->verdict}, {"computed", computed->verdict}}});
    }
  }
}

}  // namespace

Result<std::vector<store::CheckFinding>> checkVerdicts(const store::Book& book) {
  auto shopEntries = book.shopEntries();
  if (!shopEntries) return failAs(shopEntries);
  const ShopState shop(*shopEntries);
  auto jobs = book.jobs();
  if (!jobs) return failAs(jobs);
  std::vector<store::CheckFinding> findings;
  for (const auto& job : *jobs) {
    auto entries = book.jobEntries(job.job);
    if (!entries) return failAs(entries);
    checkJob(*entries, shop, findings);
  }
  return findings;
}

}  // namespace sw::workshop
