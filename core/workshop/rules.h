// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "workshop/context.h"

// The rules of a job: what may be done now, what a step still lacks, what stands against sign-off.

namespace sw::workshop {

/// The observation key under which the comparison of pulls is recorded (judging.h): peak | none.
inline constexpr std::string_view kComputedPeak = "peak_computed";

/// Everything of the run that concerns the side (or any side) is done; optional steps do not count.
[[nodiscard]] bool runFinished(const JobState& job, std::size_t run,
                               std::optional<model::Side> side);
/// What an observation's word means at its step: "worn", "loose" or "".
[[nodiscard]] std::string meaningOf(const JobState& job, const model::Entry& entry,
                                    const model::Observation& seen);

/// One reason against something, with the step it belongs to ("procedure/step (side)").
struct Refusal {
  std::string key;  ///< "hold_open", "needs", "not_proved", "ledger", "single_use", ...
  std::string step;
  std::string what;  ///< the hold, item, part or reading by name
};

/// What stands against working on the step now: open holds before it, steps it needs, runs that
/// come first, worn bearings. Empty = go ahead. Order can be overridden, holds cannot.
[[nodiscard]] std::vector<Refusal> againstWork(const JobState& job, std::size_t step);
/// What the step itself still lacks before it is done: readings, observations, torque, pack, road
/// test.
[[nodiscard]] std::vector<Refusal> lacking(const JobState& job, std::size_t step);
/// What stands against a drive: a pack fitted after the last pull of its side.
[[nodiscard]] std::vector<Refusal> againstDrive(const JobState& job);
/// Everything that stands against sign-off; empty = it is accepted.
[[nodiscard]] std::vector<Refusal> againstSignOff(const JobState& job);

/// The refusals as one error; each becomes a detail "refusal" with value "key|step|what".
[[nodiscard]] tl::unexpected<Error> refuse(const std::string& key,
                                           const std::vector<Refusal>& refusals);

/// Marks the step and moves its ledger items.
[[nodiscard]] Result<void> completeStep(Context& context, std::size_t step,
                                        model::StepAction action, const std::string& text);
/// Completes the step when nothing is lacking any more.
[[nodiscard]] Result<void> completeIfReady(Context& context, std::size_t step);
/// The command's step, checked: named, work allowed. Errors: Missing "workshop.step_needed";
/// Refused.
[[nodiscard]] Result<std::size_t> workStep(Context& context);

}  // namespace sw::workshop
