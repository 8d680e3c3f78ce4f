// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "model/entry.h"
#include "procedures/instantiate.h"
#include "workshop/shop_state.h"

// A job as it stands, derived from its facts and never stored: what is done, what waits, what is
// off the vehicle, what was measured. Valid facts are those neither replaced nor withdrawn; a
// correction takes the place of what it corrects in every order ("root order").

namespace sw::workshop {

/// One step of one run for one side.
struct StepView {
  std::size_t run = 0;  ///< index into JobState::runs
  const procedures::Step* step = nullptr;
  std::optional<model::Side> side;
  std::vector<std::size_t> needs;           ///< indices into JobState::steps
  std::optional<model::StepAction> action;  ///< the newest mark; Reopened counts as not done
  std::optional<model::EntryId> mark;
  std::optional<Timestamp> doneAt;
  bool superseded = false;  ///< a newer round of the same procedure took its place

  [[nodiscard]] bool done() const {
    return action.has_value() && *action != model::StepAction::Reopened;
  }
};

struct RunView {
  model::RunId id;
  model::RunStarted fact;
  std::shared_ptr<const procedures::Procedure> procedure;
  std::vector<model::Side> sides;
};

struct StatementView {
  const procedures::Statement* statement = nullptr;
  std::optional<model::HoldAnswer> answer;  ///< the newest
  std::optional<model::EntryId> entry;
  std::optional<model::EntryId> by;
  std::optional<Timestamp> answeredAt;
};

struct HoldView {
  std::size_t step = 0;                   ///< index into JobState::steps
  std::vector<StatementView> statements;  ///< those that apply to this support and vehicle
  bool askAgain = false;  ///< passed on an earlier day while the vehicle is still up

  [[nodiscard]] bool answered() const;  ///< every statement has a passing answer
  [[nodiscard]] bool passed() const { return answered() && !askAgain; }
};

struct LedgerView {
  std::string item;
  std::string name;
  std::optional<model::Side> side;
  model::LedgerKind type = model::LedgerKind::Removed;
  model::LedgerState state = model::LedgerState::Off;
  bool fastened = false;
  std::optional<std::int64_t> done, count;
  std::string reason;
  model::EntryId entry;
  std::optional<std::size_t> step;  ///< of the last move, index into JobState::steps

  /// Off the vehicle no more, or on it no more; fastened items only when torqued, replaced or left
  /// off.
  [[nodiscard]] bool clear() const;
};

struct ReadingView {
  model::EntryId entry;
  model::Reading fact;
  bool corrected = false;
};

struct SeriesView {
  model::EntryId id;
  model::Series fact;
  std::string step;
  std::optional<model::RunId> run;
  std::optional<model::Side> side;
  std::vector<ReadingView> readings;
  std::optional<model::VerdictGiven> verdict;  ///< the newest
  std::optional<model::EntryId> verdictEntry;

  [[nodiscard]] std::size_t usedCount() const;
};

struct PackView {
  model::ShimPack fact;
  std::optional<model::Side> side;
  model::EntryId entry;
  std::optional<model::RunId> run;
};

struct TimerView {
  std::size_t step = 0;
  Timestamp startedAt;
  double minutes = 0;
};

/// What can be resumed on.
struct ResumePoint {
  std::optional<std::size_t> step;         ///< where work goes on
  std::vector<std::size_t> handTight;      ///< indices into ledger
  std::vector<std::size_t> holdsToAnswer;  ///< indices into holds that stand before it
};

/// The facts of a job in order of id. Shared, since one state after another is derived from them.
using JobFacts = std::vector<std::shared_ptr<const model::Entry>>;
[[nodiscard]] JobFacts shareFacts(std::vector<model::Entry> entries);

struct JobState {
  model::JobId job;
  model::JobOpened opened;
  Timestamp openedAt;
  std::optional<model::JobClosed> closed;
  std::optional<Timestamp> closedAt;
  std::optional<model::EntryId> closedEntry;
  Revision<model::Vehicle> vehicle;
  std::optional<model::Complaint> complaint;
  std::optional<model::SupportKind> support;

  std::vector<RunView> runs;    ///< in plan order
  std::vector<StepView> steps;  ///< in plan order
  std::vector<HoldView> holds;
  std::vector<LedgerView> ledger;
  std::vector<SeriesView> series;  ///< in root order
  std::vector<PackView> packs;
  std::vector<TimerView> timers;
  JobFacts entries;                        ///< all facts of the job
  std::vector<const model::Entry*> valid;  ///< neither replaced nor withdrawn, in root order
  bool vehicleUp = false;

  [[nodiscard]] const model::Entry* findEntry(model::EntryId id) const;
  [[nodiscard]] const SeriesView* findSeries(model::EntryId id) const;
  /// The newest series of a step, the one that counts; null when nothing was measured.
  [[nodiscard]] const SeriesView* newestSeries(std::size_t step) const;
  /// The entry that says a recheck was carried out; null while it is due.
  [[nodiscard]] const model::Entry* recheckDone(model::EntryId recheck) const;
  /// Was this fact recorded at this very step, in its run and on its side?
  [[nodiscard]] bool belongsTo(const model::Entry& entry, std::size_t step) const;
  [[nodiscard]] const HoldView* holdAt(std::size_t step) const;
  /// The newest observation with this key on this side (or without side).
  [[nodiscard]] const model::Observation* observed(const std::string& key,
                                                   std::optional<model::Side> side) const;
  /// The newest run of a procedure that carries the side (any side when absent).
  [[nodiscard]] std::optional<std::size_t> newestRun(const std::string& procedure,
                                                     std::optional<model::Side> side) const;
  [[nodiscard]] std::optional<std::size_t> findStep(std::size_t run, const std::string& step,
                                                    std::optional<model::Side> side) const;
  /// Total of the pack last fitted (or found, when none was fitted) on a side.
  [[nodiscard]] std::optional<Length> packTotal(model::Side side) const;
  /// Text for messages: "prepare-to-measure/track_rod_apart (left)".
  [[nodiscard]] std::string stepName(std::size_t step) const;
  [[nodiscard]] bool overridden(const std::string& rule, std::size_t step) const;
};

/// The facts conditions are judged by, for a step of the given round. `job` must outlive it.
[[nodiscard]] procedures::Facts factsOf(const JobState& job, std::int64_t round);

/// Finds a procedure by the hash of its frozen text.
using ProcedureLookup =
    std::function<std::shared_ptr<const procedures::Procedure>(const std::string& hash)>;

/// Derives the state. `shop` must be the shop as of the job's closing (or now). `now` decides which
/// holds are asked again. Errors: Internal "workshop.no_job", "workshop.no_procedure_text".
[[nodiscard]] Result<JobState> deriveJob(JobFacts entries, const ShopState& shop,
                                         const ProcedureLookup& procedures, Timestamp now);
[[nodiscard]] ResumePoint resumePoint(const JobState& state);

}  // namespace sw::workshop
