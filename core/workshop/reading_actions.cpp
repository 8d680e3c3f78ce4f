// SPDX-License-Identifier: GPL-3.0-or-later
// Readings: one by one or a whole line, in a series that shares instrument, state and limit.
#include <algorithm>
#include <cmath>

#include "units/format.h"
#include "workshop/judging.h"
#include "workshop/rules.h"
#include "workshop/runs.h"

namespace sw::workshop {

namespace {

using model::PullState;
using model::ReadingUse;

constexpr std::int64_t kMostReadings = 100;

/// The state the step has produced, with what the user says differs.
std::optional<PullState> stateOf(const TakeReadings& action, const procedures::MeasureSpec& spec) {
  if (spec.quantity != QuantityKind::Force) return std::nullopt;
  PullState state = spec.state.value_or(PullState{});
  state.seal = action.seal.value_or(state.seal);
  state.rods = action.rods.value_or(state.rods);
  state.damper = action.damper.value_or(state.damper);
  state.sealant = action.sealant.value_or(state.sealant);
  state.grease = action.grease.value_or(state.grease);
  state.movement = action.movement.value_or(state.movement);
  state.position = action.position.value_or(state.position);
  return state;
}

Result<const Revision<model::Instrument>*> instrumentFor(const Context& context,
                                                         const TakeReadings& action,
                                                         QuantityKind kind) {
  const auto* instrument = context.shop().instrumentByName(action.instrument);
  if (instrument == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_instrument", "instrument",
                {{"text", action.instrument}});
  }
  if (instrument->fact.graduation.kind != kind) {
    return fail(ErrorCode::InvalidInput, "workshop.instrument_wrong_kind", "instrument",
                {{"text", action.instrument}, {"expected", std::string(word(kind))}});
  }
  return instrument;
}

Result<model::Series> newSeries(const TakeReadings& action, Context& context,
                                const procedures::MeasureSpec& spec) {
  model::Series series;
  series.quantity = spec.quantity;
  series.limitKey = spec.limit;
  series.state = stateOf(action, spec);
  series.planned = action.planned.value_or(spec.planned);
  series.settling = spec.settling;
  series.safety = spec.safety;
  if (series.planned < 1 || series.planned > kMostReadings) {
    return fail(ErrorCode::OutOfRange, "workshop.planned_out_of_range", "planned",
                {{"text", std::to_string(series.planned)}});
  }
  auto instrument = instrumentFor(context, action, spec.quantity);
  if (!instrument) return failAs(instrument);
  series.instrument = (*instrument)->entry;
  if (const auto* check = context.shop().check((*instrument)->fact.instrument)) {
    series.instrumentCheck = check->entry;
  }
  const auto* limit =
      spec.limit.empty() ? nullptr : context.shop().spec(context.job().opened.vehicle, spec.limit);
  if (limit != nullptr && series.state && !stateFits(limit->fact, *series.state)) {
    context.tell("state_differs", {{"limit", spec.limit}});
    limit = nullptr;
  }
  if (limit != nullptr) series.limit = limit->entry;
  const std::optional<std::string> angle =
      action.angleWithin ? action.angleWithin : spec.angleWithin;
  auto within = readQuantity(context, angle, "angle_within", QuantityKind::Angle);
  if (!within) return failAs(within);
  series.angleWithin = std::move(*within);
  auto arm = readQuantity(context, action.arm, "arm", QuantityKind::Length);
  if (!arm) return failAs(arm);
  series.arm = std::move(*arm);
  return series;
}

/// The series these readings continue: the step's newest with the same instrument and state.
const SeriesView* continued(const JobState& job, std::size_t step, const model::Series& wanted,
                            bool planGiven) {
  const SeriesView* newest = job.newestSeries(step);
  if (newest == nullptr || newest->fact.instrument != wanted.instrument ||
      newest->fact.state != wanted.state || newest->fact.limit != wanted.limit) {
    return nullptr;
  }
  const bool samePlan = !planGiven || newest->fact.planned == wanted.planned;
  return samePlan ? newest : nullptr;
}

/// The line of readings in the unit of the instrument, each with a plausible size.
Result<std::vector<TypedQuantity>> readLine(Context& context, const TakeReadings& action,
                                            const Revision<model::Instrument>& instrument) {
  auto parsed = parseSeries(action.readings, {"readings", instrument.fact.graduation.kind,
                                              instrument.fact.graduation.unit});
  if (!parsed) return failAs(parsed);
  std::vector<TypedQuantity> values;
  bool bare = false;
  for (auto& one : *parsed) {
    for (const ReadNote note : one.notes) {
      bare = bare || note == ReadNote::BareNumber;
      if (note != ReadNote::MassAsForce) continue;
      context.tell("read_as",
                   {{"field", "readings"}, {"how", "mass_as_force"}, {"value", one.value.text()}});
    }
    const auto& range = instrument.fact;
    if (one.value.si < 0 || (range.rangeMax && one.value.si > range.rangeMax->si * (1 + 1e-9))) {
      return fail(ErrorCode::OutOfRange, "workshop.reading_off_scale", "readings",
                  {{"text", one.value.text()},
                   {"max", range.rangeMax ? range.rangeMax->text() : ""},
                   {"instrument", range.name}});
    }
    values.push_back(std::move(one.value));
  }
  if (bare) {
    context.tell("read_as",
                 {{"field", "readings"}, {"how", "bare_number"}, {"value", values.front().text()}});
  }
  return values;
}

void tellReadings(Context& context, const SeriesView& series) {
  context.tell("readings_taken", {{"series", std::to_string(series.id.value)},
                                  {"used", std::to_string(series.usedCount())},
                                  {"planned", std::to_string(series.fact.planned)}});
}

}  // namespace

Result<void> act(const TakeReadings& action, Context& context) {
  auto step = workStep(context);
  if (!step) return failAs(step);
  const auto& spec = context.job().steps[*step].step->measure;
  if (!spec) {
    return fail(ErrorCode::NotFound, "workshop.nothing_measured_here", "step",
                {{"step", context.job().stepName(*step)}});
  }
  auto wanted = newSeries(action, context, *spec);
  if (!wanted) return failAs(wanted);
  auto instrument = instrumentFor(context, action, spec->quantity);
  if (!instrument) return failAs(instrument);
  auto values = readLine(context, action, **instrument);
  if (!values) return failAs(values);

  const SeriesView* going = continued(context.job(), *step, *wanted, action.planned.has_value());
  const bool decided =
      going != nullptr && going->usedCount() >= static_cast<std::size_t>(going->fact.planned);
  if (action.newSeries.value_or(false)) {
    // The newest series is the one that counts; starting afresh after a verdict needs a reason.
    if (decided && !action.why) return fail(ErrorCode::Missing, "workshop.field_needed", "why");
    going = nullptr;
  }
  const Place place = context.placeOf(*step);
  std::int64_t already = 0;
  model::EntryId series;
  if (going != nullptr) {
    series = going->id;
    already = static_cast<std::int64_t>(going->readings.size());
  } else {
    if (action.why) context.add(model::Note{"New series: " + *action.why}, place);
    series = context.add(*wanted, place);
  }
  for (auto& value : *values) {
    const auto use = already++ < wanted->settling ? ReadingUse::Settling : ReadingUse::Used;
    context.add(model::Reading{series, std::move(value), use}, place);
  }
  if (auto again = context.refresh(); !again) return failAs(again);
  if (auto judged = judgeAgain(context, series); !judged) return failAs(judged);
  tellReadings(context, *context.job().findSeries(series));
  if (auto ready = completeIfReady(context, *step); !ready) return failAs(ready);
  const SeriesView* now = context.job().findSeries(series);
  if (now->usedCount() < static_cast<std::size_t>(now->fact.planned)) return {};
  if (auto peak = lookForPeak(context, *step); !peak) return failAs(peak);
  return followPull(context, *context.job().findSeries(series), *step);
}

}  // namespace sw::workshop
