// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/job_state.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <tuple>

namespace sw::workshop {

namespace {

using model::Entry;
using model::EntryId;
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

/// Builds one JobState; each member function fills one part of it.
class Derivation {
 public:
  Derivation(std::vector<Entry> entries, const ShopState& shop, const ProcedureLookup& procedures,
             Timestamp now)
      : m_shop(shop), m_procedures(procedures), m_now(now) {
    m_state.entries = std::move(entries);
  }

  Result<JobState> run() {
    orderValidFacts();
    if (auto opened = readOpening(); !opened) return failAs(opened);
    readSingles();
    if (auto runs = readRuns(); !runs) return failAs(runs);
    makeSteps();
    markSteps();
    readHolds();
    readLedger();
    readSeries();
    readPacksAndTimers();
    return std::move(m_state);
  }

 private:
  void orderValidFacts();
  Result<void> readOpening();
  void readSingles();
  Result<void> readRuns();
  void makeSteps();
  void markSuperseded();
  void markSteps();
  void readHolds();
  void readLedger();
  void readSeries();
  void readPacksAndTimers();

  [[nodiscard]] std::optional<std::size_t> stepOf(const Entry& entry) const;

  template <class T, class F>
  void eachValid(F&& visit) const {
    for (const Entry* entry : m_state.valid) {
      if (const T* payload = model::as<T>(*entry)) visit(*entry, *payload);
    }
  }

  const ShopState& m_shop;
  const ProcedureLookup& m_procedures;
  Timestamp m_now;
  using StepKey = std::tuple<std::int64_t, std::string_view, std::optional<Side>>;
  std::map<StepKey, std::size_t> m_stepIndex;  ///< run, step id, side
  EntryId m_raised, m_lowered;                 ///< when the vehicle last went up and came down
  JobState m_state;
};

void Derivation::orderValidFacts() {
  std::map<std::int64_t, std::int64_t> root;
  std::set<std::int64_t> replaced;
  for (const Entry& entry : m_state.entries) {
    std::int64_t rootId = entry.id.value;
    if (entry.replaces) {
      replaced.insert(entry.replaces->value);
      const auto found = root.find(entry.replaces->value);
      rootId = found == root.end() ? entry.replaces->value : found->second;
    }
    root[entry.id.value] = rootId;
  }
  for (const Entry& entry : m_state.entries) {
    if (replaced.contains(entry.id.value) || model::as<model::Withdrawal>(entry) != nullptr)
      continue;
    m_state.valid.push_back(&entry);
  }
  std::stable_sort(m_state.valid.begin(), m_state.valid.end(), [&](const Entry* a, const Entry* b) {
    return root[a->id.value] < root[b->id.value];
  });
}

Result<void> Derivation::readOpening() {
  bool found = false;
  eachValid<model::JobOpened>([&](const Entry& entry, const model::JobOpened& opened) {
    found = entry.job.has_value();
    m_state.opened = opened;
    m_state.openedAt = entry.doneAt;
    m_state.job = entry.job.value_or(model::JobId{});
  });
  const auto* vehicle = found ? m_shop.vehicle(m_state.opened.vehicle) : nullptr;
  if (vehicle == nullptr) return fail(ErrorCode::NotFound, "workshop.no_job");
  m_state.vehicle = *vehicle;
  return {};
}

void Derivation::readSingles() {
  eachValid<model::Complaint>(
      [&](const Entry&, const model::Complaint& complaint) { m_state.complaint = complaint; });
  eachValid<model::SupportChosen>(
      [&](const Entry&, const model::SupportChosen& chosen) { m_state.support = chosen.support; });
  eachValid<model::JobClosed>([&](const Entry& entry, const model::JobClosed& closed) {
    m_state.closed = closed;
    m_state.closedAt = entry.doneAt;
    m_state.closedEntry = entry.id;
  });
}

Result<void> Derivation::readRuns() {
  std::optional<Error> error;
  eachValid<model::RunStarted>([&](const Entry& entry, const model::RunStarted& started) {
    RunView run{model::RunId{entry.id.value}, started, m_procedures(started.hash), {}};
    if (run.procedure == nullptr && !error) {
      error = Error{ErrorCode::Internal,
                    "workshop.no_procedure_text",
                    {},
                    {{"procedure", started.procedure}}};
    }
    if (started.left) run.sides.push_back(Side::Left);
    if (started.right) run.sides.push_back(Side::Right);
    // A placed run stands behind its anchor and behind what was placed there before it.
    auto place = m_state.runs.end();
    if (started.placedAfter) {
      std::set<std::int64_t> chain{started.placedAfter->value};
      for (auto it = m_state.runs.begin(); it != m_state.runs.end(); ++it) {
        const bool anchored = it->fact.placedAfter && chain.contains(it->fact.placedAfter->value);
        if (anchored) chain.insert(it->id.value);
        if (chain.contains(it->id.value)) place = it + 1;
      }
    }
    m_state.runs.insert(place, std::move(run));
  });
  if (error) return tl::make_unexpected(*error);
  return {};
}

void Derivation::makeSteps() {
  for (std::size_t r = 0; r < m_state.runs.size(); ++r) {
    const RunView& run = m_state.runs[r];
    const std::size_t offset = m_state.steps.size();
    for (auto& instance :
         procedures::instantiate(*run.procedure, run.sides, factsOf(m_state, run.fact.round))) {
      StepView view;
      view.run = r;
      view.step = instance.step;
      view.side = instance.side;
      for (const std::size_t need : instance.needs) view.needs.push_back(need + offset);
      m_stepIndex.emplace(StepKey{run.id.value, view.step->id, view.side}, m_state.steps.size());
      m_state.steps.push_back(std::move(view));
    }
  }
  markSuperseded();
}

void Derivation::markSuperseded() {
  const auto newerCovers = [&](const RunView& run, Side side) {
    return std::any_of(m_state.runs.begin(), m_state.runs.end(), [&](const RunView& other) {
      return other.fact.procedure == run.fact.procedure && other.id > run.id &&
             std::find(other.sides.begin(), other.sides.end(), side) != other.sides.end();
    });
  };
  for (StepView& view : m_state.steps) {
    const RunView& run = m_state.runs[view.run];
    if (view.side) {
      view.superseded = newerCovers(run, *view.side);
    } else {
      view.superseded =
          !run.sides.empty() && std::all_of(run.sides.begin(), run.sides.end(),
                                            [&](Side side) { return newerCovers(run, side); });
    }
  }
}

std::optional<std::size_t> Derivation::stepOf(const Entry& entry) const {
  if (!entry.run || entry.step.empty()) return std::nullopt;
  const auto found = m_stepIndex.find({entry.run->value, entry.step, entry.side});
  if (found == m_stepIndex.end()) return std::nullopt;
  return found->second;
}

void Derivation::markSteps() {
  eachValid<model::StepMark>([&](const Entry& entry, const model::StepMark& mark) {
    const auto index = stepOf(entry);
    if (!index) return;
    StepView& view = m_state.steps[*index];
    view.action = mark.action;
    view.mark = entry.id;
    view.doneAt = entry.doneAt;
    if (!view.done()) return;
    if (view.step->raisesVehicle) m_raised = std::max(m_raised, entry.id);
    if (view.step->lowersVehicle) m_lowered = std::max(m_lowered, entry.id);
  });
}

void Derivation::readHolds() {
  for (std::size_t i = 0; i < m_state.steps.size(); ++i) {
    const StepView& view = m_state.steps[i];
    if (!view.step->hold) continue;
    HoldView hold;
    hold.step = i;
    const auto facts = factsOf(m_state, m_state.runs[view.run].fact.round);
    for (const auto& statement : view.step->hold->statements) {
      if (procedures::holds(statement.when, facts, view.side)) {
        hold.statements.push_back({&statement, {}, {}, {}, {}});
      }
    }
    m_state.holds.push_back(std::move(hold));
  }
  eachValid<model::HoldAnswer>([&](const Entry& entry, const model::HoldAnswer& answer) {
    const auto index = stepOf(entry);
    for (HoldView& hold : m_state.holds) {
      if (!index || hold.step != *index) continue;
      for (StatementView& view : hold.statements) {
        if (view.statement->key != answer.statement) continue;
        view = {view.statement, answer, entry.id, entry.by, entry.doneAt};
      }
    }
  });
  for (const HoldView& hold : m_state.holds) {
    if (!hold.answered() || !m_state.steps[hold.step].step->raisesVehicle) continue;
    for (const StatementView& view : hold.statements) m_raised = std::max(m_raised, *view.entry);
  }
  m_state.vehicleUp = m_raised > m_lowered;
  for (HoldView& hold : m_state.holds) {
    if (!hold.answered()) continue;
    StepView& view = m_state.steps[hold.step];
    view.action = model::StepAction::Done;
    view.doneAt = hold.statements.back().answeredAt;
    const bool anotherDay = std::any_of(
        hold.statements.begin(), hold.statements.end(), [&](const StatementView& statement) {
          return localDate(*statement.answeredAt) != localDate(m_now);
        });
    hold.askAgain = view.step->hold->key == "support" && m_state.vehicleUp && anotherDay &&
                    !m_state.closed && !view.superseded;
  }
}

void Derivation::readLedger() {
  eachValid<model::LedgerMove>([&](const Entry& entry, const model::LedgerMove& move) {
    auto it = std::find_if(m_state.ledger.begin(), m_state.ledger.end(), [&](const auto& item) {
      return item.item == move.item && item.side == entry.side;
    });
    if (it == m_state.ledger.end()) {
      m_state.ledger.push_back({});
      it = std::prev(m_state.ledger.end());
    }
    const bool fastened = it->fastened || move.fastened;
    *it = {move.item, move.name,  entry.side,  move.type, move.state,   fastened,
           move.done, move.count, move.reason, entry.id,  stepOf(entry)};
  });
}

void Derivation::readSeries() {
  eachValid<model::Series>([&](const Entry& entry, const model::Series& series) {
    SeriesView view;
    view.id = entry.id;
    view.fact = series;
    view.step = entry.step;
    view.run = entry.run;
    view.side = entry.side;
    m_state.series.push_back(std::move(view));
  });
  const auto find = [&](EntryId id) {
    return std::find_if(m_state.series.begin(), m_state.series.end(),
                        [&](const SeriesView& view) { return view.id == id; });
  };
  eachValid<model::Reading>([&](const Entry& entry, const model::Reading& reading) {
    const auto series = find(reading.series);
    if (series != m_state.series.end()) {
      series->readings.push_back({entry.id, reading, entry.replaces.has_value()});
    }
  });
  eachValid<model::VerdictGiven>([&](const Entry& entry, const model::VerdictGiven& verdict) {
    const auto series = find(verdict.series);
    if (series == m_state.series.end()) return;
    if (series->verdictEntry && *series->verdictEntry > entry.id) return;
    series->verdict = verdict;
    series->verdictEntry = entry.id;
  });
}

void Derivation::readPacksAndTimers() {
  eachValid<model::ShimPack>([&](const Entry& entry, const model::ShimPack& pack) {
    m_state.packs.push_back({pack, entry.side, entry.id, entry.run});
  });
  eachValid<model::TimerStarted>([&](const Entry& entry, const model::TimerStarted& timer) {
    if (const auto step = stepOf(entry)) {
      m_state.timers.push_back({*step, entry.doneAt, timer.minutes});
    }
  });
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

const HoldView* JobState::holdAt(std::size_t step) const {
  for (const HoldView& hold : holds) {
    if (hold.step == step) return &hold;
  }
  return nullptr;
}

const model::Observation* JobState::observed(const std::string& key,
                                             std::optional<Side> side) const {
  for (auto it = valid.rbegin(); it != valid.rend(); ++it) {
    const auto* seen = model::as<model::Observation>(**it);
    if (seen != nullptr && seen->key == key && (!side || !(*it)->side || (*it)->side == side)) {
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
  const StepView& view = steps.at(step);
  return std::any_of(valid.begin(), valid.end(), [&](const Entry* entry) {
    const auto* override_ = model::as<model::Override>(*entry);
    return override_ != nullptr && override_->rule == rule && entry->run == runs[view.run].id &&
           entry->step == view.step->id && entry->side == view.side;
  });
}

Result<JobState> deriveJob(std::vector<Entry> entries, const ShopState& shop,
                           const ProcedureLookup& procedures, Timestamp now) {
  return Derivation(std::move(entries), shop, procedures, now).run();
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
