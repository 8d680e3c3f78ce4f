// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/bench_input.h"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "mechanics/swivel/shim_packs.h"
#include "units/format.h"
#include "workshop/runs.h"
#include "workshop/spec_needs.h"

namespace sw::workshop {

namespace {

using model::Json;
using model::Side;

constexpr std::string_view kStartingForceKey = "swivel.starting_force";
constexpr std::string_view kBearingFloatKey = "wheel_bearing.end_float";
constexpr std::string_view kBearingPullKey = "wheel_bearing.preload_pull";
constexpr std::string_view kSwivelFloatKey = "swivel.end_float";
constexpr std::string_view kFrontPressureKey = "tyre.front_pressure";

std::string lengthText(Length length) {
  return exactText(length.si(), defaultUnit(QuantityKind::Length));
}

void put(Json& object, const char* key, const std::optional<TypedQuantity>& value) {
  if (value) object[key] = value->text();
}

Json bandOf(const model::SpecItem& item) {
  Json band = Json::object();
  put(band, "min", item.min);
  put(band, "max", item.max);
  return band;
}

/// The readings that count, as typed.
Json usedTexts(const SeriesView& series) {
  Json texts = Json::array();
  for (const ReadingView& reading : series.readings) {
    if (reading.fact.use == model::ReadingUse::Used) texts.push_back(reading.fact.value.text());
  }
  return texts;
}

std::string forceText(double newtons) {
  return exactText(newtons, defaultUnit(QuantityKind::Force));
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

/// The knowledge of one job and one place in it.
class Known {
 public:
  Known(const JobState& job, const ShopState& shop, const BenchPlace& place)
      : m_job(job), m_shop(shop), m_place(place) {
    if (place.step) {
      m_step = &job.steps.at(*place.step);
      m_side = m_step->side;
    }
    if (!m_side) m_side = place.side;
  }

  [[nodiscard]] Json shimPack() const;
  [[nodiscard]] Json firstPack() const;
  [[nodiscard]] Json startingForce() const;
  [[nodiscard]] Json wheelBearing() const;
  [[nodiscard]] Json fastener(std::string_view calculation) const;
  [[nodiscard]] Json wrenchSetting() const;
  [[nodiscard]] Json standLoad() const;
  [[nodiscard]] Json tyre() const;
  [[nodiscard]] Json pulled(Side side, const std::optional<TypedQuantity>& arm) const;
  [[nodiscard]] std::optional<TypedQuantity> arm() const;

 private:
  [[nodiscard]] const model::SpecItem* spec(std::string_view key) const {
    const auto* found = m_shop.spec(m_job.opened.vehicle, key);
    return found == nullptr ? nullptr : &found->fact;
  }
  [[nodiscard]] const model::SpecItem* fasteners() const {
    return m_step != nullptr && m_step->step->torque ? spec(m_step->step->torque->fasteners)
                                                     : nullptr;
  }
  [[nodiscard]] bool isPull(const SeriesView& series) const;
  [[nodiscard]] std::optional<Length> packDuring(const SeriesView& series) const;
  [[nodiscard]] const SeriesView* newestPull(Side side) const;
  [[nodiscard]] Json instrumentOf(const SeriesView& series) const;
  void putLayoutAndShims(Json& input) const;
  void putPullTerms(const SeriesView& series, Json& input) const;
  [[nodiscard]] Json readingsHere(QuantityKind kind) const;

  const JobState& m_job;
  const ShopState& m_shop;
  BenchPlace m_place;
  const StepView* m_step = nullptr;
  std::optional<Side> m_side;
};

/// First movement on the bare hub, with or without a pack that is being tried.
bool Known::isPull(const SeriesView& series) const {
  return series.fact.quantity == QuantityKind::Force &&
         (series.fact.limitKey == kStartingForceKey ||
          (series.fact.state && series.fact.state->rods == model::OnOff::Off &&
           series.fact.state->movement == model::Movement::First &&
           series.fact.state->position == model::RestPosition::Ahead));
}

/// The total that was in when the series was begun: a fitted pack takes the place of the one found.
std::optional<Length> Known::packDuring(const SeriesView& series) const {
  std::map<model::ShimPlace, Length> totals;
  for (const PackView& pack : m_job.packs) {
    if (pack.side == series.side && pack.entry.value < series.id.value) {
      totals[pack.fact.place] = pack.fact.total.as<Length>();
    }
  }
  // A pack found is often written down after the pull as found.
  if (totals.empty()) {
    for (const PackView& pack : m_job.packs) {
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

Json Known::pulled(Side side, const std::optional<TypedQuantity>& arm) const {
  Json list = Json::array();
  for (const SeriesView& series : m_job.series) {
    if (series.side != side || !isPull(series)) continue;
    const auto pack = packDuring(series);
    Json pulls = pullsAtArm(series, arm);
    if (!pack || pulls.empty()) continue;
    Json row = {{"pack", lengthText(*pack)}, {"pulls", std::move(pulls)}};
    if (series.fact.state) row["state"] = stateText(*series.fact.state);
    list.push_back(std::move(row));
  }
  return list;
}

const SeriesView* Known::newestPull(Side side) const {
  const SeriesView* newest = nullptr;
  for (const SeriesView& series : m_job.series) {
    if (series.side == side && isPull(series) && !series.readings.empty()) newest = &series;
  }
  return newest;
}

/// The arm of the newest pull of this side, else of the other.
std::optional<TypedQuantity> Known::arm() const {
  if (!m_side) return std::nullopt;
  for (const Side side : {*m_side, *m_side == Side::Left ? Side::Right : Side::Left}) {
    const SeriesView* newest = newestPull(side);
    if (newest != nullptr && newest->fact.arm) return newest->fact.arm;
  }
  return std::nullopt;
}

Json Known::instrumentOf(const SeriesView& series) const {
  Json json = Json::object();
  const auto* instrument = m_shop.revision<model::Instrument>(series.fact.instrument);
  if (instrument == nullptr) return json;
  json["graduation"] = instrument->graduation.text();
  put(json, "permissible_error", instrument->permissibleError);
  return json;
}

void Known::putLayoutAndShims(Json& input) const {
  if (const auto layout = m_job.vehicle.fact.arrangement.shimLayout) {
    input["layout"] = *layout == model::ShimLayout::CapFlange ? "cap_flange" : "inner";
  }
  const auto stock = shimStock(m_job, m_shop);
  if (!stock || stock->sizes.empty()) return;
  Json shims = Json::array();
  for (const auto& size : stock->sizes) {
    shims.push_back({{"thickness", lengthText(size.thickness)}});
  }
  input["shims"] = std::move(shims);
  input["max_count"] = stock->maxCount;
  if (stock->maxPack) input["max_pack"] = lengthText(*stock->maxPack);
}

void Known::putPullTerms(const SeriesView& series, Json& input) const {
  put(input, "arm", series.fact.arm);
  put(input, "pull_angle_within", series.fact.angleWithin);
  Json instrument = instrumentOf(series);
  if (!instrument.empty()) input["instrument"] = std::move(instrument);
}

Json Known::shimPack() const {
  Json input = Json::object();
  putLayoutAndShims(input);
  if (const auto* limit = spec(kStartingForceKey)) input["limit"] = bandOf(*limit);
  if (!m_side) return input;
  Json measured = pulled(*m_side, arm());
  if (!measured.empty()) input["measured"] = std::move(measured);
  if (const SeriesView* newest = newestPull(*m_side)) {
    putPullTerms(*newest, input);
    input["options"] = {{"planned", newest->fact.planned}};
  }
  const Side other = *m_side == Side::Left ? Side::Right : Side::Left;
  const SeriesView* theirs = newestPull(other);
  if (theirs == nullptr) return input;
  if (const auto mean = usedMean(*theirs)) input["other_side"] = *mean;
  return input;
}

Json Known::readingsHere(QuantityKind kind) const {
  Json readings = Json::array();
  if (m_step == nullptr) return readings;
  for (const SeriesView& series : m_job.series) {
    if (series.side != m_step->side || series.fact.quantity != kind) continue;
    if (series.step != m_step->step->id || series.run != m_job.runs[m_step->run].id) continue;
    readings = usedTexts(series);
  }
  return readings;
}

Json Known::firstPack() const {
  Json input = Json::object();
  putLayoutAndShims(input);
  if (!m_side) return input;
  if (const auto pack = m_job.packTotal(*m_side)) input["pack_found"] = lengthText(*pack);
  const bool gap = m_step != nullptr && m_step->step->measure &&
                   m_step->step->measure->instruments == std::vector{model::InstrumentKind::Feeler};
  Json readings = readingsHere(QuantityKind::Length);
  if (m_step != nullptr && m_step->step->measure) input["method"] = gap ? "nip" : "end_float";
  if (!readings.empty()) input[gap ? "gaps" : "end_float"] = std::move(readings);
  return input;
}

Json Known::startingForce() const {
  Json input = Json::object();
  const SeriesView* newest = m_side ? newestPull(*m_side) : nullptr;
  if (newest == nullptr) return input;
  put(input, "arm", newest->fact.arm);
  if (const auto mean = usedMean(*newest)) input["force"] = *mean;
  return input;
}

Json Known::wheelBearing() const {
  Json input = Json::object();
  // The kind is what the vehicle's arrangement says; where nobody said, it is asked.
  const auto kind = m_job.vehicle.fact.arrangement.wheelBearing;
  const bool pull = kind == model::WheelBearingSetting::Preload;
  if (kind) {
    input["kind"] = pull                                           ? "preload_pull"
                    : kind == model::WheelBearingSetting::EndFloat ? "end_float"
                                                                   : "unit_without_setting";
  }
  if (const auto* limit = spec(kBearingFloatKey); limit != nullptr && kind && !pull) {
    input["limit"] = bandOf(*limit);
  }
  Json readings = readingsHere(pull ? QuantityKind::Force : QuantityKind::Length);
  if (!readings.empty()) input["readings"] = std::move(readings);
  for (const SeriesView& series : m_job.series) {
    if (m_step == nullptr || series.step != m_step->step->id || series.side != m_step->side) {
      continue;
    }
    Json instrument = instrumentOf(series);
    if (!instrument.empty()) input["instrument"] = std::move(instrument);
  }
  return input;
}

Json Known::fastener(std::string_view calculation) const {
  Json input = Json::object();
  const model::SpecItem* item = fasteners();
  if (item == nullptr) return input;
  if (calculation == "tighten-pattern") {
    if (item->count) input["fasteners"] = *item->count;
    put(input, "torque", item->value);
    if (!m_step->step->torque->stages.empty()) input["stages"] = m_step->step->torque->stages;
    return input;
  }
  if (!item->fastenerSize.empty()) input["thread"] = item->fastenerSize;
  if (calculation == "castle-nut") {
    Json torque = Json::object();
    put(torque, "min", item->min ? item->min : item->value);
    put(torque, "max", item->max);
    input["torque"] = std::move(torque);
    return input;
  }
  if (!item->fastenerClass.empty()) input["strength_class"] = item->fastenerClass;
  put(input, "torque", item->value);
  return input;
}

Json Known::wrenchSetting() const {
  Json input = Json::object();
  if (const model::SpecItem* item = fasteners()) put(input, "torque", item->value);
  Json wrenches = Json::array();
  for (const auto* revision : m_shop.instruments()) {
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

Json Known::standLoad() const {
  Json input = Json::object();
  if (const auto& load = m_job.vehicle.fact.frontAxleLoad) {
    input["known_from"] = "vehicle_documents";
    input["axle_load"] = load->text();
  }
  return input;
}

Json Known::tyre() const {
  Json input = Json::object();
  if (!m_job.vehicle.fact.tyreFitted.empty()) input["designation"] = m_job.vehicle.fact.tyreFitted;
  if (const auto* pressure = spec(kFrontPressureKey)) put(input, "pressure", pressure->value);
  return input;
}

}  // namespace

std::vector<std::string> benchFor(const StepView& step) {
  const procedures::Step& definition = *step.step;
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
  const Known known(job, shop, place);
  if (calculation == "shim-pack") return known.shimPack();
  if (calculation == "first-pack") return known.firstPack();
  if (calculation == "starting-force") return known.startingForce();
  if (calculation == "wheel-bearing") return known.wheelBearing();
  if (calculation == "wrench-setting") return known.wrenchSetting();
  if (calculation == "stand-load") return known.standLoad();
  if (calculation == "tyre") return known.tyre();
  for (const std::string_view name :
       {"torque-plausibility", "clamp-force", "castle-nut", "tighten-pattern"}) {
    if (calculation == name) return known.fastener(name);
  }
  return Json::object();
}

Json pulledPacks(const JobState& job, const ShopState& shop, Side side,
                 const std::optional<TypedQuantity>& arm) {
  return Known(job, shop, {std::nullopt, side}).pulled(side, arm);
}

std::optional<TypedQuantity> pullingArm(const JobState& job, const ShopState& shop, Side side) {
  return Known(job, shop, {std::nullopt, side}).arm();
}

}  // namespace sw::workshop
