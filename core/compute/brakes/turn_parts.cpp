// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/turn_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "compute/verdict_mark.h"

namespace sw::compute {

namespace {

constexpr int kWavePieces = 72;
constexpr std::size_t kFewPlaces = 36;

}  // namespace

double placeOf(std::size_t at, std::size_t count) {
  return kTurn * static_cast<double>(at) / static_cast<double>(count);
}

Extremes extremesOf(const std::vector<Length>& readings) {
  const auto [low, high] = std::minmax_element(readings.begin(), readings.end());
  return {inMillimetres(*low), inMillimetres(*high)};
}

figure::Range turnRange(const Extremes& extremes, const std::optional<Length>& limit) {
  figure::Range range{extremes.low, extremes.high};
  if (limit) {
    range.include(extremes.middle() - 0.5 * inMillimetres(*limit));
    range.include(extremes.middle() + 0.5 * inMillimetres(*limit));
  }
  range.widen(0.14, 0.01);
  return range;
}

Extremes allowedBand(const std::vector<Length>& readings, Length limit) {
  const double middle = extremesOf(readings).middle();
  const double half = 0.5 * inMillimetres(limit);
  return {middle - half, middle + half};
}

const std::vector<Length>& widerOf(const mechanics::DiscThicknessInput& input) {
  if (input.otherRadius.empty()) return input.readings;
  const Extremes first = extremesOf(input.readings);
  const Extremes other = extremesOf(input.otherRadius);
  return other.high - other.low > first.high - first.low ? input.otherRadius : input.readings;
}

Thinnest thinnestOf(const mechanics::DiscThicknessInput& input) {
  Thinnest thinnest{0, input.readings.front()};
  for (const auto* readings : {&input.readings, &input.otherRadius}) {
    for (std::size_t at = 0; at < readings->size(); ++at) {
      if (readings->at(at) < thinnest.thickness) {
        thinnest = {placeOf(at, readings->size()), readings->at(at)};
      }
    }
  }
  return thinnest;
}

std::vector<figure::Point> tiltWave(const mechanics::DiscRunout& runout) {
  const double amount = inMillimetres(runout.tilt.amount);
  const double mean = inMillimetres(runout.extent.mean);
  const double high = runout.tilt.angle.si();
  std::vector<figure::Point> wave;
  for (int i = 0; i <= kWavePieces; ++i) {
    const double place = kTurn * i / kWavePieces;
    wave.push_back({place, mean + amount * std::cos(place * std::numbers::pi / 180 - high)});
  }
  return wave;
}

void drawTurn(figure::Figure& figure, const std::vector<Length>& readings, const OnPaper& onPaper,
              figure::Tone tone, figure::MarkShape mark) {
  figure::Path path;
  path.tone = tone;
  path.width = 0.1;
  for (std::size_t i = 0; i <= readings.size(); ++i) {
    path.points.push_back(
        onPaper(placeOf(i, readings.size()), inMillimetres(readings[i % readings.size()])));
  }
  const auto places = path.points;
  figure.add(std::move(path));
  const double radius = readings.size() > kFewPlaces ? 0.18 : 0.3;
  for (const figure::Point& place : places) {
    figure.add(figure::Mark{place, mark, tone, radius});
  }
}

figure::Tone rangeTone(Verdict verdict) {
  return verdict == Verdict::NoLimit ? figure::Tone::Ink : lookOf(verdict).tone;
}

}  // namespace sw::compute
