// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/put_right.h"

#include <algorithm>
#include <optional>

namespace sw::workshop {

namespace {

using model::EntryId;

/// The last mark of a run all of whose steps are done that are not merely possible.
std::optional<EntryId> finishedWith(const JobState& job, std::size_t run) {
  std::optional<EntryId> last;
  for (const StepView& step : job.steps) {
    if (step.run != run || step.step->optional) continue;
    if (!step.done()) return std::nullopt;
    if (step.mark) last = std::max(last.value_or(*step.mark), *step.mark);
  }
  return last;
}

void takeNewer(std::optional<EntryId>& newest, std::optional<EntryId> other) {
  if (other && (!newest || *newest < *other)) newest = other;
}

std::optional<EntryId> byRun(const JobState& job, const diagnosis::CauseFile& file,
                             std::size_t cause) {
  std::optional<EntryId> newest;
  for (const diagnosis::Repair& repair : file.repairs) {
    if (repair.cause != cause) continue;
    for (const std::string& procedure : repair.doneBy) {
      if (const auto run = job.newestRun(procedure, std::nullopt)) {
        takeNewer(newest, finishedWith(job, *run));
      }
    }
  }
  return newest;
}

std::optional<EntryId> byWord(const JobState& job, const std::string& key) {
  std::optional<EntryId> newest;
  for (const model::Entry* entry : job.valid) {
    const auto* right = model::as<model::CausePutRight>(*entry);
    if (right != nullptr && right->cause == key) takeNewer(newest, entry->id);
  }
  return newest;
}

}  // namespace

std::vector<PutRight> putRightIn(const JobState& job, const diagnosis::CauseFile& file) {
  std::vector<PutRight> list;
  for (std::size_t cause = 0; cause < file.table.causes.size(); ++cause) {
    auto newest = byRun(job, file, cause);
    takeNewer(newest, byWord(job, file.table.causes[cause].key));
    if (newest) list.push_back({cause, *newest});
  }
  return list;
}

}  // namespace sw::workshop
