// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>

#include "mechanics/brakes/disc_runout.h"
#include "mechanics/polar.h"

namespace sw::mechanics {

namespace {

constexpr double kTurn = 2 * std::numbers::pi;
constexpr double kSamePlace = degrees(1).si();

tl::unexpected<Error> uneven(std::size_t at) {
  return fail(ErrorCode::OutOfRange, "disc_runout.uneven_places", "points/" + std::to_string(at));
}

/// The different places of one turn, to one degree; a place just below a whole turn is 0.
std::vector<double> placesOf(const std::vector<PlacedReading>& points) {
  std::vector<double> places;
  for (const PlacedReading& point : points) {
    const double angle = withinATurn(point.place).si();
    places.push_back(angle > kTurn - kSamePlace ? 0 : angle);
  }
  std::sort(places.begin(), places.end());
  const auto same = [](double a, double b) { return b - a < kSamePlace; };
  places.erase(std::unique(places.begin(), places.end(), same), places.end());
  return places;
}

}  // namespace

Result<TurnSamples> evenTurns(const std::vector<PlacedReading>& points) {
  for (std::size_t at = 0; at < points.size(); ++at) {
    if (std::isfinite(points[at].place.si())) continue;
    return fail(ErrorCode::OutOfRange, "measure.not_finite", "points/" + std::to_string(at));
  }
  const std::size_t places = placesOf(points).size();
  std::map<std::size_t, std::vector<Length>> byPlace;
  for (std::size_t at = 0; at < points.size(); ++at) {
    const double step = kTurn / static_cast<double>(places);
    const double steps = withinATurn(points[at].place).si() / step;
    if (std::abs(steps - std::round(steps)) * step >= kSamePlace) return uneven(at);
    byPlace[static_cast<std::size_t>(std::round(steps)) % places].push_back(points[at].reading);
  }
  if (byPlace.size() != places) return uneven(0);
  TurnSamples samples;
  samples.turns = static_cast<int>(byPlace.empty() ? 1 : byPlace.begin()->second.size());
  for (int turn = 0; turn < samples.turns; ++turn) {
    for (const auto& [place, readings] : byPlace) {
      if (readings.size() != static_cast<std::size_t>(samples.turns)) {
        return fail(ErrorCode::OutOfRange, "disc_runout.uneven_turns", "points",
                    {{"readings", std::to_string(points.size())},
                     {"turns", std::to_string(samples.turns)}});
      }
      samples.readings.push_back(readings[static_cast<std::size_t>(turn)]);
    }
  }
  return samples;
}

}  // namespace sw::mechanics
