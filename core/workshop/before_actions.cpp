// SPDX-License-Identifier: GPL-3.0-or-later
// A hub that was apart before the program came to it: what comes before a step is marked at once.
#include "workshop/rules.h"
#include "workshop/step_status.h"

namespace sw::workshop {

namespace {

constexpr std::string_view kChooseSupport = "choose_support";

bool concerns(const JobState& job, std::size_t step, std::optional<model::Side> side) {
  const StepView& view = job.steps[step];
  return stillOpen(job, step) && (!side || !view.side || view.side == side);
}

}  // namespace

Result<void> act(const MarkBefore& action, Context& context) {
  if (!context.step()) return fail(ErrorCode::Missing, "workshop.step_needed", "step");
  const std::size_t target = *context.step();
  const auto side = context.job().steps[target].side;
  std::size_t marked = 0;
  std::string hold;
  for (std::size_t i = 0; i < target && hold.empty(); ++i) {
    if (!concerns(context.job(), i, side)) continue;
    const auto& definition = *context.job().steps[i].step;
    // What stands there now is looked at now: a hold is never marked. What carries the vehicle
    // decides which steps there are, so that it is chosen before anything behind it.
    if (definition.hold) hold = definition.hold->key;
    if (definition.id == kChooseSupport && !context.job().support) hold = "support";
    if (!hold.empty()) continue;
    auto done =
        completeStep(context, i, model::StepAction::DoneBeforeRecording, action.text.value_or(""));
    if (!done) return failAs(done);
    ++marked;
  }
  if (marked == 0) {
    return fail(ErrorCode::Refused, "workshop.nothing_before", "step",
                {{"step", context.job().stepName(target)}, {"hold", hold}});
  }
  std::vector<std::pair<std::string, std::string>> values{{"count", std::to_string(marked)}};
  if (!hold.empty()) values.emplace_back("hold", hold);
  context.tell("marked_before", std::move(values));
  return {};
}

}  // namespace sw::workshop
