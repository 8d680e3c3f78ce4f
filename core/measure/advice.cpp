// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/advice.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "measure/instrument.h"
#include "units/quantity.h"

namespace sw::measure {

namespace {

constexpr double kScatterIsSmall = 1.0 / 3.0;
constexpr double kFinestRatio = 1e-3;
constexpr int kMedianFrom = 5;
constexpr int kLeastSeries = 3;

int countOf(const SeriesInput& input) {
  return static_cast<int>(input.readings.size());
}

SeriesPlan planFor(const SeriesInput& input, int readings) {
  return input.extended || readings > input.planned ? SeriesPlan::Extended
                                                    : SeriesPlan::FixedBeforehand;
}

bool decided(Verdict verdict) {
  return verdict == Verdict::Within || verdict == Verdict::Outside;
}

/// The unit people graduate instruments of this kind in, as a multiple of SI.
double stepUnit(QuantityKind kind) {
  if (kind == QuantityKind::Angle) return factor::kRadiansPerDegree;
  if (kind == QuantityKind::Speed) return 1 / 3.6;
  return 1;
}

/// The steps 1, 2, 5 below a graduation, coarsest first.
std::vector<double> finerSteps(double graduation, double unit) {
  std::vector<double> steps;
  const double present = graduation / unit;
  const int top = static_cast<int>(std::floor(std::log10(present))) + 1;
  for (int power = top; power >= top - 5; --power) {
    for (double digit : {5.0, 2.0, 1.0}) {
      // Division keeps 0.1 and 0.05 the decimals they are; pow(10, -1) times 5 need not.
      const double scale = std::pow(10.0, std::abs(power));
      const double step = power < 0 ? digit / scale : digit * scale;
      const double ratio = step / present;
      if (ratio < 1 - 1e-9 && ratio >= kFinestRatio) steps.push_back(step * unit);
    }
  }
  return steps;
}

SeriesInput withGraduation(SeriesInput input, double graduation) {
  InstrumentCapability& instrument = input.instrument;
  const double ratio = graduation / instrument.graduation;
  instrument.graduation = graduation;
  if (instrument.permissibleError) *instrument.permissibleError *= ratio;
  if (instrument.localError) *instrument.localError *= ratio;
  return input;
}

bool wouldDecide(const SeriesInput& finer, const SeriesCentre& centre, Verdict present) {
  const int readings = std::max(countOf(finer), finer.planned);
  const auto judged = judge(finer, centre, {readings, planFor(finer, readings)});
  if (!judged) return false;
  if (present != Verdict::InstrumentTooCoarse) return decided(judged->verdict);
  const auto capability = measurementCapability(finer.limit, instrumentUncertainty(judged->lines));
  return !judged->tooCoarse && capability && *capability >= 1;
}

void adviseOnInstrument(const SeriesInput& input, const SeriesCentre& centre,
                        const SeriesOutcome& outcome, std::vector<Advice>& advice) {
  if (!outcome.withinInstrumentRange) advice.push_back({AdviceCode::OutOfRange, {}, {}});
  const InstrumentCapability& instrument = input.instrument;
  const bool checkIsFar =
      instrument.check && !instrument.differenceOfTwo && !ownCheckCounts(instrument, centre.value);
  const bool contradicted =
      compareWithPermissible(instrument) == CheckAgreement::ExceedsPermissible;
  if (!outcome.instrumentErrorKnown || checkIsFar || contradicted) {
    advice.push_back({AdviceCode::CheckInstrument, {}, {}});
  }
}

void adviseOnAgreement(const SeriesInput& input, const SeriesOutcome& outcome,
                       std::vector<Advice>& advice) {
  switch (outcome.consistency) {
    case Consistency::TooFew:
    case Consistency::Consistent:
      return;
    case Consistency::RangeTooWide:
      advice.push_back({AdviceCode::RepeatInconsistent, kMedianFrom - countOf(input), {}});
      return;
    case Consistency::Outlier:
    case Consistency::InconsistentMedianUsed:
      advice.push_back({AdviceCode::RepeatInconsistent, {}, {}});
      return;
  }
}

void adviseUndecided(const SeriesInput& input, const SeriesCentre& centre,
                     std::vector<Advice>& advice) {
  const int used = countOf(input);
  const auto total = readingsToDecide(input, centre);
  if (total) {
    advice.push_back({AdviceCode::MoreReadings, *total - used, {}});
  } else if (used < input.planned) {
    advice.push_back({AdviceCode::MoreReadings, input.planned - used, {}});
  } else {
    advice.push_back({AdviceCode::MoreCannotHelp, {}, {}});
  }
  if (const auto step = graduationToDecide(input, centre)) {
    advice.push_back({AdviceCode::FinerInstrument, {}, *step});
  }
}

void adviseOnDecision(const SeriesInput& input, const SeriesCentre& centre,
                      const SeriesOutcome& outcome, std::vector<Advice>& advice) {
  const int left = input.planned - outcome.used;
  const Verdict verdict = outcome.decisionSoFar;
  if (verdict == Verdict::NoLimit) return;  // nothing is to be decided
  if (verdict == Verdict::InstrumentTooCoarse) {
    advice.push_back({AdviceCode::FinerInstrument, {}, graduationToDecide(input, centre)});
    advice.push_back({AdviceCode::MoreCannotHelp, {}, {}});
  } else if (!outcome.scatterKnown) {
    advice.push_back({AdviceCode::MoreReadings, std::max(left, kLeastSeries - outcome.used), {}});
  } else if (verdict == Verdict::Undecided) {
    adviseUndecided(input, centre, advice);
  } else if (left > 0) {
    advice.push_back({AdviceCode::MoreReadings, left, {}});
  } else if (decided(verdict)) {
    advice.push_back({AdviceCode::Settled, {}, {}});
  }
}

}  // namespace

std::optional<int> readingsToDecide(const SeriesInput& input, const SeriesCentre& centre) {
  const int used = countOf(input);
  const auto now = judge(input, centre, {used, planFor(input, used)});
  if (!now || !centre.scatter) return std::nullopt;
  const bool scatterCounts =
      scatterUncertainty(now->lines) >= kScatterIsSmall * otherUncertainty(now->lines);
  if (!scatterCounts && used >= input.planned) return std::nullopt;
  for (int total = std::max(used + 1, input.planned); total <= kMostReadings; ++total) {
    const auto then = judge(input, centre, {total, planFor(input, total)});
    if (then && decided(then->verdict)) return total;
  }
  return std::nullopt;
}

std::optional<double> graduationToDecide(const SeriesInput& input, const SeriesCentre& centre) {
  const int used = countOf(input);
  const auto now = judge(input, centre, {used, planFor(input, used)});
  if (!now) return std::nullopt;
  for (double step : finerSteps(input.instrument.graduation, stepUnit(input.kind))) {
    if (wouldDecide(withGraduation(input, step), centre, now->verdict)) return step;
  }
  return std::nullopt;
}

std::vector<Advice> adviceFor(const SeriesInput& input, const SeriesCentre& centre,
                              const SeriesOutcome& outcome) {
  std::vector<Advice> advice;
  adviseOnInstrument(input, centre, outcome, advice);
  adviseOnAgreement(input, outcome, advice);
  adviseOnDecision(input, centre, outcome, advice);
  return advice;
}

}  // namespace sw::measure
