// SPDX-License-Identifier: GPL-3.0-or-later
// Hold points: each statement is answered with the state or value that was seen, one at a time.
#include <algorithm>

#include "mechanics/support/stand_load.h"
#include "units/format.h"
#include "workshop/rules.h"
#include "workshop/spec_needs.h"

namespace sw::workshop {

namespace {

using procedures::AnswerType;
using procedures::Statement;

struct Judged {
  bool passes = false;
  std::optional<double> si;
};

Result<Judged> judgeChoice(const Statement& statement, const std::string& answer) {
  std::string choices;
  for (const auto& choice : statement.choices) {
    if (choice.word == answer) return Judged{choice.passes, std::nullopt};
    choices += (choices.empty() ? "" : ", ") + choice.word;
  }
  return fail(ErrorCode::InvalidInput, "json.not_one_of", "answer",
              {{"text", answer}, {"choices", choices}});
}

Result<Judged> judgeCount(const Statement& statement, const std::string& answer) {
  auto parsed = parseQuantity(answer, {"answer", QuantityKind::Number, {}});
  if (!parsed) return failAs(parsed);
  const double count = parsed->value.si;
  if (count < 0 || count != static_cast<double>(static_cast<std::int64_t>(count))) {
    return fail(ErrorCode::InvalidInput, "workshop.not_a_count", "answer", {{"text", answer}});
  }
  return Judged{count >= static_cast<double>(statement.atLeast.value_or(0)), count};
}

/// Each stand must carry more than half the axle load.
Result<Judged> judgeStands(Context& context, const TypedQuantity& rating, StandRating means) {
  const auto& load = context.job().vehicle.fact.frontAxleLoad;
  if (!load) return fail(ErrorCode::Missing, "workshop.axle_load_needed", "front_axle_load");
  StandInput input;
  input.axleLoad = load->as<Mass>();
  input.rating = rating.as<Mass>();
  input.ratingMeans = means;
  auto outcome = standLoad(input);
  if (!outcome) return failAs(outcome);
  const bool enough = outcome->verdict == StandVerdict::Enough;
  context.tell("stand_load", {{"needed", fixedDecimal(inKilograms(outcome->neededEach), 0) + " kg"},
                              {"rated", fixedDecimal(inKilograms(outcome->ratedEach), 0) + " kg"},
                              {"verdict", enough ? "enough" : "not_enough"}});
  return Judged{enough, rating.si};
}

/// A beam or lift must carry the whole axle.
Result<Judged> judgeLift(Context& context, const TypedQuantity& rating) {
  const auto& load = context.job().vehicle.fact.frontAxleLoad;
  if (!load) return fail(ErrorCode::Missing, "workshop.axle_load_needed", "front_axle_load");
  return Judged{rating.si > load->si, rating.si};
}

/// The torque read off the wrench must be the sheet's figure.
Result<Judged> judgeWheelNuts(Context& context, const TypedQuantity& torque) {
  const auto* spec = context.shop().spec(context.job().opened.vehicle, kWheelNutsKey);
  if (spec == nullptr || !spec->fact.value) {
    return fail(ErrorCode::Missing, "workshop.torque_not_on_file", "wheel_nuts",
                {{"key", "wheel_nuts"}, {"name", "wheel nuts"}});
  }
  const double low = spec->fact.value->si;
  const double high = spec->fact.max ? spec->fact.max->si : low;
  const double slack = std::max(0.02 * low, torque.roundingHalfWidthSi());
  return Judged{torque.si >= low - slack && torque.si <= high + slack, torque.si};
}

Result<Judged> judgeQuantity(Context& context, const Statement& statement,
                             const std::string& answer) {
  auto value = readQuantity(context, std::string_view(answer), "answer",
                            statement.quantity.value_or(QuantityKind::Number));
  if (!value) return failAs(value);
  if (statement.check == "stand_rating_each") {
    return judgeStands(context, *value, StandRating::Each);
  }
  if (statement.check == "stand_rating_pair") {
    return judgeStands(context, *value, StandRating::PerPair);
  }
  if (statement.check == "lift_rating") return judgeLift(context, *value);
  if (statement.check == "wheel_nut_torque") return judgeWheelNuts(context, *value);
  return Judged{value->si > 0, value->si};
}

Result<Judged> judge(Context& context, const Statement& statement, const std::string& answer) {
  switch (statement.answer) {
    case AnswerType::Choice:
      return judgeChoice(statement, answer);
    case AnswerType::Count:
      return judgeCount(statement, answer);
    case AnswerType::Quantity:
      return judgeQuantity(context, statement, answer);
    case AnswerType::Text:
      return Judged{answer.find_first_not_of(' ') != std::string::npos, std::nullopt};
  }
  return fail(ErrorCode::Internal, "workshop.no_statement", "statement");
}

/// The chocks stay until the hold is passed: what a later step of the same run ends is not missing
/// yet.
bool endsLaterInRun(const Context& context, std::size_t step, const LedgerView& item) {
  const JobState& job = context.job();
  for (std::size_t i = step + 1; i < job.steps.size(); ++i) {
    const StepView& view = job.steps[i];
    if (view.run != job.steps[step].run || view.side != item.side) continue;
    for (const auto& effect : view.step->ledger) {
      if (effect.item == item.item && effect.to == model::LedgerState::TakenOff) return true;
    }
  }
  return false;
}

/// Brakes and steering are not back together while anything is off or only hand-tight, and nobody
/// drives on a pack that was never pulled.
Result<void> ledgerAllows(const Context& context, std::size_t step, const std::string& hold) {
  std::vector<Refusal> refusals;
  if (hold == "brakes_and_steering") {
    for (const LedgerView& item : context.job().ledger) {
      if (item.clear() || endsLaterInRun(context, step, item)) continue;
      const std::string from = item.step ? context.job().stepName(*item.step) : std::string{};
      refusals.push_back({"ledger", from, item.name + ": " + std::string(wordOf(item.state))});
    }
  }
  if (hold == "go_no_go") refusals = againstDrive(context.job());
  if (refusals.empty()) return {};
  return refuse(hold == "go_no_go" ? "workshop.no_drive" : "workshop.ledger_not_clear", refusals);
}

}  // namespace

Result<void> act(const AnswerHold& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const HoldView* hold = context.job().holdAt(*step);
  if (hold == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_hold_here", "step",
                {{"step", context.job().stepName(*step)}});
  }
  const auto& definition = *context.job().steps[*step].step->hold;
  const std::string key = definition.key;
  if (key == "support" && !context.job().support) {
    return fail(ErrorCode::Refused, "workshop.support_first", "support");
  }
  const auto found = std::find_if(
      hold->statements.begin(), hold->statements.end(),
      [&](const StatementView& view) { return view.statement->key == action.statement; });
  if (found == hold->statements.end()) {
    return fail(ErrorCode::NotFound, "workshop.no_statement", "statement",
                {{"text", action.statement}});
  }
  if (auto allowed = ledgerAllows(context, *step, key); !allowed) return failAs(allowed);
  const std::string ask = found->statement->ask;
  auto judged = judge(context, *found->statement, action.answer);
  if (!judged) return failAs(judged);
  context.add(model::HoldAnswer{key, action.statement, action.answer, judged->si, judged->passes},
              context.placeOf(*step));
  if (auto again = context.refresh(); !again) return failAs(again);
  if (!judged->passes) {
    context.tell("hold_not_passed", {{"hold", key}, {"statement", action.statement}, {"ask", ask}});
  } else if (context.job().holdAt(*step)->passed()) {
    context.tell("hold_passed", {{"hold", key}});
  }
  return {};
}

}  // namespace sw::workshop
