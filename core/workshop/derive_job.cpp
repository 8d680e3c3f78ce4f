// SPDX-License-Identifier: GPL-3.0-or-later
// From the facts of a job to the job as it stands.
#include <algorithm>
#include <map>
#include <set>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

#include "workshop/job_state.h"

namespace sw::workshop {

namespace {

using model::Entry;
using model::EntryId;
using model::Side;

/// Builds one JobState; each member function fills one part of it.
class Derivation {
 public:
  Derivation(JobFacts entries, const ShopState& shop, const ProcedureLookup& procedures,
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
  std::unordered_map<std::int64_t, std::int64_t> root;  // of entries that took another's place
  std::unordered_set<std::int64_t> replaced;
  const auto rootOf = [&root](std::int64_t id) {
    const auto found = root.find(id);
    return found == root.end() ? id : found->second;
  };
  for (const auto& entry : m_state.entries) {
    if (!entry->replaces) continue;
    replaced.insert(entry->replaces->value);
    root.emplace(entry->id.value, rootOf(entry->replaces->value));
  }
  m_state.valid.reserve(m_state.entries.size());
  for (const auto& entry : m_state.entries) {
    if (replaced.contains(entry->id.value) || model::as<model::Withdrawal>(*entry) != nullptr) {
      continue;
    }
    m_state.valid.push_back(entry.get());
  }
  if (root.empty()) return;
  std::stable_sort(m_state.valid.begin(), m_state.valid.end(), [&](const Entry* a, const Entry* b) {
    return rootOf(a->id.value) < rootOf(b->id.value);
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

Result<JobState> deriveJob(JobFacts entries, const ShopState& shop,
                           const ProcedureLookup& procedures, Timestamp now) {
  return Derivation(std::move(entries), shop, procedures, now).run();
}

}  // namespace sw::workshop
