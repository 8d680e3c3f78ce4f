// SPDX-License-Identifier: GPL-3.0-or-later
// Toe and what sets it.
#include <array>

#include "workshop/bench_known.h"

namespace sw::workshop {

namespace {

using model::Json;
using procedures::Reads;

constexpr std::string_view kToeKey = "toe.total";

enum class ToeWay { In, Out };

std::optional<ToeWay> wayOf(const model::Observation* seen) {
  if (seen == nullptr) return std::nullopt;
  if (seen->value == "toe_in") return ToeWay::In;
  if (seen->value == "toe_out") return ToeWay::Out;
  return std::nullopt;
}

double signOf(ToeWay way) {
  return way == ToeWay::In ? 1.0 : -1.0;
}

/// The toe readings this step is about, and the way that was seen beside them.
struct ToeSeen {
  const SeriesView* series = nullptr;
  std::optional<ToeWay> way;
  std::optional<std::string> total;  ///< toe-in positive; nothing without its way
};

ToeSeen toeSeen(const BenchKnown& known) {
  ToeSeen seen;
  seen.series = known.latest(Reads::ToeTotal, std::nullopt);
  if (seen.series == nullptr) return seen;
  seen.way = wayOf(known.observedBeside(*seen.series, "toe_direction"));
  const auto size = fullMean(seen.series);
  if (size && seen.way) seen.total = siText(signOf(*seen.way) * *size, QuantityKind::Length);
  return seen;
}

/// The sheet gives its figure without a sign; which way it means is known where it was compared
/// with a toe whose way was seen.
std::optional<ToeWay> wayOfSheet(const BenchKnown& known, const ToeSeen& seen) {
  if (!seen.way) return std::nullopt;
  const auto* compared = known.observedBeside(*seen.series, "toe_way");
  if (compared == nullptr) return std::nullopt;
  if (compared->value == "as_sheet") return seen.way;
  if (compared->value != "other_way") return std::nullopt;
  return *seen.way == ToeWay::In ? ToeWay::Out : ToeWay::In;
}

void putLimit(const model::SpecItem& sheet, ToeWay way, Json& input) {
  const bool in = way == ToeWay::In;
  const auto& lower = in ? sheet.min : sheet.max;
  const auto& upper = in ? sheet.max : sheet.min;
  Json limit = Json::object();
  if (lower) limit["min"] = siText(signOf(way) * lower->si, QuantityKind::Length);
  if (upper) limit["max"] = siText(signOf(way) * upper->si, QuantityKind::Length);
  if (!limit.empty()) input["limit_length"] = std::move(limit);
}

void putDiameter(const BenchKnown& known, Json& input) {
  if (const auto diameter = fullMean(known.latest(Reads::ToeDiameter, std::nullopt))) {
    input["diameter"] = siText(*diameter, QuantityKind::Length);
  }
}

void putGraduation(const BenchKnown& known, const ToeSeen& seen, Json& input) {
  if (seen.series == nullptr) return;
  const Json instrument = known.instrumentOf(*seen.series);
  if (instrument.contains("graduation")) input["graduation"] = instrument.at("graduation");
}

Json toe(const BenchKnown& known) {
  Json input = Json::object();
  putDiameter(known, input);
  const ToeSeen seen = toeSeen(known);
  putGraduation(known, seen, input);
  if (seen.total) input["total"] = *seen.total;
  const auto* sheet = known.spec(kToeKey);
  const auto way = wayOfSheet(known, seen);
  if (sheet != nullptr && way) putLimit(*sheet, *way, input);
  return input;
}

Json trackRodTurns(const BenchKnown& known) {
  Json input = Json::object();
  putDiameter(known, input);
  const ToeSeen seen = toeSeen(known);
  putGraduation(known, seen, input);
  if (seen.total) input["present"] = *seen.total;
  return input;
}

constexpr std::array kSources{BenchSource{"toe", toe},
                              BenchSource{"track-rod-turns", trackRodTurns}};

}  // namespace

std::span<const BenchSource> geometrySources() {
  return kSources;
}

}  // namespace sw::workshop
