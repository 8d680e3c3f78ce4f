// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_runout.h"

#include <cmath>
#include <string>

#include "mechanics/brakes/gauge_uncertainty.h"
#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

Result<void> checkTurns(const DiscRunoutInput& input) {
  if (input.turns < 1 || input.turns > kMostTurns) {
    return fail(ErrorCode::OutOfRange, "disc_runout.bad_turns", "turns",
                {{"turns", std::to_string(input.turns)}, {"most", std::to_string(kMostTurns)}});
  }
  const auto turns = static_cast<std::size_t>(input.turns);
  if (input.readings.size() % turns != 0) {
    return fail(ErrorCode::OutOfRange, "disc_runout.uneven_turns", "readings",
                {{"readings", std::to_string(input.readings.size())},
                 {"turns", std::to_string(input.turns)}});
  }
  const std::size_t places = input.readings.size() / turns;
  if (places >= static_cast<std::size_t>(kFewestRunoutPlaces)) return {};
  return fail(ErrorCode::OutOfRange, "disc_runout.too_few_places", "readings",
              {{"points", std::to_string(places)}, {"least", std::to_string(kFewestRunoutPlaces)}});
}

Result<void> check(const DiscRunoutInput& input) {
  if (auto turns = checkTurns(input); !turns) return turns;
  NumberChecks checks;
  for (std::size_t at = 0; at < input.readings.size(); ++at) {
    checks.finite("readings/" + std::to_string(at), input.readings[at]);
  }
  checks.finite("plunger_off_square", input.plungerOffSquare);
  if (auto done = checks.done(); !done) return done;
  if (std::abs(input.plungerOffSquare.si()) >= kMostPlungerTilt.si()) {
    return fail(ErrorCode::OutOfRange, "disc_runout.off_square", "plunger_off_square");
  }
  if (auto gauge = checkGauge({input.instrument, {}}); !gauge) return gauge;
  return NumberChecks().positive("runout_limit", input.limit).confidence(input.confidence).done();
}

std::vector<Length> averagedOver(const DiscRunoutInput& input) {
  const auto turns = static_cast<std::size_t>(input.turns);
  const std::size_t places = input.readings.size() / turns;
  std::vector<Length> means(places);
  for (std::size_t at = 0; at < input.readings.size(); ++at) {
    means[at % places] = means[at % places] + input.readings[at];
  }
  const double factor = std::cos(input.plungerOffSquare.si()) / input.turns;
  for (Length& mean : means) mean = factor * mean;
  return means;
}

struct Turns {
  PooledScatter scatter;
  Length drift;
};

std::optional<Turns> repeatOf(const DiscRunoutInput& input, const std::vector<Length>& averaged) {
  if (input.turns < 2) return std::nullopt;
  const std::size_t places = averaged.size();
  const double cosine = std::cos(input.plungerOffSquare.si());
  double squares = 0;
  Length first, last;
  for (std::size_t at = 0; at < input.readings.size(); ++at) {
    const Length reading = cosine * input.readings[at];
    const double off = (reading - averaged[at % places]).si();
    squares += off * off;
    if (at < places) first = first + reading;
    if (at >= input.readings.size() - places) last = last + reading;
  }
  const double freedom = static_cast<double>(places) * (input.turns - 1);
  return Turns{{std::sqrt(squares / freedom), freedom},
               (last - first) / static_cast<double>(places)};
}

}  // namespace

Result<DiscRunout> discRunout(const DiscRunoutInput& input) {
  if (auto checked = check(input); !checked) return failAs(checked);
  DiscRunout result;
  result.averaged = averagedOver(input);
  result.extent = extentOf(result.averaged);
  GaugeReading gauge{input.instrument, {}, static_cast<double>(input.turns)};
  if (const auto turns = repeatOf(input, result.averaged)) {
    result.repeatability = Length::fromSi(turns->scatter.standardDeviation);
    result.drift = turns->drift;
    gauge.repeatability = turns->scatter;
  }
  const measure::Combined ofDifference = uncertaintyOfDifference(gauge);
  result.total = judged<Length>(
      {result.extent.span().si(), ofDifference.standardUncertainty, ofDifference.degreesOfFreedom},
      {.min = {}, .max = input.limit}, input.confidence);
  result.orders = ordersOf(result.averaged);
  result.tilt = result.orders.front().wave.value_or(VectorAmount{});
  const double perReading = ofDifference.standardUncertainty / std::sqrt(2.0);
  const double places = static_cast<double>(result.averaged.size());
  result.tiltUncertainty = Length::fromSi(perReading * std::sqrt(2 / places));
  result.residual = extentOf(withoutFirstOrder(result.averaged, result.tilt)).span();
  result.residualUncertainty = Length::fromSi(ofDifference.standardUncertainty);
  return result;
}

}  // namespace sw::mechanics
