// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/torque_plan.h"

#include <algorithm>
#include <cmath>

#include "measure/instrument.h"
#include "units/format.h"

namespace sw::workshop {

namespace {

TypedQuantity setOf(const TypedQuantity& figure, double fraction) {
  if (fraction == 1.0) return figure;
  const auto unit =
      findUnit(QuantityKind::Torque, figure.unit).value_or(defaultUnit(QuantityKind::Torque));
  const double si = figure.si * fraction;
  const std::string text = displayText(si, unit);
  return {QuantityKind::Torque, text.substr(0, text.find(' ')), figure.unit, si};
}

void markDone(const JobState& job, std::size_t step, TorquePlan& plan) {
  for (const model::Entry* entry : job.valid) {
    const auto* check = model::as<model::TorqueCheck>(*entry);
    if (check == nullptr || !job.belongsTo(*entry, step)) continue;
    for (TorqueStage& stage : plan.stages) {
      if (stage.number < check->stage) stage.finished = true;
      if (stage.number > check->stage) {  // begun again from the earlier stage
        stage.finished = false;
        stage.done = 0;
      }
      if (stage.number != check->stage) continue;
      stage.done = check->done;
      stage.finished = check->done == check->count;
    }
  }
  while (plan.next < plan.stages.size() && plan.stages[plan.next].finished) ++plan.next;
}

/// To the nearest mark of the wrench, in its own unit.
TypedQuantity onWrench(const model::Instrument& wrench, double si) {
  const TypedQuantity& step = wrench.graduation;
  const auto unit =
      findUnit(QuantityKind::Torque, step.unit).value_or(defaultUnit(QuantityKind::Torque));
  const double marked = std::round(si / step.si) * step.si;
  const std::size_t point = step.number.find('.');
  const int places =
      point == std::string::npos ? 0 : static_cast<int>(step.number.size() - point - 1);
  return {QuantityKind::Torque, fixedDecimal(marked / unit.toSi, places), step.unit, marked};
}

int rank(const WrenchChoice& choice) {
  const int range = choice.range == WrenchRange::Fits ? 0 : 10;
  if (choice.calibration == "ok") return range;
  return range + (choice.calibration == "due" ? 1 : 2);
}

}  // namespace

WrenchRange rangeOf(const model::Instrument& wrench, const TypedQuantity& set) {
  if (wrench.rangeMax && set.si > wrench.rangeMax->si * (1 + 1e-9)) return WrenchRange::TooSmall;
  if (wrench.rangeMin && set.si < wrench.rangeMin->si * (1 - 1e-9)) return WrenchRange::TooLarge;
  return WrenchRange::Fits;
}

Result<TorquePlan> torquePlan(const JobState& job, const ShopState& shop, std::size_t step) {
  const auto& torque = job.steps[step].step->torque;
  if (!torque) {
    return fail(ErrorCode::NotFound, "workshop.no_torque_here", "step",
                {{"step", job.stepName(step)}});
  }
  const auto* line = shop.spec(job.opened.vehicle, torque->fasteners);
  if (line == nullptr || !(line->fact.value || line->fact.min)) {
    return fail(ErrorCode::Missing, "workshop.torque_not_on_file", torque->fasteners,
                {{"key", torque->fasteners}, {"name", torque->name}});
  }
  if (!line->fact.count) {
    return fail(ErrorCode::Missing, "workshop.spec_needs_count", torque->fasteners,
                {{"key", torque->fasteners}, {"name", torque->name}});
  }
  TorquePlan plan;
  plan.spec = &line->fact;
  plan.count = *line->fact.count;
  plan.pattern = line->fact.pattern;
  const TypedQuantity& figure = line->fact.value ? *line->fact.value : *line->fact.min;
  const std::vector<double> fractions =
      torque->stages.empty() ? std::vector<double>{1.0} : torque->stages;
  for (const double fraction : fractions) {
    plan.stages.push_back({static_cast<std::int64_t>(plan.stages.size()) + 1, fraction,
                           setOf(figure, fraction), 0, false});
  }
  markDone(job, step, plan);
  return plan;
}

std::vector<WrenchChoice> wrenchesFor(const ShopState& shop, const TypedQuantity& set,
                                      const Timestamp& day) {
  std::vector<WrenchChoice> choices;
  for (const auto* instrument : shop.instruments()) {
    const model::Instrument& fact = instrument->fact;
    if (!fact.active || fact.type != model::InstrumentKind::TorqueWrench) continue;
    const measure::CalibrationDates dates{fact.calibratedOn, fact.calibrationDue};
    choices.push_back({fact.name, rangeOf(fact, set),
                       std::string(word(measure::calibrationState(dates, localDate(day)))),
                       onWrench(fact, set.si)});
  }
  std::stable_sort(choices.begin(), choices.end(),
                   [](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return choices;
}

}  // namespace sw::workshop
