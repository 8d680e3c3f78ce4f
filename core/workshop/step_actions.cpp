// SPDX-License-Identifier: GPL-3.0-or-later
// Working through the steps: marks, observations, torque, packs, timers, ledger, road test.
#include <algorithm>

#include "measure/instrument.h"
#include "mechanics/swivel/shim_packs.h"
#include "units/format.h"
#include "workshop/pack_total.h"
#include "workshop/rules.h"
#include "workshop/runs.h"
#include "workshop/torque_plan.h"

namespace sw::workshop {

namespace {

using model::StepAction;

constexpr double kSetAgreesWithin = 0.02;  ///< of the stage's torque: a wrench scale's reading step

tl::unexpected<Error> missing(const std::string& field) {
  return fail(ErrorCode::Missing, "workshop.field_needed", field);
}

/// A waiting step is done when its timer has run out.
Result<void> timerElapsed(const Context& context, std::size_t step) {
  const JobState& job = context.job();
  if (!job.steps[step].step->waitMinutes || job.overridden("wait", step)) return {};
  const auto timer = std::find_if(job.timers.rbegin(), job.timers.rend(),
                                  [&](const TimerView& view) { return view.step == step; });
  if (timer == job.timers.rend()) {
    return fail(ErrorCode::Refused, "workshop.timer_not_started", "step",
                {{"step", job.stepName(step)}});
  }
  const auto elapsed = context.doneAt().utcMilliseconds - timer->startedAt.utcMilliseconds;
  const double left = timer->minutes - static_cast<double>(elapsed) / 60000.0;
  if (left <= 0) return {};
  return fail(ErrorCode::Refused, "workshop.timer_running", "step",
              {{"step", job.stepName(step)}, {"minutes", fixedDecimal(left, 0)}});
}

Result<void> markDone(Context& context, std::size_t step, const DoStep& action) {
  const auto kind = context.job().steps[step].step->kind;
  if (kind == procedures::StepKind::Hold) {
    return fail(ErrorCode::Refused, "workshop.hold_is_answered", "step",
                {{"step", context.job().stepName(step)}});
  }
  if (auto elapsed = timerElapsed(context, step); !elapsed) return failAs(elapsed);
  const auto refusals = lacking(context.job(), step);
  if (!refusals.empty()) return refuse("workshop.step_lacks", refusals);
  return completeStep(context, step, StepAction::Done, action.text.value_or(""));
}

Result<const Revision<model::SpecItem>*> torqueSpec(const Context& context,
                                                    const procedures::TorqueSpec& torque) {
  const auto* spec = context.shop().spec(context.job().opened.vehicle, torque.fasteners);
  if (spec == nullptr || !(spec->fact.value || spec->fact.min)) {
    return fail(ErrorCode::Missing, "workshop.torque_not_on_file", torque.fasteners,
                {{"key", torque.fasteners}, {"name", torque.name}});
  }
  if (!spec->fact.count) {
    return fail(ErrorCode::Missing, "workshop.spec_needs_count", torque.fasteners,
                {{"key", torque.fasteners}, {"name", torque.name}});
  }
  return spec;
}

/// The wrench must be able to set the value: refused outside its range.
Result<const Revision<model::Instrument>*> wrenchFor(const Context& context,
                                                     const std::string& name,
                                                     const TypedQuantity& set) {
  const auto* wrench = context.shop().instrumentByName(name);
  if (wrench == nullptr || wrench->fact.type != model::InstrumentKind::TorqueWrench) {
    return fail(ErrorCode::NotFound, "workshop.no_wrench", "wrench", {{"text", name}});
  }
  const auto& range = wrench->fact;
  if (rangeOf(range, set) != WrenchRange::Fits) {
    return fail(ErrorCode::OutOfRange, "workshop.wrench_out_of_range", "wrench",
                {{"wrench", name},
                 {"set", set.text()},
                 {"min", range.rangeMin ? range.rangeMin->text() : ""},
                 {"max", range.rangeMax ? range.rangeMax->text() : ""}});
  }
  return wrench;
}

/// The set value must be the sheet's figure times the stage; a slip of ten is stopped here.
Result<void> setAgrees(const Context& context, std::size_t step, const TypedQuantity& set,
                       const model::SpecItem& spec, double fraction) {
  const double low = (spec.value ? spec.value : spec.min)->si * fraction;
  const double high = (spec.max ? spec.max : spec.value ? spec.value : spec.min)->si * fraction;
  const double slack = std::max(kSetAgreesWithin * low, set.roundingHalfWidthSi());
  if (set.si >= low - slack && set.si <= std::max(low, high) + slack) return {};
  if (context.job().overridden("torque_set", step)) return {};
  const auto unit = findUnit(QuantityKind::Torque, set.unit);
  return fail(ErrorCode::Refused, "workshop.torque_set_differs", "set",
              {{"set", set.text()},
               {"expected", unit ? displayText(low, *unit) : fixedDecimal(low, 1) + " N m"},
               {"key", spec.key}});
}

std::string calibrationWord(const model::Instrument& instrument, const Timestamp& day) {
  const measure::CalibrationDates dates{instrument.calibratedOn, instrument.calibrationDue};
  return std::string(word(measure::calibrationState(dates, localDate(day))));
}

struct Stage {
  std::int64_t number = 1;
  std::int64_t of = 1;
  double fraction = 1.0;
};

Result<Stage> stageOf(const MarkTorque& action, const procedures::TorqueSpec& torque) {
  Stage stage;
  stage.of = std::max<std::int64_t>(1, static_cast<std::int64_t>(torque.stages.size()));
  stage.number = action.stage.value_or(stage.of);
  if (stage.number < 1 || stage.number > stage.of) {
    return fail(ErrorCode::OutOfRange, "workshop.no_such_stage", "stage",
                {{"text", std::to_string(stage.number)}, {"stages", std::to_string(stage.of)}});
  }
  if (!torque.stages.empty()) {
    stage.fraction = torque.stages[static_cast<std::size_t>(stage.number - 1)];
  }
  return stage;
}

Result<TypedQuantity> setValue(const MarkTorque& action, Context& context,
                               const model::SpecItem& spec, double fraction) {
  const TypedQuantity& figure = spec.value ? *spec.value : *spec.min;
  if (action.set) {
    return readQuantity(context, std::string_view(*action.set), "set", QuantityKind::Torque,
                        figure.unit);
  }
  if (fraction == 1.0) return figure;
  const auto unit =
      findUnit(QuantityKind::Torque, figure.unit).value_or(defaultUnit(QuantityKind::Torque));
  return readQuantity(context, std::string_view(displayText(figure.si * fraction, unit)), "set",
                      QuantityKind::Torque, figure.unit);
}

/// The ledger follows the wrench: torqued when the group is finished, hand-tight with a count
/// before.
void moveTorquedItem(Context& context, std::size_t step, const model::TorqueCheck& check) {
  const auto& torque = *context.job().steps[step].step->torque;
  const auto side = context.job().steps[step].side;
  if (torque.item.empty()) return;
  const auto& ledger = context.job().ledger;
  const auto item = std::find_if(ledger.begin(), ledger.end(), [&](const LedgerView& view) {
    return view.item == torque.item && view.side == side;
  });
  const std::string name = item == ledger.end() ? torque.name : item->name;
  const bool finished = check.stage == check.stages && check.done == check.count;
  const auto state = finished ? model::LedgerState::Torqued : model::LedgerState::HandTight;
  context.add(model::LedgerMove{torque.item, name, model::LedgerKind::Removed, state, true,
                                check.done, check.count, ""},
              context.placeOf(step));
}

const procedures::Observe* observeOf(const procedures::Step& step, const std::string& key) {
  const auto found = std::find_if(step.observe.begin(), step.observe.end(),
                                  [&](const auto& observe) { return observe.key == key; });
  return found == step.observe.end() ? nullptr : &*found;
}

Result<void> knownWord(const procedures::Observe& observe, const std::string& value) {
  std::string choices;
  for (const auto& choice : observe.choices) {
    if (choice.word == value) return {};
    choices += (choices.empty() ? "" : ", ") + choice.word;
  }
  return fail(ErrorCode::InvalidInput, "json.not_one_of", "value",
              {{"text", value}, {"choices", choices}});
}

/// A decided pull of the same step is looked at again once what was felt is known.
Result<void> pullAgain(Context& context, std::size_t step) {
  const StepView& view = context.job().steps[step];
  if (!view.step->measure || !view.step->measure->drivesRounds) return {};
  for (auto it = context.job().series.rbegin(); it != context.job().series.rend(); ++it) {
    const bool here = it->run == context.job().runs[view.run].id && it->step == view.step->id &&
                      it->side == view.side;
    if (here) return followPull(context, *it, step);
  }
  return {};
}

}  // namespace

TypedQuantity stackTotal(const mechanics::ShimStack& stack) {
  return {QuantityKind::Length, fullPrecision(inMillimetres(stack.total)), "mm", stack.total.si()};
}

Result<void> act(const DoStep& action, Context& context) {
  auto step = workStep(context);
  const StepAction mark = action.action.value_or(StepAction::Done);
  if (mark == StepAction::Reopened && context.step() && !context.job().closed) {
    return completeStep(context, *context.step(), mark, action.text.value_or(""));
  }
  if (!step) return failAs(step);
  if (mark == StepAction::Done) return markDone(context, *step, action);
  if (mark == StepAction::NotApplicable) {
    if (context.job().steps[*step].step->kind == procedures::StepKind::Hold) {
      return fail(ErrorCode::Refused, "workshop.hold_is_answered", "step",
                  {{"step", context.job().stepName(*step)}});
    }
    if (!action.text || action.text->empty()) return missing("text");
  }
  return completeStep(context, *step, mark, action.text.value_or(""));
}

Result<void> act(const Observe& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const StepView& view = context.job().steps[*step];
  const auto* observe = observeOf(*view.step, action.key);
  if (observe == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.not_observed_here", "key", {{"text", action.key}});
  }
  if (auto known = knownWord(*observe, action.value); !known) return failAs(known);
  const auto side = view.side;
  context.add(model::Observation{action.key, action.value, action.text.value_or("")},
              context.placeOf(*step));
  if (auto again = context.refresh(); !again) return failAs(again);
  if (auto ready = completeIfReady(context, *step); !ready) return failAs(ready);
  if (side && wornUnrenewed(context.job(), *side)) return followWear(context, *side);
  return pullAgain(context, *step);
}

Result<void> act(const MarkTorque& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const auto& torque = context.job().steps[*step].step->torque;
  if (!torque) {
    return fail(ErrorCode::NotFound, "workshop.no_torque_here", "step",
                {{"step", context.job().stepName(*step)}});
  }
  auto spec = torqueSpec(context, *torque);
  if (!spec) return failAs(spec);
  const model::SpecItem& item = (*spec)->fact;
  auto stage = stageOf(action, *torque);
  if (!stage) return failAs(stage);
  auto set = setValue(action, context, item, stage->fraction);
  if (!set) return failAs(set);
  if (auto agrees = setAgrees(context, *step, *set, item, stage->fraction); !agrees) {
    return failAs(agrees);
  }
  auto wrench = wrenchFor(context, action.wrench, *set);
  if (!wrench) return failAs(wrench);
  const std::int64_t count = item.count.value_or(1);
  const std::int64_t done = action.done.value_or(count);
  if (done < 0 || done > count) {
    return fail(ErrorCode::OutOfRange, "workshop.more_than_count", "done",
                {{"text", std::to_string(done)}, {"count", std::to_string(count)}});
  }
  model::TorqueCheck check;
  check.group = torque->fasteners;
  check.spec = (*spec)->entry;
  check.set = std::move(*set);
  check.wrench = (*wrench)->entry;
  check.stage = stage->number;
  check.stages = stage->of;
  check.done = done;
  check.count = count;
  check.pattern = item.pattern;
  check.calibration = calibrationWord((*wrench)->fact, context.doneAt());
  if (check.calibration != "ok") {
    context.tell("wrench_calibration", {{"wrench", action.wrench}, {"state", check.calibration}});
  }
  context.add(check, context.placeOf(*step));
  moveTorquedItem(context, *step, check);
  if (auto again = context.refresh(); !again) return failAs(again);
  return completeIfReady(context, *step);
}

Result<void> act(const MoveLedger& action, Context& context) {
  using model::LedgerState;
  if (action.item.empty()) return missing("item");
  if (context.job().closed) return fail(ErrorCode::Refused, "workshop.job_closed", "job");
  if (action.state == LedgerState::LeftOff && (!action.reason || action.reason->empty())) {
    return missing("reason");
  }
  const Place place = context.place();
  const auto& ledger = context.job().ledger;
  const auto known = std::find_if(ledger.begin(), ledger.end(), [&](const LedgerView& view) {
    return view.item == action.item && view.side == place.side;
  });
  model::LedgerMove move;
  move.item = action.item;
  move.name = action.name.value_or(known == ledger.end() ? action.item : known->name);
  const bool putOn = action.state == LedgerState::On || action.state == LedgerState::TakenOff;
  move.type = putOn ? model::LedgerKind::PutOn : model::LedgerKind::Removed;
  if (known != ledger.end() && known->type != move.type && action.state != LedgerState::LeftOff) {
    return fail(ErrorCode::Conflict, "workshop.ledger_kind", "state",
                {{"item", move.name}, {"state", std::string(wordOf(action.state))}});
  }
  move.state = action.state;
  move.fastened = action.fastened.value_or(known != ledger.end() && known->fastened);
  move.done = action.done;
  move.count = action.count;
  move.reason = action.reason.value_or("");
  context.add(std::move(move), place);
  return {};
}

Result<void> act(const RecordPack& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const StepView& view = context.job().steps[*step];
  if (!view.step->shimPack || !view.side) {
    return fail(ErrorCode::NotFound, "workshop.no_pack_here", "step",
                {{"step", context.job().stepName(*step)}});
  }
  if (!action.shims && !action.measured) return missing("shims");
  model::ShimPack pack;
  pack.role = action.role;
  pack.place = action.place.value_or(model::ShimPlace::Top);
  auto measured = readQuantity(context, action.measured, "measured", QuantityKind::Length);
  if (!measured) return failAs(measured);
  pack.measured = std::move(*measured);
  if (action.shims) {
    auto stack = mechanics::parseStack(*action.shims, "shims");
    if (!stack) return failAs(stack);
    pack.shims = *action.shims;
    pack.count = static_cast<std::int64_t>(stack->shims.size());
    pack.total = stackTotal(*stack);
  } else {
    pack.total = *pack.measured;
  }
  if (action.instrument) {
    const auto* instrument = context.shop().instrumentByName(*action.instrument);
    if (instrument == nullptr) {
      return fail(ErrorCode::NotFound, "workshop.no_instrument", "instrument",
                  {{"text", *action.instrument}});
    }
    pack.instrument = instrument->entry;
  }
  context.add(std::move(pack), context.placeOf(*step));
  if (auto again = context.refresh(); !again) return failAs(again);
  return completeIfReady(context, *step);
}

Result<void> act(const StartTimer& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const auto& definition = *context.job().steps[*step].step;
  if (!definition.waitMinutes) {
    return fail(ErrorCode::NotFound, "workshop.no_timer_here", "step",
                {{"step", context.job().stepName(*step)}});
  }
  auto time = readQuantity(context, action.time, "time", QuantityKind::Duration);
  if (!time) return failAs(time);
  const double minutes = *time ? (*time)->si / 60.0 : *definition.waitMinutes;
  context.add(model::TimerStarted{minutes, definition.title}, context.placeOf(*step));
  return {};
}

Result<void> act(const OverrideRule& action, Context& context) {
  if (action.why.empty()) return missing("why");
  if (!context.step()) return fail(ErrorCode::Missing, "workshop.step_needed", "step");
  if (context.job().closed) return fail(ErrorCode::Refused, "workshop.job_closed", "job");
  constexpr std::string_view kRules[] = {"order", "wait", "not_proved", "torque_set"};
  if (std::find(std::begin(kRules), std::end(kRules), action.rule) == std::end(kRules)) {
    // Support, pedal and wheel nuts have no override; neither has any other hold.
    return fail(ErrorCode::Refused, "workshop.no_such_override", "rule",
                {{"text", action.rule}, {"choices", "order, wait, not_proved, torque_set"}});
  }
  context.add(model::Override{action.rule, context.job().stepName(*context.step()), action.why},
              context.placeOf(*context.step()));
  context.tell("overridden", {{"rule", action.rule}});
  return {};
}

Result<void> act(const RecordRoadTest& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const auto& spec = context.job().steps[*step].step->roadTest;
  if (!spec) {
    return fail(ErrorCode::NotFound, "workshop.no_road_test_here", "step",
                {{"step", context.job().stepName(*step)}});
  }
  const auto refusals = againstDrive(context.job());
  if (!refusals.empty()) return refuse("workshop.no_drive", refusals);
  model::RoadTest test;
  test.when = spec->when;
  test.shake = action.shake;
  test.speedSource = action.speedSource;
  test.selfReturn = action.selfReturn.value_or("");
  test.text = action.text.value_or("");
  auto onset = readQuantity(context, action.onset, "onset", QuantityKind::Speed);
  if (!onset) return failAs(onset);
  auto release = readQuantity(context, action.release, "release", QuantityKind::Speed);
  if (!release) return failAs(release);
  if ((*onset || *release) && !test.speedSource) return missing("speed_source");
  test.onset = std::move(*onset);
  test.release = std::move(*release);
  const bool shakes =
      test.when == model::RoadTestWhen::After && test.shake != model::ShakeResult::None;
  context.add(std::move(test), context.placeOf(*step));
  if (auto again = context.refresh(); !again) return failAs(again);
  if (auto ready = completeIfReady(context, *step); !ready) return failAs(ready);
  return shakes ? followRoadTest(context) : Result<void>{};
}

}  // namespace sw::workshop
