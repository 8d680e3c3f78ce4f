// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/bench_input.h"

#include <algorithm>
#include <array>

#include "workshop/bench_known.h"

namespace sw::workshop {

namespace {

using model::Json;

constexpr std::string_view kStartingForceKey = "swivel.starting_force";
constexpr std::string_view kBearingFloatKey = "wheel_bearing.end_float";
constexpr std::string_view kBearingPullKey = "wheel_bearing.preload_pull";
constexpr std::string_view kSwivelFloatKey = "swivel.end_float";
constexpr std::string_view kFrontPressureKey = "tyre.front_pressure";

}  // namespace

std::vector<std::string> benchFor(const StepView& step) {
  const procedures::Step& definition = *step.step;
  if (!definition.bench.empty()) return definition.bench;
  if (definition.torque) {
    std::vector<std::string> names{"wrench-setting", "torque-plausibility", "tighten-pattern",
                                   "clamp-force"};
    if (definition.torque->castellated) names.insert(names.begin() + 1, "castle-nut");
    return names;
  }
  if (definition.shimPack) {
    return definition.shimPack->role == model::PackRole::Fitted
               ? std::vector<std::string>{"shim-pack", "first-pack"}
               : std::vector<std::string>{"first-pack"};
  }
  if (definition.hold && definition.hold->key == "support") return {"stand-load"};
  if (!definition.measure) return {};
  const std::string& limit = definition.measure->limit;
  if (limit == kStartingForceKey || definition.measure->drivesRounds) {
    return {"shim-pack", "starting-force"};
  }
  if (limit == kBearingFloatKey || limit == kBearingPullKey) return {"wheel-bearing"};
  if (limit == kFrontPressureKey) return {"tyre", "wheel-frequency"};
  const auto& kinds = definition.measure->instruments;
  const bool feeler =
      std::find(kinds.begin(), kinds.end(), model::InstrumentKind::Feeler) != kinds.end();
  if (limit == kSwivelFloatKey || (limit.empty() && feeler)) return {"first-pack"};
  return {};
}

Json benchInput(const JobState& job, const ShopState& shop, std::string_view calculation,
                const BenchPlace& place) {
  const BenchKnown known(job, shop, place);
  for (const auto sources : {swivelSources(), bearingSources(), boltSources(), brakeSources(),
                             geometrySources(), vehicleSources()}) {
    for (const BenchSource& source : sources) {
      if (source.calculation == calculation) return source.input(known);
    }
  }
  return Json::object();
}

}  // namespace sw::workshop
