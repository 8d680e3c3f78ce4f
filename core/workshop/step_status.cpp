// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/step_status.h"

#include <algorithm>

#include "measure/evaluation.h"

namespace sw::workshop {

namespace {

StepStatus measuredStatus(const JobState& job, std::size_t step) {
  const StepView& view = job.steps[step];
  if (!view.step->measure) return StepStatus::Done;
  const SeriesView* series = job.newestSeries(step);
  if (series == nullptr || !series->verdict) return StepStatus::Done;
  if (series->verdict->verdict == word(Verdict::Outside)) return StepStatus::OutOfLimits;
  const bool proved = series->verdict->verdict == word(Verdict::Within);
  return view.step->measure->safety && !proved ? StepStatus::NotProved : StepStatus::Done;
}

StepStatus doneStatus(const JobState& job, std::size_t step) {
  switch (job.steps[step].action.value_or(model::StepAction::Done)) {
    case model::StepAction::DoneBeforeRecording:
      return StepStatus::DoneBefore;
    case model::StepAction::NotApplicable:
      return StepStatus::NotApplicable;
    default:
      return measuredStatus(job, step);
  }
}

bool timerRuns(const JobState& job, std::size_t step, Timestamp now) {
  return std::any_of(job.timers.begin(), job.timers.end(), [&](const TimerView& timer) {
    const auto gone = now.utcMilliseconds - timer.startedAt.utcMilliseconds;
    return timer.step == step && static_cast<double>(gone) / 60'000.0 < timer.minutes;
  });
}

bool doneOrPassed(const JobState& job, std::size_t step) {
  const HoldView* hold = job.holdAt(step);
  return hold != nullptr ? hold->passed() : job.steps[step].done();
}

}  // namespace

std::vector<StepLine> stepLines(const JobState& job, Timestamp now) {
  std::vector<StepLine> lines(job.steps.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    StepLine& line = lines[i];
    if (job.steps[i].superseded) {
      line.status = StepStatus::Superseded;
    } else if (doneOrPassed(job, i)) {
      line.status = doneStatus(job, i);
    } else if (timerRuns(job, i, now)) {
      line.status = StepStatus::Running;
    } else {
      line.against = againstWork(job, i);
      line.status = line.against.empty() ? StepStatus::Ready : StepStatus::Waits;
    }
  }
  return lines;
}

bool stillOpen(const JobState& job, std::size_t step) {
  const StepView& view = job.steps[step];
  return !view.superseded && !view.step->optional && !doneOrPassed(job, step);
}

std::optional<std::size_t> stepNamed(const JobState& job, const std::string& name) {
  for (std::size_t i = job.steps.size(); i-- > 0;) {
    if (!job.steps[i].superseded && job.stepName(i) == name) return i;
  }
  return std::nullopt;
}

std::optional<std::size_t> nextReadyStep(const JobState& job, const std::vector<StepLine>& lines,
                                         std::optional<model::Side> only,
                                         std::optional<std::size_t> after) {
  const std::size_t count = job.steps.size();
  const std::size_t start = after ? *after + 1 : 0;
  for (std::size_t k = 0; k < count; ++k) {
    const std::size_t i = (start + k) % count;
    const StepView& view = job.steps[i];
    const bool ready = lines[i].status == StepStatus::Ready;
    const bool otherSide = only && view.side && view.side != only;
    if (ready && !otherSide && !view.step->optional && i != after) return i;
  }
  return std::nullopt;
}

}  // namespace sw::workshop
