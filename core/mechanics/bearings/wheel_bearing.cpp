// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/wheel_bearing.h"

#include <string>

#include "base/words.h"
#include "measure/series_budget.h"
#include "mechanics/bearings/play_series.h"
#include "mechanics/brakes/gauge_uncertainty.h"
#include "mechanics/number_checks.h"
#include "mechanics/swivel/starting_force.h"

namespace sw::mechanics {

namespace {

Result<PlayJudged> judgedPlay(const PlaySetting& setting) {
  const auto series = playSeries(
      {setting.readings, setting.instrument, setting.limits, setting.confidence}, "readings");
  if (!series) return failAs(series);
  PlayJudged result;
  result.series = *series;
  result.play =
      judged<Length>({series->correctedMean, series->standardUncertainty, series->degreesOfFreedom},
                     setting.limits, setting.confidence);
  // The series knows what a bare decision does not: too few readings, a coarse instrument.
  result.play.verdict = series->verdict;
  result.play.side = series->side;
  result.play.conformanceProbability = series->conformanceProbability;
  return result;
}

Result<SeriesOutcome> pullSeries(const PullSetting& setting) {
  if (setting.readings.empty()) {
    return fail(ErrorCode::Missing, "measure.no_readings", "readings");
  }
  NumberChecks checks;
  SeriesInput series;
  for (std::size_t at = 0; at < setting.readings.size(); ++at) {
    checks.notNegative("readings/" + std::to_string(at), setting.readings[at]);
    series.readings.push_back(setting.readings[at].si());
  }
  checks.positive("radius", setting.radius)
      .notNegative("radius_uncertainty", setting.radiusUncertainty)
      .notNegative("off_square_within", setting.offSquareWithin)
      .notNegative("limit/min", setting.limits.min)
      .notNegative("limit/max", setting.limits.max)
      .confidence(setting.confidence);
  if (auto done = checks.done(); !done) return failAs(done);
  if (auto gauge = checkGauge({setting.instrument, {}}); !gauge) return failAs(gauge);
  series.kind = QuantityKind::Force;
  series.instrument = setting.instrument;
  series.pullAngleWithin = setting.offSquareWithin.si();
  series.confidence = setting.confidence;
  series.planned = plannedFor(setting.readings.size());
  auto outcome = evaluateSeries(series);
  if (!outcome && outcome.error().key == "measure.angle_too_large") {
    return tl::make_unexpected(outcome.error().about("off_square_within"));
  }
  return outcome;
}

/// What a bare decision does not know: scatter never seen, a scale too coarse for the band, too few
/// readings.
void settle(PullJudged& pull, const PullSetting& setting) {
  Judged<Torque>& torque = pull.torque;
  if (torque.verdict == Verdict::NoLimit) return;
  if (!pull.series.scatterKnown) takeAsProvisional(torque, setting.limits);
  const double ofScale = measure::instrumentUncertainty(pull.series.budget) * setting.radius.si();
  const bool coarse = measure::instrumentTooCoarse(
      bandOf(setting.limits), ofScale, setting.confidence, DecisionRule::ConformanceProbability);
  const bool open = torque.verdict == Verdict::Undecided || !pull.series.scatterKnown;
  if (open && coarse) {
    torque.verdict = Verdict::InstrumentTooCoarse;
  } else if (pull.series.used < kUsualReadings) {
    torque.verdict = Verdict::Provisional;
  }
}

}  // namespace

std::string_view word(WheelBearingKind kind) {
  return wordOf(kind);
}

Result<PlayJudged> endFloat(const PlaySetting& setting) {
  auto result = judgedPlay(setting);
  if (!result || setting.limits.min || setting.limits.max) return result;
  PlaySetting plausible = setting;
  plausible.limits = {.min = kPlausibleFloatLeast, .max = kPlausibleFloatMost};
  const auto against = judgedPlay(plausible);
  if (!against) return failAs(against);
  result->plausibility = against->play.verdict;
  return result;
}

Result<PlayJudged> unitPlay(const PlaySetting& setting) {
  if (setting.limits.min) {
    return fail(ErrorCode::OutOfRange, "wheel_bearing.not_for_kind", "limit/min",
                {{"kind", std::string(word(WheelBearingKind::UnitWithoutSetting))}});
  }
  return judgedPlay(setting);
}

Result<PullJudged> preloadPull(const PullSetting& setting) {
  const auto series = pullSeries(setting);
  if (!series) return failAs(series);
  if (setting.limits.min && setting.limits.max && *setting.limits.min > *setting.limits.max) {
    return fail(ErrorCode::OutOfRange, "measure.empty_limit", "limit");
  }
  StartingPull pull;
  pull.force = Force::fromSi(series->correctedMean);
  pull.forceUncertainty = Force::fromSi(series->standardUncertainty);
  pull.degreesOfFreedom = series->degreesOfFreedom;
  pull.arm = setting.radius;
  pull.armUncertainty = setting.radiusUncertainty;
  const auto torque = swivelTorque(pull, setting.confidence);
  if (!torque) return failAs(torque);
  PullJudged result;
  result.series = *series;
  result.torque = judged<Torque>(
      {torque->torque.si(), torque->standardUncertainty.si(), torque->degreesOfFreedom},
      setting.limits, setting.confidence);
  settle(result, setting);
  return result;
}

}  // namespace sw::mechanics
