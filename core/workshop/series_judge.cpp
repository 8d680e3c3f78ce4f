// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/series_judge.h"

#include <cmath>
#include <numbers>

#include "measure/distributions.h"

namespace sw::workshop {

namespace {

constexpr std::string_view kDressedKey = "swivel.dressed_pull";

model::PullState defaultState(const std::string& key) {
  model::PullState state;  // bare: everything off, no sealant, first movement, straight ahead
  if (key == kDressedKey) {
    state.seal = state.rods = state.damper = model::OnOff::On;
  }
  return state;
}

/// A permissible error in per cent counts at the size of the readings.
double permissibleSi(const TypedQuantity& error, double readingSi) {
  return error.unit == "%" ? error.si * std::abs(readingSi) : error.si;
}

ErrorShape shapeOf(const std::string& text) {
  if (text == "triangular") return ErrorShape::Triangular;
  if (text == "certificate") return ErrorShape::Certificate;
  return ErrorShape::Rectangular;
}

InstrumentCapability capabilityOf(const SeriesBasis& basis, double readingSi) {
  InstrumentCapability capability;
  const model::Instrument& instrument = *basis.instrument;
  capability.graduation = instrument.graduation.si;
  if (instrument.permissibleError) {
    capability.permissibleError = permissibleSi(*instrument.permissibleError, readingSi);
  }
  capability.errorShape = shapeOf(instrument.errorShape);
  capability.coverageFactor = instrument.coverageFactor.value_or(2.0);
  if (instrument.rangeMin) capability.rangeMin = instrument.rangeMin->si;
  if (instrument.rangeMax) capability.rangeMax = instrument.rangeMax->si;
  if (basis.check != nullptr) {
    OwnCheck check;
    check.applied = basis.check->applied.si;
    check.shown = basis.check->shown.si;
    if (basis.check->appliedUncertainty) {
      check.appliedStandardUncertainty = basis.check->appliedUncertainty->si / std::numbers::sqrt3;
    }
    capability.check = check;
  }
  return capability;
}

}  // namespace

bool stateFits(const model::SpecItem& limit, const model::PullState& state) {
  model::PullState wanted = limit.state.value_or(defaultState(limit.key));
  wanted.grease = state.grease;
  const bool dry = state.sealant != model::Sealant::Wet;
  // Unless the sheet says more: no sealant and cured sealant are both dry; a dressed hub may be
  // either.
  if (!limit.state && (dry || limit.key == kDressedKey)) wanted.sealant = state.sealant;
  return wanted == state;
}

Result<SeriesBasis> basisOf(const model::Series& series, const ShopState& shop) {
  SeriesBasis basis;
  basis.instrument = shop.revision<model::Instrument>(series.instrument);
  if (basis.instrument == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_instrument", "instrument");
  }
  if (series.instrumentCheck) {
    basis.check = shop.revision<model::InstrumentCheck>(*series.instrumentCheck);
  }
  if (series.limit) basis.limit = shop.revision<model::SpecItem>(*series.limit);
  return basis;
}

Result<SeriesOutcome> judgeSeries(const SeriesView& series, const SeriesBasis& basis) {
  SeriesInput input;
  input.kind = series.fact.quantity;
  for (const ReadingView& reading : series.readings) {
    if (reading.fact.use == model::ReadingUse::Used)
      input.readings.push_back(reading.fact.value.si);
  }
  const double size = input.readings.empty() ? 0.0 : input.readings.front();
  input.instrument = capabilityOf(basis, size);
  if (series.fact.angleWithin) input.pullAngleWithin = series.fact.angleWithin->si;
  if (basis.limit != nullptr) {
    if (basis.limit->min) input.limit.min = basis.limit->min->si;
    if (basis.limit->max) input.limit.max = basis.limit->max->si;
  }
  input.planned = static_cast<int>(series.fact.planned);
  input.extended = series.usedCount() > static_cast<std::size_t>(series.fact.planned);
  auto outcome = evaluateSeries(input);
  // A scale whose own error nobody knows proves nothing that safety rests on.
  if (outcome && series.fact.safety && outcome->verdict == Verdict::Within &&
      !provesWithin(*outcome)) {
    outcome->verdict = Verdict::Undecided;
  }
  return outcome;
}

double undecidedWithin(const SeriesOutcome& outcome) {
  const double quantile = measure::studentQuantile(outcome.bar, outcome.degreesOfFreedom);
  return quantile * outcome.standardUncertainty;
}

model::VerdictGiven verdictFact(model::EntryId series, const SeriesOutcome& outcome) {
  model::VerdictGiven fact;
  fact.series = series;
  fact.verdict = std::string(word(outcome.verdict));
  fact.soFar = std::string(word(outcome.decisionSoFar));
  fact.value = outcome.correctedMean;
  fact.standardUncertainty = outcome.standardUncertainty;
  fact.degreesOfFreedom = outcome.degreesOfFreedom;
  fact.expandedUncertainty = outcome.expandedUncertainty;
  fact.probability = outcome.conformanceProbability;
  fact.bar = outcome.bar;
  fact.used = outcome.used;
  fact.rule = std::string(word(DecisionRule::ConformanceProbability));
  fact.limitSide = std::string(word(outcome.side));
  fact.consistency = std::string(word(outcome.consistency));
  return fact;
}

}  // namespace sw::workshop
