// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/job_state.h"

#include <algorithm>
#include <map>
#include <ranges>
#include <string_view>

namespace sw::workshop {

namespace {

using model::Entry;
using model::Side;

std::optional<std::string> jobFact(const JobState& job, const std::string& name,
                                   std::optional<Side> side, std::int64_t round) {
  constexpr std::string_view kObserved = "observed.";
  if (name == "support") {
    if (!job.support) return std::nullopt;
    return std::string(wordOf(*job.support));
  }
  if (name == "round") return std::string(round > 1 ? "later" : "first");
  if (name == "side") {
    if (!side) return std::nullopt;
    return std::string(wordOf(*side));
  }
  if (name.starts_with(kObserved)) {
    const auto* seen = job.observed(name.substr(kObserved.size()), side);
    return seen == nullptr ? std::string{} : seen->value;  // not observed: no word matches
  }
  return procedures::arrangementWord(job.vehicle.fact.arrangement, name);
}

}  // namespace

procedures::Facts factsOf(const JobState& job, std::int64_t round) {
  return [&job, round](const std::string& name, std::optional<Side> side) {
    return jobFact(job, name, side, round);
  };
}

bool HoldView::answered() const {
  return std::all_of(statements.begin(), statements.end(), [](const StatementView& view) {
    return view.answer.has_value() && view.answer->passes;
  });
}

bool LedgerView::clear() const {
  using model::LedgerState;
  switch (state) {
    case LedgerState::Torqued:
    case LedgerState::Replaced:
    case LedgerState::LeftOff:
    case LedgerState::TakenOff:
      return true;
    case LedgerState::Back:
      return !fastened;
    case LedgerState::Off:
    case LedgerState::HandTight:
    case LedgerState::On:
      return false;
  }
  return false;
}

std::size_t SeriesView::usedCount() const {
  return static_cast<std::size_t>(std::count_if(
      readings.begin(), readings.end(),
      [](const ReadingView& reading) { return reading.fact.use == model::ReadingUse::Used; }));
}

JobFacts shareFacts(std::vector<Entry> entries) {
  JobFacts facts;
  facts.reserve(entries.size());
  for (Entry& entry : entries) facts.push_back(std::make_shared<const Entry>(std::move(entry)));
  return facts;
}

const Entry* JobState::findEntry(model::EntryId id) const {
  for (const auto& entry : entries) {
    if (entry->id == id) return entry.get();
  }
  return nullptr;
}

const SeriesView* JobState::findSeries(model::EntryId id) const {
  for (const SeriesView& view : series) {
    if (view.id == id) return &view;
  }
  return nullptr;
}

const SeriesView* JobState::newestSeries(std::size_t step) const {
  const StepView& at = steps.at(step);
  for (const SeriesView& view : std::views::reverse(series)) {
    if (view.run == runs[at.run].id && view.step == at.step->id && view.side == at.side)
      return &view;
  }
  return nullptr;
}

const Entry* JobState::recheckDone(model::EntryId recheck) const {
  for (const Entry* entry : valid) {
    const auto* done = model::as<model::RecheckDone>(*entry);
    if (done != nullptr && done->recheck == recheck) return entry;
  }
  return nullptr;
}

bool JobState::belongsTo(const Entry& entry, std::size_t step) const {
  const StepView& at = steps.at(step);
  return entry.run == runs[at.run].id && entry.step == at.step->id && entry.side == at.side;
}

const HoldView* JobState::holdAt(std::size_t step) const {
  for (const HoldView& hold : holds) {
    if (hold.step == step) return &hold;
  }
  return nullptr;
}

const model::Observation* JobState::observed(const std::string& key,
                                             std::optional<Side> side) const {
  for (const Entry* entry : std::views::reverse(valid)) {
    const auto* seen = model::as<model::Observation>(*entry);
    if (seen != nullptr && seen->key == key && (!side || !entry->side || entry->side == side)) {
      return seen;
    }
  }
  return nullptr;
}

std::optional<std::size_t> JobState::newestRun(const std::string& procedure,
                                               std::optional<Side> side) const {
  std::optional<std::size_t> newest;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const RunView& run = runs[i];
    const bool carries =
        !side || std::find(run.sides.begin(), run.sides.end(), *side) != run.sides.end();
    if (run.fact.procedure == procedure && carries && (!newest || run.id > runs[*newest].id)) {
      newest = i;
    }
  }
  return newest;
}

std::optional<std::size_t> JobState::findStep(std::size_t run, const std::string& step,
                                              std::optional<Side> side) const {
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (steps[i].run == run && steps[i].step->id == step && steps[i].side == side) return i;
  }
  return std::nullopt;
}

std::optional<Length> JobState::packTotal(Side side) const {
  // Top and bottom packs add up; a fitted pack takes the place of the one found.
  std::map<model::ShimPlace, Length> totals;
  for (const PackView& pack : packs) {
    if (pack.side == side) totals[pack.fact.place] = pack.fact.total.as<Length>();
  }
  if (totals.empty()) return std::nullopt;
  Length sum;
  for (const auto& [place, total] : totals) sum = sum + total;
  return sum;
}

std::string JobState::stepName(std::size_t step) const {
  const StepView& view = steps.at(step);
  std::string name = runs[view.run].fact.procedure + "/" + view.step->id;
  if (view.side) name += " (" + std::string(wordOf(*view.side)) + ")";
  return name;
}

bool JobState::overridden(const std::string& rule, std::size_t step) const {
  return std::any_of(valid.begin(), valid.end(), [&](const Entry* entry) {
    const auto* granted = model::as<model::Override>(*entry);
    return granted != nullptr && granted->rule == rule && belongsTo(*entry, step);
  });
}

ResumePoint resumePoint(const JobState& state) {
  ResumePoint point;
  for (std::size_t i = 0; i < state.ledger.size(); ++i) {
    if (state.ledger[i].state == model::LedgerState::HandTight) point.handTight.push_back(i);
  }
  for (std::size_t i = 0; i < state.steps.size() && !state.closed; ++i) {
    const StepView& view = state.steps[i];
    const HoldView* hold = state.holdAt(i);
    const bool open = hold != nullptr ? !hold->passed() : !view.done();
    if (!open || view.superseded || view.step->optional) continue;
    point.step = i;
    break;
  }
  for (std::size_t i = 0; i < state.holds.size(); ++i) {
    if (state.holds[i].askAgain) point.holdsToAnswer.push_back(i);
  }
  return point;
}

}  // namespace sw::workshop
