// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "workshop/job_state.h"

namespace sw::workshop {

/// The entries one action made.
struct ActionEntries {
  model::EntryId first, last;
};

/// What an undo would take back: the valid facts of one action, oldest first, without the verdicts
/// that follow from them. Empty = nothing to undo (a job's opening and closing are not undone).
/// Where the action is not named, the newest facts entered at one time are meant, and of those none
/// from before the last of `starts`, the first entries of known actions. What an earlier
/// undo entered again belongs to the action that had made it, so that one undo after another goes
/// back step by step.
[[nodiscard]] std::vector<const model::Entry*> lastAction(
    const JobState& job, std::optional<ActionEntries> action = std::nullopt,
    const std::vector<model::EntryId>& starts = {});

}  // namespace sw::workshop
