// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "figure/vectors.h"
#include "mechanics/wheels/balance.h"

// A wheel with weights and heavy spots at their angles, as all pictures of balancing show it; and
// vectors of readings from one point. The mark is at the top; angles go clockwise as drawn, in the
// sense in which the readings count.

namespace sw::compute {

struct WheelDrawing {
  std::optional<mechanics::WeightVector> correction;  ///< to fit here
  std::optional<mechanics::WeightVector> heavy;
  std::optional<mechanics::WeightVector> trial;
  std::optional<mechanics::WeightVector> fitted;
  std::optional<Angle> angleUncertainty;  ///< standard, of the correction
  std::string name;                       ///< "inner"
};

/// The wheel in a box: what to fit named in its middle, the rest in a key below.
void drawWheel(figure::Figure& figure, const WheelDrawing& drawing, const figure::Box& box);

struct ReadingArrow {
  mechanics::Polar from;  ///< where it begins; the centre has no amount
  mechanics::Polar to;
  std::string name;
  figure::Tone tone = figure::Tone::Ink;
  figure::Stroke stroke = figure::Stroke::Solid;
};
/// Readings as arrows at one scale, filling a box, with the mark at the top.
void drawReadings(figure::Figure& figure, const std::vector<ReadingArrow>& arrows,
                  const figure::Box& box);

/// "33.1 g".
[[nodiscard]] std::string gramsLabel(Mass mass);
/// "33.1 g at 84°".
[[nodiscard]] std::string weightLabel(const mechanics::WeightVector& weight);

/// Whether wheel and readings have room side by side.
[[nodiscard]] bool isWide(figure::Size size);

}  // namespace sw::compute
