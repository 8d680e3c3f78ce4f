// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_thickness.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/words.h"
#include "mechanics/brakes/gauge_uncertainty.h"
#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

Result<void> checkSet(const std::vector<Length>& readings, std::string_view field) {
  const int points = static_cast<int>(readings.size());
  if (points < kFewestWearPoints) {
    return fail(ErrorCode::OutOfRange, "disc_thickness.too_few_points", std::string(field),
                {{"points", std::to_string(points)}, {"least", std::to_string(kFewestWearPoints)}});
  }
  NumberChecks checks;
  for (std::size_t at = 0; at < readings.size(); ++at) {
    checks.positive(std::string(field) + "/" + std::to_string(at), readings[at]);
  }
  return checks.done();
}

GaugeReading gaugeOf(const DiscThicknessInput& input) {
  return {input.instrument, input.repeatability};
}

Result<void> check(const DiscThicknessInput& input) {
  if (auto set = checkSet(input.readings, "readings"); !set) return set;
  if (!input.otherRadius.empty()) {
    if (auto set = checkSet(input.otherRadius, "other_radius"); !set) return set;
  }
  if (auto gauge = checkGauge(gaugeOf(input)); !gauge) return gauge;
  return NumberChecks()
      .positive("discard", input.discard)
      .positive("variation_limit", input.variationLimit)
      .confidence(input.confidence)
      .done();
}

measure::Estimate estimate(Length value, const measure::Combined& combined) {
  return {value.si(), combined.standardUncertainty, combined.degreesOfFreedom};
}

Judged<Length> judgedMinimum(const DiscThicknessInput& input, Length minimum) {
  auto result = judged<Length>(estimate(minimum, uncertaintyOfReading(gaugeOf(input))),
                               {.min = input.discard, .max = {}}, input.confidence);
  const bool readsThick = input.gauge == ThicknessGauge::CaliperOverLip;
  const bool proves = !readsThick && input.instrument.permissibleError;
  if (result.verdict == Verdict::Within && !proves) {
    result.verdict = Verdict::Undecided;
    result.side = LimitSide::InsideLikely;
  }
  return result;
}

bool tooCoarse(const DiscThicknessInput& input) {
  if (!input.variationLimit) return false;
  return measure::instrumentTooCoarse({0.0, input.variationLimit->si()},
                                      instrumentPartOfDifference(gaugeOf(input)), input.confidence,
                                      DecisionRule::ConformanceProbability);
}

/// What stands after the decision by probability: what these points and this gauge cannot show.
Verdict variationVerdict(const DiscThicknessInput& input, Verdict decision, std::size_t points) {
  if (decision == Verdict::NoLimit) return decision;
  // The lip itself varies: neither answer is the track's.
  if (input.gauge == ThicknessGauge::CaliperOverLip) return Verdict::Undecided;
  if (decision == Verdict::Outside) return decision;
  if (tooCoarse(input)) return Verdict::InstrumentTooCoarse;
  const bool blind = points < static_cast<std::size_t>(kFewestJudderPoints);
  return decision == Verdict::Within && blind ? Verdict::Undecided : decision;
}

Judged<Length> taperOf(const DiscThicknessInput& input, Length first, Length other) {
  GaugeReading gauge = gaugeOf(input);
  gauge.averagedOver =
      static_cast<double>(std::min(input.readings.size(), input.otherRadius.size()));
  return judged<Length>(estimate(other - first, uncertaintyOfDifference(gauge)), {},
                        input.confidence);
}

}  // namespace

std::string_view word(ThicknessGauge gauge) {
  return wordOf(gauge);
}

Result<DiscThickness> discThickness(const DiscThicknessInput& input) {
  if (auto checked = check(input); !checked) return failAs(checked);
  DiscThickness result;
  result.extent = extentOf(input.readings);
  Length minimum = result.extent.least;
  Length variation = result.extent.span();
  std::size_t points = input.readings.size();
  if (!input.otherRadius.empty()) {
    const Extent other = extentOf(input.otherRadius);
    minimum = std::min(minimum, other.least);
    variation = std::max(variation, other.span());
    points = std::min(points, input.otherRadius.size());
    result.taper = taperOf(input, result.extent.mean, other.mean);
  }
  result.orders = ordersOf(input.readings);
  result.minimum = judgedMinimum(input, minimum);
  result.variation = judged<Length>(estimate(variation, uncertaintyOfDifference(gaugeOf(input))),
                                    {.min = {}, .max = input.variationLimit}, input.confidence);
  result.variationDecision = result.variation.verdict;
  result.variation.verdict = variationVerdict(input, result.variationDecision, points);
  const bool held = result.variation.verdict != Verdict::Within;
  if (held && result.variationDecision == Verdict::Within) {
    result.variation.side = LimitSide::InsideLikely;
  }
  result.instrumentErrorKnown = input.instrument.permissibleError.has_value();
  return result;
}

}  // namespace sw::mechanics
