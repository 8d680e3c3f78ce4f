// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "figure/axes.h"
#include "mechanics/brakes/disc_runout.h"
#include "mechanics/brakes/disc_thickness.h"

// What both views of a turn of a disc are drawn from, in millimetres and degrees.

namespace sw::compute {

inline constexpr double kTurn = 360;

/// Of reading `at` of `count` even ones.
[[nodiscard]] double placeOf(std::size_t at, std::size_t count);

struct Extremes {
  double low = 0, high = 0;
  [[nodiscard]] double middle() const { return 0.5 * (low + high); }
};
[[nodiscard]] Extremes extremesOf(const std::vector<Length>& readings);

/// The readings and the band that their range may fill, with room about them.
[[nodiscard]] figure::Range turnRange(const Extremes& extremes, const std::optional<Length>& limit);

/// Where readings may lie: a band of the height of the limit about their middle.
[[nodiscard]] Extremes allowedBand(const std::vector<Length>& readings, Length limit);

/// The radius whose readings lie further apart: the variation is theirs.
[[nodiscard]] const std::vector<Length>& widerOf(const mechanics::DiscThicknessInput& input);

/// The thinnest point of both radii.
struct Thinnest {
  double place = 0;
  Length thickness;
};
[[nodiscard]] Thinnest thinnestOf(const mechanics::DiscThicknessInput& input);

/// The wave of the seat's tilt about the mean as places and values.
[[nodiscard]] std::vector<figure::Point> tiltWave(const mechanics::DiscRunout& runout);

/// Where a place, in degrees, and a value lie in a view.
using OnPaper = std::function<figure::Point(double place, double value)>;
/// The readings as a closed turn with a mark each: the first stands at its end again.
void drawTurn(figure::Figure& figure, const std::vector<Length>& readings, const OnPaper& onPaper,
              figure::Tone tone, figure::MarkShape mark);

/// The tone of a range that was judged.
[[nodiscard]] figure::Tone rangeTone(Verdict verdict);

}  // namespace sw::compute
