// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/bench_known.h"

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

Json BenchKnown::readingsHere() const {
  const SeriesView* series = seriesHere();
  return series == nullptr ? Json::array() : usedTexts(*series);
}

Json BenchKnown::instrumentOf(const SeriesView& series) const {
  Json json = Json::object();
  const auto* instrument = m_shop.revision<model::Instrument>(series.fact.instrument);
  if (instrument == nullptr) return json;
  json["graduation"] = instrument->graduation.text();
  put(json, "permissible_error", instrument->permissibleError);
  return json;
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

std::string siText(double si, QuantityKind kind) {
  return exactText(si, defaultUnit(kind));
}

}  // namespace sw::workshop
