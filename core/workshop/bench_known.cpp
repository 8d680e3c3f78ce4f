// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/bench_known.h"

#include <algorithm>

#include "units/format.h"

namespace sw::workshop {

using model::Json;

BenchKnown::BenchKnown(const JobState& job, const ShopState& shop, const BenchPlace& place)
    : m_job(job), m_shop(shop), m_place(place) {
  if (place.step) {
    m_step = &job.steps.at(*place.step);
    m_side = m_step->side;
  }
  if (!m_side) m_side = place.side;
}

const procedures::MeasureSpec* BenchKnown::measure() const {
  return m_step != nullptr && m_step->step->measure ? &*m_step->step->measure : nullptr;
}

const model::SpecItem* BenchKnown::spec(std::string_view key) const {
  const auto* found = m_shop.spec(m_job.opened.vehicle, key);
  return found == nullptr ? nullptr : &found->fact;
}

const SeriesView* BenchKnown::seriesHere() const {
  return m_place.step ? m_job.newestSeries(*m_place.step) : nullptr;
}

Json BenchKnown::instrumentOf(const SeriesView& series) const {
  Json json = Json::object();
  const auto* instrument = m_shop.revision<model::Instrument>(series.fact.instrument);
  if (instrument == nullptr) return json;
  json["graduation"] = instrument->graduation.text();
  put(json, "permissible_error", instrument->permissibleError);
  return json;
}

const SeriesView* BenchKnown::latest(procedures::Reads what, std::optional<model::Side> side,
                                     Among runs) const {
  std::size_t i = m_place.step ? *m_place.step + 1 : m_job.steps.size();
  while (i-- > 0) {
    const StepView& view = m_job.steps[i];
    if (m_step != nullptr && runs == Among::ThisRun && view.run != m_step->run) continue;
    const auto& measure = view.step->measure;
    if (!measure || measure->reads != what || (view.side && view.side != side)) continue;
    const SeriesView* series = m_job.newestSeries(i);
    if (series != nullptr && !series->readings.empty()) return series;
  }
  return nullptr;
}

const model::Observation* BenchKnown::observedBeside(const SeriesView& series,
                                                     std::string_view key) const {
  // In root order: the readings, what was observed, the next readings under the same limit.
  const auto begun =
      std::find_if(m_job.valid.begin(), m_job.valid.end(),
                   [&](const model::Entry* entry) { return entry->id == series.id; });
  const model::Observation* seen = nullptr;
  for (auto at = begun; at != m_job.valid.end(); ++at) {
    const auto* other = model::as<model::Series>(**at);
    if (other != nullptr && at != begun && other->limitKey == series.fact.limitKey) break;
    const auto* observed = model::as<model::Observation>(**at);
    if (observed != nullptr && observed->key == key && (*at)->side == series.side) seen = observed;
  }
  return seen;
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

Json usedTexts(const SeriesView& series) {
  Json texts = Json::array();
  for (const ReadingView& reading : series.readings) {
    if (reading.fact.use == model::ReadingUse::Used) texts.push_back(reading.fact.value.text());
  }
  return texts;
}

Json roundTexts(const SeriesView* series) {
  if (series == nullptr) return Json::array();
  const auto planned = static_cast<std::size_t>(series->fact.planned);
  const bool whole = series->readings.size() == planned && series->usedCount() == planned;
  return whole ? usedTexts(*series) : Json::array();
}

std::optional<double> fullMean(const SeriesView* series) {
  if (series == nullptr) return std::nullopt;
  const std::size_t used = series->usedCount();
  if (used == 0 || used < static_cast<std::size_t>(series->fact.planned)) return std::nullopt;
  double sum = 0;
  for (const ReadingView& reading : series->readings) {
    if (reading.fact.use == model::ReadingUse::Used) sum += reading.fact.value.si;
  }
  return sum / static_cast<double>(used);
}

std::string siText(double si, QuantityKind kind) {
  return exactText(si, defaultUnit(kind));
}

}  // namespace sw::workshop
