// SPDX-License-Identifier: GPL-3.0-or-later
// The vehicle itself: its tyres and the stands under it.
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

constexpr std::array kSources{BenchSource{"stand-load", standLoad}, BenchSource{"tyre", tyre}};

}  // namespace

std::span<const BenchSource> vehicleSources() {
  return kSources;
}

}  // namespace sw::workshop
