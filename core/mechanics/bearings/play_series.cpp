// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/play_series.h"

#include <algorithm>
#include <string>

#include "mechanics/brakes/gauge_uncertainty.h"
#include "mechanics/number_checks.h"

namespace sw::mechanics {

int plannedFor(std::size_t readings) {
  return std::max(kUsualReadings, static_cast<int>(readings));
}

Result<SeriesOutcome> playSeries(const PlaySeriesInput& input, std::string_view field) {
  const std::string name(field);
  if (input.readings.empty()) return fail(ErrorCode::Missing, "measure.no_readings", name);
  NumberChecks checks;
  SeriesInput series;
  for (std::size_t at = 0; at < input.readings.size(); ++at) {
    checks.notNegative(name + "/" + std::to_string(at), input.readings[at]);
    series.readings.push_back(input.readings[at].si());
  }
  checks.notNegative("limit/min", input.limits.min).notNegative("limit/max", input.limits.max);
  if (auto done = checks.confidence(input.confidence).done(); !done) return failAs(done);
  if (auto gauge = checkGauge({input.instrument, {}}); !gauge) return failAs(gauge);
  series.kind = QuantityKind::Length;
  series.instrument = input.instrument;
  series.instrument.differenceOfTwo = true;
  series.limit = bandOf(input.limits);
  series.confidence = input.confidence;
  series.planned = plannedFor(input.readings.size());
  return evaluateSeries(series);
}

}  // namespace sw::mechanics
