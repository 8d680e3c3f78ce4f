// SPDX-License-Identifier: GPL-3.0-or-later
// The swivel: packs, pulls, and the pack measured from zero.
#include <array>
#include <cmath>
#include <map>

#include "mechanics/swivel/shim_packs.h"
#include "workshop/bench_known.h"
#include "workshop/runs.h"
#include "workshop/series_judge.h"

namespace sw::workshop {

namespace {

using model::Json;
using model::Side;
using procedures::Reads;

constexpr std::string_view kStartingForceKey = "swivel.starting_force";
// A cap nipped to a drag has taken the float up and up to a tenth more; common practice, no source.
constexpr Length kNipTakesUp = millimetres(0.05);
constexpr Length kNipDoubt = millimetres(0.03);  // standard, of an even chance between 0 and 0.1

std::string lengthText(Length length) {
  return siText(length.si(), QuantityKind::Length);
}

std::string forceText(double newtons) {
  return siText(newtons, QuantityKind::Force);
}

/// Their mean as a force; nothing where none counts.
std::optional<std::string> usedMean(const SeriesView& series) {
  double sum = 0;
  int used = 0;
  for (const ReadingView& reading : series.readings) {
    if (reading.fact.use != model::ReadingUse::Used) continue;
    sum += reading.fact.value.si;
    ++used;
  }
  if (used == 0) return std::nullopt;
  return forceText(sum / used);
}

/// Pulls at another arm as those they would be at this one; as typed where an arm is not known.
Json pullsAtArm(const SeriesView& series, const std::optional<TypedQuantity>& arm) {
  if (!arm || !series.fact.arm || series.fact.arm->si == arm->si) return usedTexts(series);
  Json texts = Json::array();
  for (const ReadingView& reading : series.readings) {
    if (reading.fact.use != model::ReadingUse::Used) continue;
    texts.push_back(forceText(reading.fact.value.si * series.fact.arm->si / arm->si));
  }
  return texts;
}

/// First movement on the bare hub, with or without a pack that is being tried.
bool isPull(const SeriesView& series) {
  return series.fact.quantity == QuantityKind::Force &&
         (series.fact.limitKey == kStartingForceKey ||
          (series.fact.state && series.fact.state->rods == model::OnOff::Off &&
           series.fact.state->movement == model::Movement::First &&
           series.fact.state->position == model::RestPosition::Ahead));
}

/// The total that was in when the series was begun: a fitted pack takes the place of the one found.
std::optional<Length> packDuring(const JobState& job, const SeriesView& series) {
  std::map<model::ShimPlace, Length> totals;
  for (const PackView& pack : job.packs) {
    if (pack.side == series.side && pack.entry.value < series.id.value) {
      totals[pack.fact.place] = pack.fact.total.as<Length>();
    }
  }
  // A pack found is often written down after the pull as found.
  if (totals.empty()) {
    for (const PackView& pack : job.packs) {
      if (pack.side == series.side && pack.fact.role == model::PackRole::Found) {
        totals[pack.fact.place] = pack.fact.total.as<Length>();
      }
    }
  }
  if (totals.empty()) return std::nullopt;
  Length sum;
  for (const auto& [where, total] : totals) sum = sum + total;
  return sum;
}

/// Dry is dry: cured sealant and none are one state. Grease is recorded and not compared.
std::string stateText(const model::PullState& state) {
  const bool wet = state.sealant == model::Sealant::Wet;
  return std::string("seal ") + std::string(wordOf(state.seal)) + ", rods " +
         std::string(wordOf(state.rods)) + ", damper " + std::string(wordOf(state.damper)) +
         (wet ? ", wet sealant" : ", dry");
}

const SeriesView* newestPull(const JobState& job, Side side) {
  const SeriesView* newest = nullptr;
  for (const SeriesView& series : job.series) {
    if (series.side == side && isPull(series) && !series.readings.empty()) newest = &series;
  }
  return newest;
}

void putLayoutAndShims(const BenchKnown& known, Json& input) {
  if (const auto layout = known.vehicle().arrangement.shimLayout) {
    input["layout"] = *layout == model::ShimLayout::CapFlange ? "cap_flange" : "inner";
  }
  const auto stock = shimStock(known.job(), known.shop());
  if (!stock || stock->sizes.empty()) return;
  Json shims = Json::array();
  for (const auto& size : stock->sizes) {
    shims.push_back({{"thickness", lengthText(size.thickness)}});
  }
  input["shims"] = std::move(shims);
  input["max_count"] = stock->maxCount;
  if (stock->maxPack) input["max_pack"] = lengthText(*stock->maxPack);
}

void putPullTerms(const BenchKnown& known, const SeriesView& series, Json& input) {
  put(input, "arm", series.fact.arm);
  put(input, "pull_angle_within", series.fact.angleWithin);
  Json instrument = known.instrumentOf(series);
  if (!instrument.empty()) input["instrument"] = std::move(instrument);
}

/// The pack that just takes up the float, as the newest gap or end float on this side says;
/// nothing where neither was read or the layout is not known.
std::optional<Json> measuredFloat(const BenchKnown& known, Side side) {
  const auto layout = known.vehicle().arrangement.shimLayout;
  if (!layout) return std::nullopt;
  const SeriesView* gaps = known.latest(Reads::CapGaps, side, Among::WholeJob);
  const SeriesView* floats = known.latest(Reads::PackFloat, side, Among::WholeJob);
  const bool nip = gaps != nullptr && (floats == nullptr || floats->id < gaps->id);
  if (nip && *layout != model::ShimLayout::CapFlange) return std::nullopt;
  const SeriesView* series = nip ? gaps : floats;
  if (series == nullptr) return std::nullopt;
  const auto basis = basisOf(series->fact, known.shop());
  const auto read = basis ? judgeSeries(*series, *basis) : Result<SeriesOutcome>{};
  if (!basis || !read) return std::nullopt;
  const auto found = packDuring(known.job(), *series);
  if (!nip && !found) return std::nullopt;
  // No float that can be told from none: then the pack in place may be anywhere beyond.
  if (!nip && read->correctedMean < 2 * read->standardUncertainty) return std::nullopt;
  const Length value = Length::fromSi(read->correctedMean);
  const bool flange = *layout == model::ShimLayout::CapFlange;
  const Length pack = nip ? value + kNipTakesUp : flange ? *found - value : *found + value;
  if (!(pack.si() > 0)) return std::nullopt;
  const double doubt = std::hypot(read->standardUncertainty, nip ? kNipDoubt.si() : 0.0);
  return Json{{"pack", lengthText(pack)},
              {"standard_uncertainty", lengthText(Length::fromSi(doubt))}};
}

Json shimPack(const BenchKnown& known) {
  Json input = Json::object();
  putLayoutAndShims(known, input);
  if (const auto* limit = known.spec(kStartingForceKey)) input["limit"] = bandOf(*limit);
  if (!known.side()) return input;
  const Side side = *known.side();
  Json measured = pulledPacks(known.job(), side, pullingArm(known.job(), side));
  if (!measured.empty()) input["measured"] = std::move(measured);
  if (auto taken = measuredFloat(known, side)) input["measured_float"] = std::move(*taken);
  if (const SeriesView* newest = newestPull(known.job(), side)) {
    putPullTerms(known, *newest, input);
    input["options"] = {{"planned", newest->fact.planned}};
  }
  const Side other = side == Side::Left ? Side::Right : Side::Left;
  const SeriesView* theirs = newestPull(known.job(), other);
  if (theirs == nullptr) return input;
  if (const auto mean = usedMean(*theirs)) input["other_side"] = *mean;
  return input;
}

bool isPackReading(Reads what) {
  return what == Reads::CapGaps || what == Reads::PackFloat;
}

/// Which of its two measurements the first pack comes from: what this step reads, or failing that
/// what was read last before it.
std::optional<Reads> packReading(const BenchKnown& known) {
  if (const auto* measure = known.measure()) {
    if (measure->reads) return isPackReading(*measure->reads) ? measure->reads : std::nullopt;
    const bool gaps = measure->instruments == std::vector{model::InstrumentKind::Feeler};
    return gaps ? Reads::CapGaps : Reads::PackFloat;
  }
  const SeriesView* gaps = known.latest(Reads::CapGaps, known.side());
  const SeriesView* floats = known.latest(Reads::PackFloat, known.side());
  if (gaps == nullptr && floats == nullptr) return std::nullopt;
  if (floats == nullptr) return Reads::CapGaps;
  return gaps != nullptr && floats->id < gaps->id ? Reads::CapGaps : Reads::PackFloat;
}

Json firstPack(const BenchKnown& known) {
  Json input = Json::object();
  putLayoutAndShims(known, input);
  if (!known.side()) return input;
  if (const auto pack = known.job().packTotal(*known.side()))
    input["pack_found"] = lengthText(*pack);
  const auto what = packReading(known);
  if (!what) return input;
  const bool nip = *what == Reads::CapGaps;
  input["method"] = nip ? "nip" : "end_float";
  const SeriesView* series =
      known.measure() != nullptr ? known.seriesHere() : known.latest(*what, known.side());
  if (series != nullptr) input[nip ? "gaps" : "end_float"] = usedTexts(*series);
  return input;
}

Json startingForce(const BenchKnown& known) {
  Json input = Json::object();
  const SeriesView* newest = known.side() ? newestPull(known.job(), *known.side()) : nullptr;
  if (newest == nullptr) return input;
  put(input, "arm", newest->fact.arm);
  if (const auto mean = usedMean(*newest)) input["force"] = *mean;
  return input;
}

constexpr std::array kSources{BenchSource{"shim-pack", shimPack},
                              BenchSource{"first-pack", firstPack},
                              BenchSource{"starting-force", startingForce}};

}  // namespace

std::span<const BenchSource> swivelSources() {
  return kSources;
}

Json pulledPacks(const JobState& job, Side side, const std::optional<TypedQuantity>& arm) {
  Json list = Json::array();
  for (const SeriesView& series : job.series) {
    if (series.side != side || !isPull(series)) continue;
    const auto pack = packDuring(job, series);
    Json pulls = pullsAtArm(series, arm);
    if (!pack || pulls.empty()) continue;
    Json row = {{"pack", lengthText(*pack)}, {"pulls", std::move(pulls)}};
    if (series.fact.state) row["state"] = stateText(*series.fact.state);
    list.push_back(std::move(row));
  }
  return list;
}

std::optional<TypedQuantity> pullingArm(const JobState& job, Side side) {
  for (const Side one : {side, side == Side::Left ? Side::Right : Side::Left}) {
    const SeriesView* newest = newestPull(job, one);
    if (newest != nullptr && newest->fact.arm) return newest->fact.arm;
  }
  return std::nullopt;
}

}  // namespace sw::workshop
