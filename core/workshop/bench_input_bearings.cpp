// SPDX-License-Identifier: GPL-3.0-or-later
// Wheel bearings, and the wheel rocked to tell them from the swivel.
#include <array>

#include "workshop/bench_known.h"

namespace sw::workshop {

namespace {

using model::Json;
using procedures::Reads;

constexpr std::string_view kBearingFloatKey = "wheel_bearing.end_float";

Json wheelBearing(const BenchKnown& known) {
  Json input = Json::object();
  // The kind is what the vehicle's arrangement says; where nobody said, it is asked.
  const auto kind = known.vehicle().arrangement.wheelBearing;
  const bool pull = kind == model::WheelBearingSetting::Preload;
  if (kind) {
    input["kind"] = pull                                           ? "preload_pull"
                    : kind == model::WheelBearingSetting::EndFloat ? "end_float"
                                                                   : "unit_without_setting";
  }
  if (const auto* limit = known.spec(kBearingFloatKey); limit != nullptr && kind && !pull) {
    input["limit"] = bandOf(*limit);
  }
  const SeriesView* series = known.seriesHere();
  const auto quantity = pull ? QuantityKind::Force : QuantityKind::Length;
  if (series == nullptr || series->fact.quantity != quantity) return input;
  Json readings = usedTexts(*series);
  if (!readings.empty()) input["readings"] = std::move(readings);
  Json instrument = known.instrumentOf(*series);
  if (!instrument.empty()) input["instrument"] = std::move(instrument);
  return input;
}

Json rockTest(const BenchKnown& known) {
  Json input = Json::object();
  if (const auto diameter = fullMean(known.latest(Reads::RockDiameter, known.side()))) {
    input["diameter"] = siText(*diameter, QuantityKind::Length);
  }
  const SeriesView* on = known.latest(Reads::RockBrakeOn, known.side());
  const SeriesView* off = known.latest(Reads::RockBrakeOff, known.side());
  if (on != nullptr) input["brake_on"] = usedTexts(*on);
  if (off != nullptr) input["brake_off"] = usedTexts(*off);
  // One instrument is asked for: the two are subtracted.
  const SeriesView* read = on != nullptr ? on : off;
  if (read == nullptr || (off != nullptr && off->fact.instrument != read->fact.instrument)) {
    return input;
  }
  Json instrument = known.instrumentOf(*read);
  if (!instrument.empty()) input["instrument"] = std::move(instrument);
  return input;
}

Json playLimits(const BenchKnown& known) {
  Json input = Json::object();
  if (const auto diameter = fullMean(known.latest(Reads::RockDiameter, known.side()))) {
    input["wheel_diameter"] = siText(*diameter, QuantityKind::Length);
  }
  return input;
}

constexpr std::array kSources{BenchSource{"wheel-bearing", wheelBearing},
                              BenchSource{"rock-test", rockTest},
                              BenchSource{"play-limits", playLimits}};

}  // namespace

std::span<const BenchSource> bearingSources() {
  return kSources;
}

}  // namespace sw::workshop
