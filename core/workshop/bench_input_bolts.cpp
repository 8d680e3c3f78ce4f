// SPDX-License-Identifier: GPL-3.0-or-later
// The fasteners of a torque step and the wrenches of the shop.
#include <array>

#include "workshop/bench_known.h"

namespace sw::workshop {

namespace {

using model::Json;

/// The line of the fasteners the step tightens.
const model::SpecItem* fasteners(const BenchKnown& known) {
  const StepView* step = known.step();
  return step != nullptr && step->step->torque ? known.spec(step->step->torque->fasteners)
                                               : nullptr;
}

Json tightenPattern(const BenchKnown& known) {
  Json input = Json::object();
  const model::SpecItem* item = fasteners(known);
  if (item == nullptr) return input;
  if (item->count) input["fasteners"] = *item->count;
  put(input, "torque", item->value);
  const auto& stages = known.step()->step->torque->stages;
  if (!stages.empty()) input["stages"] = stages;
  return input;
}

Json torqueOf(const model::SpecItem& item) {
  Json torque = Json::object();
  put(torque, "min", item.min ? item.min : item.value);
  put(torque, "max", item.max);
  return torque;
}

Json castleNut(const BenchKnown& known) {
  Json input = Json::object();
  const model::SpecItem* item = fasteners(known);
  if (item == nullptr) return input;
  if (!item->fastenerSize.empty()) input["thread"] = item->fastenerSize;
  input["torque"] = torqueOf(*item);
  return input;
}

Json prevailingTorque(const BenchKnown& known) {
  Json input = Json::object();
  if (const model::SpecItem* item = fasteners(known)) input["torque"] = torqueOf(*item);
  return input;
}

/// The wheels are fitted in this job: its odometer is theirs.
Json wheelNutRecheck(const BenchKnown& known) {
  Json input = Json::object();
  put(input, "odometer", known.job().opened.odometer);
  return input;
}

/// Thread, class and torque.
Json bolt(const BenchKnown& known) {
  Json input = Json::object();
  const model::SpecItem* item = fasteners(known);
  if (item == nullptr) return input;
  if (!item->fastenerSize.empty()) input["thread"] = item->fastenerSize;
  if (!item->fastenerClass.empty()) input["strength_class"] = item->fastenerClass;
  put(input, "torque", item->value);
  return input;
}

Json wrenchSetting(const BenchKnown& known) {
  Json input = Json::object();
  if (const model::SpecItem* item = fasteners(known)) put(input, "torque", item->value);
  Json wrenches = Json::array();
  for (const auto* revision : known.shop().instruments()) {
    const model::Instrument& fact = revision->fact;
    if (fact.type != model::InstrumentKind::TorqueWrench || !fact.active || !fact.rangeMax) {
      continue;
    }
    Json wrench = {{"name", fact.name}, {"maximum", fact.rangeMax->text()}};
    put(wrench, "lowest_mark", fact.rangeMin);
    wrench["graduation"] = fact.graduation.text();
    if (fact.calibratedOn) wrench["calibrated_on"] = toIso(*fact.calibratedOn);
    wrenches.push_back(std::move(wrench));
  }
  if (!wrenches.empty()) input["wrenches"] = std::move(wrenches);
  return input;
}

constexpr std::array kSources{BenchSource{"wrench-setting", wrenchSetting},
                              BenchSource{"torque-plausibility", bolt},
                              BenchSource{"clamp-force", bolt},
                              BenchSource{"castle-nut", castleNut},
                              BenchSource{"prevailing-torque", prevailingTorque},
                              BenchSource{"wheel-nut-recheck", wheelNutRecheck},
                              BenchSource{"tighten-pattern", tightenPattern}};

}  // namespace

std::span<const BenchSource> boltSources() {
  return kSources;
}

}  // namespace sw::workshop
