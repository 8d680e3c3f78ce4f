// SPDX-License-Identifier: GPL-3.0-or-later
// What is told about a shake, and jobs that are no lesson.
#include "diagnosis/shipped_causes.h"
#include "workshop/context.h"

namespace sw::workshop {

namespace {

constexpr std::string_view kUnknown = "unknown";

tl::unexpected<Error> notAChoice(const std::string& field, const std::string& text,
                                 const std::string& choices) {
  return fail(ErrorCode::InvalidInput, "json.not_one_of", field,
              {{"text", text}, {"choices", choices}});
}

}  // namespace

Result<void> act(const TellOfShake& action, Context& context) {
  const auto& table = diagnosis::shippedCauses().table;
  std::string choices;
  const auto feature = table.feature(action.feature);
  if (!feature) {
    for (const auto& one : table.features) choices += (choices.empty() ? "" : ", ") + one.key;
    return notAChoice("feature", action.feature, choices);
  }
  const auto& asked = table.features[*feature];
  if (action.answer != kUnknown && !asked.answer(action.answer)) {
    for (const auto& one : asked.answers) choices += one.word + ", ";
    return notAChoice("answer", action.answer, choices + std::string(kUnknown));
  }
  context.add(model::ShakeTold{action.feature, action.answer}, context.place());
  return {};
}

Result<void> act(const LeaveOutOfLearning& action, Context& context) {
  if (action.why.empty()) return fail(ErrorCode::Missing, "workshop.field_needed", "why");
  context.add(model::LearningLeftOut{action.why}, context.place());
  return {};
}

}  // namespace sw::workshop
