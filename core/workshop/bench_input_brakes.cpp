// SPDX-License-Identifier: GPL-3.0-or-later
// Brake discs: one disc of this side, or both discs of the axle.
#include <array>
#include <utility>

#include "compute/calculation.h"
#include "workshop/bench_known.h"
#include "workshop/spec_needs.h"

namespace sw::workshop {

namespace {

using model::Json;
using model::Side;
using procedures::Reads;

constexpr std::string_view kDiscardKey = "disc.min_thickness";
constexpr std::string_view kRunoutKey = "disc.runout";

/// The lower figure of a line, or the only one.
std::optional<TypedQuantity> lowest(const model::SpecItem* item) {
  if (item == nullptr) return std::nullopt;
  return item->min ? item->min : item->value;
}

std::optional<TypedQuantity> highest(const model::SpecItem* item) {
  if (item == nullptr) return std::nullopt;
  return item->max ? item->max : item->value;
}

void putInstrument(const BenchKnown& known, const SeriesView& series, Json& input) {
  Json instrument = known.instrumentOf(series);
  if (!instrument.empty()) input["instrument"] = std::move(instrument);
}

Json thicknessOf(const BenchKnown& known, std::optional<Side> side, Among runs) {
  Json input = Json::object();
  put(input, "discard", lowest(known.spec(kDiscardKey)));
  put(input, "variation_limit", highest(known.spec(kDiscVariationKey)));
  const SeriesView* series = known.latest(Reads::DiscThicknessRound, side, runs);
  if (series == nullptr) return input;
  putInstrument(known, *series, input);
  // Whether a caliper reached over the lip nobody wrote down.
  const auto* gauge = known.shop().revision<model::Instrument>(series->fact.instrument);
  if (gauge != nullptr && gauge->type == model::InstrumentKind::Micrometer) {
    input["gauge"] = "micrometer";
  }
  Json readings = roundTexts(series);
  if (!readings.empty()) input["readings"] = std::move(readings);
  return input;
}

Json runoutOf(const BenchKnown& known, std::optional<Side> side, Among runs) {
  Json input = Json::object();
  put(input, "runout_limit", highest(known.spec(kRunoutKey)));
  const SeriesView* series = known.latest(Reads::DiscRunoutRound, side, runs);
  if (series == nullptr) return input;
  putInstrument(known, *series, input);
  Json readings = roundTexts(series);
  if (!readings.empty()) input["readings"] = std::move(readings);
  return input;
}

/// The result of another calculation; nothing where that lacks something.
std::optional<Json> resultOf(std::string_view name, const Json& input) {
  const auto calculation = compute::findCalculation(name);
  if (!calculation) return std::nullopt;
  auto answer = compute::evaluate(*calculation, input);
  if (!answer) return std::nullopt;
  return std::move(answer->at("result"));
}

Json discThickness(const BenchKnown& known) {
  return thicknessOf(known, known.side(), Among::ThisRun);
}

Json discRunout(const BenchKnown& known) {
  return runoutOf(known, known.side(), Among::ThisRun);
}

/// The word of the disc's worst fault; nothing where it was not looked at, or where the answer is
/// none of those that decide by themselves.
std::optional<std::string> conditionOf(const BenchKnown& known, Side side) {
  constexpr std::array kWords{std::pair{"sound", "none"}, std::pair{"cracked", "cracks"},
                              std::pair{"blue", "blue_spots"},
                              std::pair{"corroded", "heavy_corrosion"}};
  const auto* seen = known.job().observed("disc_faces", side);
  if (seen == nullptr) return std::nullopt;
  for (const auto& [observed, word] : kWords) {
    if (seen->value == observed) return word;
  }
  return std::nullopt;
}

void putRunout(const BenchKnown& known, Side side, Json& disc) {
  if (const auto round = resultOf("disc-runout", runoutOf(known, side, Among::WholeJob))) {
    disc["runout"] = round->at("total").at("value");
    disc["runout_uncertainty"] = round->at("total").at("standard_uncertainty");
    disc["residual"] = round->at("residual");
    disc["residual_uncertainty"] = round->at("residual_standard_uncertainty");
    disc["first_order"] = round->at("tilt").at("amount");
    return;
  }
  const SeriesView* turns = known.latest(Reads::DiscRunoutTotal, side, Among::WholeJob);
  if (!fullMean(turns) || !turns->verdict) return;
  disc["runout"] = siText(turns->verdict->value, QuantityKind::Length);
  disc["runout_uncertainty"] = siText(turns->verdict->standardUncertainty, QuantityKind::Length);
}

Json discOf(const BenchKnown& known, Side side) {
  Json disc = {{"side", wordOf(side)}};
  if (const auto round = resultOf("disc-thickness", thicknessOf(known, side, Among::WholeJob))) {
    disc["minimum"] = round->at("minimum").at("value");
    disc["minimum_uncertainty"] = round->at("minimum").at("standard_uncertainty");
    disc["variation"] = round->at("variation").at("value");
    disc["variation_uncertainty"] = round->at("variation").at("standard_uncertainty");
  }
  putRunout(known, side, disc);
  if (const auto condition = conditionOf(known, side)) disc["condition"] = *condition;
  return disc;
}

Json discDecision(const BenchKnown& known) {
  Json input = Json::object();
  if (const auto mount = known.vehicle().arrangement.discMount) {
    input["mounting"] = *mount == model::DiscMount::Outside ? "outside_hub" : "behind_hub";
  }
  put(input, "discard", lowest(known.spec(kDiscardKey)));
  put(input, "machine_to", lowest(known.spec(kDiscMachineToKey)));
  put(input, "variation_limit", highest(known.spec(kDiscVariationKey)));
  put(input, "runout_limit", highest(known.spec(kRunoutKey)));
  input["discs"] = Json::array({discOf(known, Side::Left), discOf(known, Side::Right)});
  return input;
}

/// The disc as it sits on its mark is position 0; the second position is still to be read.
Json discIndex(const BenchKnown& known) {
  Json input = Json::object();
  put(input, "runout_limit", highest(known.spec(kRunoutKey)));
  // A disc over the studs turns by a wheel stud.
  const auto* nuts = known.spec(kWheelNutsKey);
  if (known.vehicle().arrangement.discMount == model::DiscMount::Outside && nuts != nullptr &&
      nuts->count) {
    input["studs"] = *nuts->count;
  }
  const auto round = resultOf("disc-runout", discRunout(known));
  if (!round) return input;
  const Json& tilt = round->at("tilt");
  input["runs"] = Json::array({{{"position", 0},
                                {"amount", tilt.at("amount")},
                                {"angle", tilt.at("angle")},
                                {"uncertainty", tilt.at("standard_uncertainty")}}});
  return input;
}

/// This visit. Those of earlier jobs are not taken over: nobody wrote down that it is the same
/// disc.
Json discWear(const BenchKnown& known) {
  Json input = Json::object();
  put(input, "discard", lowest(known.spec(kDiscardKey)));
  Json visit = Json::object();
  put(visit, "odometer", known.job().opened.odometer);
  const SeriesView* thinnest = known.latest(Reads::DiscThickness, known.side());
  if (fullMean(thinnest) && thinnest->verdict) {
    visit["minimum"] = siText(thinnest->verdict->value, QuantityKind::Length);
    visit["uncertainty"] = siText(thinnest->verdict->standardUncertainty, QuantityKind::Length);
  } else if (const auto round = resultOf("disc-thickness", discThickness(known))) {
    visit["minimum"] = round->at("minimum").at("value");
    visit["uncertainty"] = round->at("minimum").at("standard_uncertainty");
  }
  if (visit.contains("minimum")) input["visits"] = Json::array({std::move(visit)});
  return input;
}

Json runoutAtTrack(const BenchKnown& known) {
  Json input = Json::object();
  put(input, "runout_limit", highest(known.spec(kRunoutKey)));
  return input;
}

Json brakeTorqueVariation(const BenchKnown& known) {
  Json input = Json::object();
  if (const auto round = resultOf("disc-thickness", discThickness(known))) {
    input["thickness_variation"] = round->at("variation").at("value");
  }
  return input;
}

constexpr std::array kSources{BenchSource{"disc-thickness", discThickness},
                              BenchSource{"disc-runout", discRunout},
                              BenchSource{"disc-decision", discDecision},
                              BenchSource{"disc-index", discIndex},
                              BenchSource{"disc-wear", discWear},
                              BenchSource{"runout-at-track", runoutAtTrack},
                              BenchSource{"brake-torque-variation", brakeTorqueVariation}};

}  // namespace

std::span<const BenchSource> brakeSources() {
  return kSources;
}

}  // namespace sw::workshop
