// SPDX-License-Identifier: GPL-3.0-or-later
// The vehicle itself: its tyres, at what speed it shakes, and the stands under it.
#include <array>

#include "workshop/bench_known.h"

namespace sw::workshop {

namespace {

using model::Json;

constexpr std::string_view kFrontPressureKey = "tyre.front_pressure";

Json standLoad(const BenchKnown& known) {
  Json input = Json::object();
  if (const auto& load = known.vehicle().frontAxleLoad) {
    input["known_from"] = "vehicle_documents";
    input["axle_load"] = load->text();
  }
  return input;
}

Json tyre(const BenchKnown& known) {
  Json input = Json::object();
  if (!known.vehicle().tyreFitted.empty()) input["designation"] = known.vehicle().tyreFitted;
  if (const auto* pressure = known.spec(kFrontPressureKey)) put(input, "pressure", pressure->value);
  return input;
}

/// Where the shake begins: on this step's drive, else as complained of.
struct Onset {
  std::optional<TypedQuantity> speed;
  std::optional<model::SpeedSource> source;
};

Onset onsetOf(const BenchKnown& known) {
  Onset onset;
  const bool drive = known.step() != nullptr && known.step()->step->roadTest;
  for (const model::Entry* entry : known.job().valid) {
    const auto* test = model::as<model::RoadTest>(*entry);
    if (!drive || test == nullptr || test->when != known.step()->step->roadTest->when) continue;
    onset = {test->onset, test->speedSource};
  }
  const auto& complaint = known.job().complaint;
  if (!onset.speed && complaint) onset = {complaint->onsetRising, complaint->speedSource};
  return onset;
}

Json wheelFrequency(const BenchKnown& known) {
  Json input = Json::object();
  const model::Vehicle& vehicle = known.vehicle();
  if (!vehicle.tyreFitted.empty()) input["tyre_on"] = vehicle.tyreFitted;
  // A dial's speed is not the road's: without its source a speed says too little.
  const Onset onset = onsetOf(known);
  if (!onset.speed || !onset.source) return input;
  const bool dial = *onset.source == model::SpeedSource::Dial;
  if (dial && !vehicle.tyreOriginal.empty()) input["built_with_tyre"] = vehicle.tyreOriginal;
  input["speed_from"] = dial ? "dial" : "true";
  input["speeds"] = Json::array({onset.speed->text()});
  return input;
}

Json unbalance(const BenchKnown& known) {
  Json input = Json::object();
  if (!known.vehicle().tyreFitted.empty()) input["tyre_on"] = known.vehicle().tyreFitted;
  return input;
}

constexpr std::array kSources{BenchSource{"stand-load", standLoad}, BenchSource{"tyre", tyre},
                              BenchSource{"wheel-frequency", wheelFrequency},
                              BenchSource{"unbalance", unbalance}};

}  // namespace

std::span<const BenchSource> vehicleSources() {
  return kSources;
}

}  // namespace sw::workshop
