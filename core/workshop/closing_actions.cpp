// SPDX-License-Identifier: GPL-3.0-or-later
// How a job ends: signed off, declined, or closed without sign-off. Never as "safe": the record
// says what was done and measured.
#include <algorithm>

#include "workshop/checks_ahead.h"
#include "workshop/lesson.h"
#include "workshop/rules.h"

namespace sw::workshop {

namespace {

Result<void> stillOpen(const Context& context) {
  if (context.job().closed) return fail(ErrorCode::Refused, "workshop.job_closed", "job");
  return {};
}

bool anyDeclined(const JobState& job) {
  return std::any_of(job.valid.begin(), job.valid.end(), [](const model::Entry* entry) {
    return model::as<model::WorkDeclined>(*entry) != nullptr;
  });
}

/// Kept as it was known then, like a verdict. Written before the closing, which is the last word.
Result<void> keepLesson(Context& context) {
  const auto file = causesOf(context.shop());
  if (!file) return failAs(file);
  if (auto lesson = lessonOf(context.job(), *file)) context.add(std::move(*lesson), {});
  return {};
}

}  // namespace

Result<void> act(const SignOff&, Context& context) {
  if (auto open = stillOpen(context); !open) return failAs(open);
  const auto refusals = againstSignOff(context.job());
  if (!refusals.empty()) return refuse("workshop.sign_off_refused", refusals);
  if (auto kept = keepLesson(context); !kept) return kept;
  context.add(model::JobClosed{model::JobOutcome::SignedOff, ""}, {});
  context.tell("signed_off");
  return {};
}

Result<void> act(const CloseJob& action, Context& context) {
  if (auto open = stillOpen(context); !open) return failAs(open);
  if (action.reason.empty()) return fail(ErrorCode::Missing, "workshop.field_needed", "reason");
  if (action.outcome == model::JobOutcome::SignedOff) {
    return fail(ErrorCode::Refused, "workshop.sign_off_is_apart", "outcome");
  }
  if (action.outcome == model::JobOutcome::Declined && !anyDeclined(context.job())) {
    return fail(ErrorCode::Refused, "workshop.nothing_declined", "outcome");
  }
  if (auto kept = keepLesson(context); !kept) return kept;
  context.add(model::JobClosed{action.outcome, action.reason}, {});
  context.tell("closed", {{"outcome", std::string(wordOf(action.outcome))}});
  return {};
}

}  // namespace sw::workshop
