// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/evaluation.h"

#include <algorithm>
#include <cmath>

#include "measure/advice.h"
#include "measure/instrument.h"
#include "measure/judgement.h"

namespace sw {

namespace {

using measure::Judgement;
using measure::SeriesCentre;
using measure::SeriesPlan;

struct NamedNumber {
  std::string_view field;
  std::optional<double> value;
};

std::optional<Error> findNotFinite(std::initializer_list<NamedNumber> numbers) {
  for (const NamedNumber& number : numbers) {
    if (number.value && !std::isfinite(*number.value)) {
      return Error{ErrorCode::OutOfRange, "measure.not_finite", std::string(number.field), {}};
    }
  }
  return std::nullopt;
}

std::optional<Error> findNotPositive(std::initializer_list<NamedNumber> numbers) {
  for (const NamedNumber& number : numbers) {
    if (number.value && !(*number.value > 0)) {
      return Error{ErrorCode::OutOfRange, "measure.not_positive", std::string(number.field), {}};
    }
  }
  return std::nullopt;
}

std::optional<Error> checkInstrument(const InstrumentCapability& instrument) {
  if (auto error = findNotFinite({{"graduation", instrument.graduation},
                                  {"permissible_error", instrument.permissibleError},
                                  {"local_error", instrument.localError},
                                  {"coverage_factor", instrument.coverageFactor},
                                  {"range_min", instrument.rangeMin},
                                  {"range_max", instrument.rangeMax}})) {
    return error;
  }
  if (auto error = findNotPositive({{"graduation", instrument.graduation},
                                    {"permissible_error", instrument.permissibleError},
                                    {"local_error", instrument.localError},
                                    {"coverage_factor", instrument.coverageFactor}})) {
    return error;
  }
  if (!instrument.check) return std::nullopt;
  if (auto error =
          findNotFinite({{"applied", instrument.check->applied},
                         {"shown", instrument.check->shown},
                         {"applied_uncertainty", instrument.check->appliedStandardUncertainty}})) {
    return error;
  }
  if (instrument.check->appliedStandardUncertainty < 0) {
    return Error{ErrorCode::OutOfRange, "measure.not_positive", "applied_uncertainty", {}};
  }
  return std::nullopt;
}

std::optional<Error> checkOptions(const SeriesInput& input) {
  if (auto error = findNotFinite({{"limit_min", input.limit.min},
                                  {"limit_max", input.limit.max},
                                  {"confidence", input.confidence}})) {
    return error;
  }
  if (input.limit.min && input.limit.max && *input.limit.min > *input.limit.max) {
    return Error{ErrorCode::OutOfRange, "measure.empty_limit", "limit", {}};
  }
  if (!(input.confidence > 0.5 && input.confidence < 1)) {
    return Error{ErrorCode::OutOfRange, "measure.bad_confidence", "confidence", {}};
  }
  if (input.planned < 1) {
    return Error{ErrorCode::OutOfRange, "measure.not_positive", "planned", {}};
  }
  if (!input.pooled) return std::nullopt;
  const NamedNumber amount{"pooled_scatter", input.pooled->standardDeviation};
  const NamedNumber degrees{"pooled_scatter", input.pooled->degreesOfFreedom};
  if (auto error = findNotFinite({amount, degrees})) return error;
  return findNotPositive({amount, degrees});
}

std::optional<Error> check(const SeriesInput& input) {
  if (auto error = checkInstrument(input.instrument)) return error;
  return checkOptions(input);
}

SeriesPlan planOf(const SeriesInput& input) {
  return input.extended ? SeriesPlan::Extended : SeriesPlan::FixedBeforehand;
}

/// Too few readings make a verdict provisional; an instrument that is too coarse stays so.
Verdict settle(Verdict soFar, int used, int planned) {
  const bool final = soFar == Verdict::NoLimit || soFar == Verdict::InstrumentTooCoarse;
  return used < planned && !final ? Verdict::Provisional : soFar;
}

bool allInRange(const SeriesInput& input) {
  return std::all_of(input.readings.begin(), input.readings.end(), [&](double reading) {
    return measure::withinRange(input.instrument, reading);
  });
}

void takeUncertainty(const SeriesInput& input, const Judgement& judgement, SeriesOutcome& outcome) {
  outcome.budget = judgement.lines;
  outcome.standardUncertainty = judgement.estimate.standardUncertainty;
  outcome.degreesOfFreedom = judgement.estimate.degreesOfFreedom;
  outcome.coverageFactor =
      input.rule == DecisionRule::GuardBandK2
          ? 2.0
          : measure::coverageFactor(input.confidence, outcome.degreesOfFreedom);
  outcome.expandedUncertainty = outcome.coverageFactor * outcome.standardUncertainty;
}

void takeDecision(const SeriesInput& input, const Judgement& judgement, SeriesOutcome& outcome) {
  outcome.bar = judgement.bar;
  outcome.decisionSoFar = judgement.verdict;
  outcome.verdict = settle(judgement.verdict, outcome.used, input.planned);
  if (!input.limit.any()) return;
  outcome.side = judgement.decision.side;
  if (outcome.scatterKnown) {
    outcome.conformanceProbability = judgement.decision.conformance.inside;
  }
}

}  // namespace

Result<SeriesOutcome> evaluateSeries(const SeriesInput& input) {
  const auto series = measure::describe(input.readings);
  if (!series) return failAs(series);
  if (auto error = check(input)) return tl::make_unexpected(std::move(*error));
  const SeriesCentre centre = measure::centreOf(input, *series);
  const auto correction = measure::correctionOf(input, centre.value);
  if (!correction) return failAs(correction);
  const auto judgement = measure::judge(input, centre, {series->count, planOf(input)});
  if (!judgement) return failAs(judgement);
  SeriesOutcome outcome;
  outcome.used = series->count;
  outcome.mean = centre.value;
  outcome.scatter = series->standardDeviation.value_or(0);
  outcome.correctionFactor = correction->angle.factor;
  outcome.correctionOffset = correction->offset;
  outcome.correctedMean = judgement->estimate.value;
  outcome.consistency = centre.consistency;
  outcome.outlier = centre.outlier;
  outcome.lagOne = measure::lagOneCorrelation(input.readings);
  outcome.scatterKnown = centre.scatter.has_value();
  outcome.instrumentErrorKnown = measure::instrumentErrorKnown(input.instrument, centre.value);
  outcome.withinInstrumentRange = allInRange(input);
  takeUncertainty(input, *judgement, outcome);
  takeDecision(input, *judgement, outcome);
  outcome.advice = measure::adviceFor(input, centre, outcome);
  return outcome;
}

bool provesWithin(const SeriesOutcome& outcome) {
  return outcome.verdict == Verdict::Within && outcome.instrumentErrorKnown &&
         outcome.withinInstrumentRange && outcome.scatterKnown;
}

}  // namespace sw
