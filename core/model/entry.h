// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "model/job_facts.h"
#include "model/shop_facts.h"

namespace sw::model {

using Payload =
    std::variant<Person, Instrument, InstrumentCheck, Vehicle, SpecItem, ProcedureText, JobOpened,
                 Complaint, CauseChecked, RunStarted, SupportChosen, HoldAnswer, StepMark,
                 Observation, Series, Reading, VerdictGiven, TorqueCheck, LedgerMove, PartUsed,
                 ShimPack, Labour, WorkDeclined, Note, Photo, TimerStarted, Override, RoadTest,
                 RecheckDue, JobClosed, Withdrawal, ShopNamed, RecheckDone, Calculated, ShakeTold,
                 LearningLeftOut, CauseNumbers, CausePutRight, Lesson>;

/// The header every fact carries. A correction is a new entry of the same kind that names the one
/// it replaces and why; an entry is replaced at most once (chains are linear).
struct Entry {
  EntryId id;
  std::optional<JobId> job;  ///< absent for facts of the shop
  std::optional<RunId> run;
  std::string step;  ///< step id within the run, empty if none
  std::optional<Side> side;
  Timestamp doneAt;
  Timestamp enteredAt;
  std::optional<EntryId> by;  ///< Person revision; absent only before the first person exists
  std::optional<EntryId> replaces;
  std::optional<CorrectionReason> reason;
  std::string reasonText;
  std::string programVersion;
  Payload payload;
};

/// The stored word of the payload's kind ("reading").
[[nodiscard]] std::string_view kindOf(const Payload& payload);

template <class T>
[[nodiscard]] const T* as(const Entry& entry) {
  return std::get_if<T>(&entry.payload);
}

}  // namespace sw::model
