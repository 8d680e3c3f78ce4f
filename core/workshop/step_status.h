// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/words.h"
#include "workshop/rules.h"

// Where every step of a job stands, for lists of steps.

namespace sw::workshop {

enum class StepStatus {
  Ready,    ///< can be worked on now
  Waits,    ///< something comes first
  Running,  ///< its time is not up yet
  Done,
  DoneBefore,  ///< done before recording began
  NotApplicable,
  OutOfLimits,  ///< done, and what was measured is outside
  NotProved,    ///< done, and what safety rests on is not proved within
  Superseded    ///< a newer round took its place
};

struct StepLine {
  StepStatus status = StepStatus::Ready;
  std::vector<Refusal> against;  ///< what comes first, for a step that waits
};

/// One line a step of `job`, in the same order. A timer runs until its time is up at `now`.
[[nodiscard]] std::vector<StepLine> stepLines(const JobState& job, Timestamp now);
/// What is open: ready, waiting or running, and neither optional nor superseded.
[[nodiscard]] bool stillOpen(const JobState& job, std::size_t step);

/// The step a refusal names: "procedure/step (left)" of the newest run. Empty where there is none.
[[nodiscard]] std::optional<std::size_t> stepNamed(const JobState& job, const std::string& name);

/// The next step that can be worked on: the first one after `after`, else the first of all, that is
/// neither optional nor of the other side than `only`. Empty = nothing is ready.
[[nodiscard]] std::optional<std::size_t> nextReadyStep(const JobState& job,
                                                       const std::vector<StepLine>& lines,
                                                       std::optional<model::Side> only,
                                                       std::optional<std::size_t> after);

}  // namespace sw::workshop

template <>
struct sw::Words<sw::workshop::StepStatus> {
  using E = sw::workshop::StepStatus;
  static constexpr std::pair<E, std::string_view> table[] = {
      {E::Ready, "ready"},
      {E::Waits, "waits"},
      {E::Running, "running"},
      {E::Done, "done"},
      {E::DoneBefore, "done_before_recording"},
      {E::NotApplicable, "not_applicable"},
      {E::OutOfLimits, "out_of_limits"},
      {E::NotProved, "not_proved"},
      {E::Superseded, "superseded"}};
};
