// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/balance_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "compute/picture_parts.h"
#include "compute/wheels/wheel_drawing.h"
#include "figure/axes.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Box;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::Polar;

constexpr double kEdge = 0.2;
constexpr std::size_t kRuns = 3;
constexpr double kMeet = 0.9;  // agreement from which circles are said to meet, for the eye
constexpr std::size_t kDegreesApart = 120;

/// The wheel's place: all, or the half it shares.
Box wheelBox(figure::Size size) {
  return {kEdge, kEdge, isWide(size) ? size.width / 2 : size.width - kEdge, size.height - kEdge};
}
Box besideBox(figure::Size size) {
  return {size.width / 2 + 0.5, kEdge, size.width - kEdge, size.height - kEdge};
}

std::string amountLabel(const char* name, double amount) {
  return name + withoutZeros(displayText(amount, defaultUnit(QuantityKind::Number)));
}

}  // namespace

Figure onePlanePicture(const mechanics::OnePlaneRuns& runs,
                       const mechanics::OnePlaneBalance& balance,
                       const std::optional<mechanics::WeightVector>& fitted, figure::Size size) {
  Figure figure = newFigure(size, "Where the balance weight goes",
                            "The wheel with the weight to fit opposite the heavy spot");
  drawWheel(figure, {balance.correction, balance.unbalance, runs.trialWeight, fitted, {}, ""},
            wheelBox(size));
  if (!isWide(size)) return figure;
  std::vector<ReadingArrow> arrows{
      {{}, runs.initial, amountLabel("before ", runs.initial.amount), Tone::Ink},
      {{}, runs.withTrial, amountLabel("with trial ", runs.withTrial.amount), Tone::Quiet},
      {runs.initial, runs.withTrial, "trial did", Tone::Accent}};
  if (fitted) {
    const Polar left = mechanics::residual(runs.initial, balance.influence, *fitted);
    arrows.push_back({{}, left, amountLabel("left ", left.amount), Tone::Second});
  }
  drawReadings(figure, arrows, besideBox(size));
  return figure;
}

Figure twoPlanePicture(const mechanics::TwoPlaneBalance& balance,
                       const std::optional<mechanics::WeightPair>& fitted, figure::Size size) {
  Figure figure = newFigure(size, "Where the balance weights go",
                            "Inner and outer plane with the weights to fit opposite the heavy "
                            "spots");
  const double half = size.width / 2;
  const std::array<const char*, 2> names{"inner", "outer"};
  for (std::size_t plane = 0; plane < names.size(); ++plane) {
    const double left = kEdge + static_cast<double>(plane) * half;
    WheelDrawing wheel{
        balance.correction[plane], balance.unbalance[plane], {}, {}, {}, names[plane]};
    if (fitted) wheel.fitted = (*fitted)[plane];
    drawWheel(figure, wheel, {left, kEdge, left + half - kEdge, size.height - kEdge});
  }
  return figure;
}

namespace {

/// Circles about the places of the trial weight, each as large as its reading: where they meet, the
/// vibration would be gone.
void drawCircles(Figure& figure, const mechanics::FourRuns& runs,
                 const mechanics::FourRunBalance& balance, const Box& box) {
  std::array<Point, kRuns> centres{};
  Range x{0, 0};
  Range y{0, 0};
  for (std::size_t i = 0; i < kRuns; ++i) {
    const double angle = 2 * std::numbers::pi * static_cast<double>(i) / kRuns;
    centres[i] = {balance.trialEffect * std::sin(angle), balance.trialEffect * std::cos(angle)};
    const double reading = runs.withTrial[i];
    x.include(centres[i].x - reading);
    x.include(centres[i].x + reading);
    y.include(centres[i].y - reading);
    y.include(centres[i].y + reading);
  }
  const Scale scale({box.left + 0.5, box.top + 1.6, box.right - 0.5, box.bottom - 0.3}, x, y);
  const Point zero = scale.at(0, 0);
  for (std::size_t i = 0; i < kRuns; ++i) {
    const Point centre = scale.at(centres[i].x, centres[i].y);
    figure.add(figure::circle(centre, scale.em(runs.withTrial[i]), Tone::Quiet, 0.1));
    const Mark mark{centre, MarkShape::Square, Tone::Quiet, 0.3};
    figure.add(mark);
    figure.add(
        figure::label(mark, "trial " + std::to_string(kDegreesApart * i) + "\u00b0", Side::Below));
  }
  const double angle = balance.correction.angle.si();
  const Point tip = scale.at(runs.initial * std::sin(angle), runs.initial * std::cos(angle));
  add(figure, figure::Arrow{zero, tip, Tone::Accent, 0.24});
  const bool meet = balance.agreement >= kMeet;
  figure.add(Text{tip, meet ? "circles meet" : "circles miss",
                  tip.x < zero.x ? Side::AboveLeft : Side::AboveRight, Room::Movable,
                  meet ? Tone::Accent : Tone::Doubt, 1.0, true});
  figure.add(Text{{box.left + 0.2, box.top + 0.2},
                  "agreement " + shortNumber(balance.agreement, 2),
                  Side::BelowRight,
                  Room::Movable,
                  Tone::Ink,
                  figure::kLabelSize});
}

}  // namespace

Figure fourRunPicture(const mechanics::FourRuns& runs, const mechanics::FourRunBalance& balance,
                      figure::Size size) {
  Figure figure = newFigure(size, "Where the balance weight goes",
                            "The wheel with the weight to fit, and the circles of the four runs");
  drawWheel(figure, {balance.correction, balance.unbalance, {}, {}, balance.angleUncertainty, ""},
            wheelBox(size));
  if (isWide(size)) drawCircles(figure, runs, balance, besideBox(size));
  return figure;
}

}  // namespace sw::compute
