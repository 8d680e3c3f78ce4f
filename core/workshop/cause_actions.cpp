// SPDX-License-Identifier: GPL-3.0-or-later
// What is told about a shake, causes put right, and jobs that are no lesson.
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

Result<void> act(const TakeIntoLearning&, Context& context) {
  // The job is judged anew with each entry that is added: what is taken back is listed first.
  std::vector<model::Entry> leftOut;
  for (const model::Entry* entry : context.job().valid) {
    if (model::as<model::LearningLeftOut>(*entry) != nullptr) leftOut.push_back(*entry);
  }
  if (leftOut.empty()) return fail(ErrorCode::NotFound, "workshop.not_left_out", "job");
  const std::string text = "counts again";
  for (const model::Entry& entry : leftOut) {
    context.replace(entry, model::Withdrawal{text}, model::CorrectionReason::Withdrawn, text,
                    entry.side);
  }
  return {};
}

Result<void> act(const PutCauseRight& action, Context& context) {
  const auto& table = diagnosis::shippedCauses().table;
  const auto cause = table.cause(action.cause);
  if (!cause || *cause == table.other) {
    std::string choices;
    for (std::size_t i = 0; i < table.causes.size(); ++i) {
      if (i != table.other) choices += (choices.empty() ? "" : ", ") + table.causes[i].key;
    }
    return notAChoice("cause", action.cause, choices);
  }
  if (action.how.empty()) return fail(ErrorCode::Missing, "workshop.field_needed", "how");
  context.add(model::CausePutRight{action.cause, action.how}, context.place());
  return {};
}

}  // namespace sw::workshop
