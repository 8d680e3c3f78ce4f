// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bearings/bearing_stiffness_picture.h"

#include <algorithm>

#include "compute/verdict_mark.h"
#include "figure/axes.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::AxialState;

constexpr double kKilonewton = 1000;
constexpr Length kShimStep = millimetres(0.01);
constexpr double kBeyond = 1.5;      // of the displacement asked for
constexpr double kLeastStep = 0.08;  // of the axis: a smaller one is not seen
constexpr int kPieces = 60;

std::vector<Point> curve(const mechanics::TaperBearing& bearing, Length most) {
  std::vector<Point> points;
  for (int i = 0; i <= kPieces; ++i) {
    const auto state = mechanics::axialLoad(bearing, most * i / kPieces);
    if (!state) continue;
    points.push_back({inMillimetres(state->displacement), state->load.si() / kKilonewton});
  }
  return points;
}

/// The state asked for, and what a shim step does from there.
void drawState(Figure& figure, const Axes& axes, const AxialState& state) {
  const double given = inMillimetres(state.displacement);
  const double load = state.load.si() / kKilonewton;
  const Point at = axes.inside(given, load);
  figure.add(figure::dashed(axes.at(given, 0), at, Tone::Quiet, 0.1));
  figure.add(figure::dashed(axes.at(0, load), at, Tone::Quiet, 0.1));
  // A shim brings each bearing of the pair half of its thickness.
  const double step = 0.5 * inMillimetres(kShimStep);
  const double rise = state.shimSlope.si() * kShimStep.si() / kKilonewton;
  if (step > kLeastStep * axes.x().high) {
    const Point corner = axes.inside(given + step, load);
    const Point end = axes.inside(given + step, load + rise);
    add(figure, figure::Arrow{at, corner, Tone::Second, 0.14});
    add(figure, figure::Arrow{corner, end, Tone::Second, 0.14});
    figure.add(Text{{0.5 * (at.x + corner.x), at.y + 0.4},
                    "0.01 mm of shim",
                    Side::Below,
                    Room::Movable,
                    Tone::Second,
                    0.85});
  }
  figure.add(Mark{at, MarkShape::Diamond, Tone::Accent, 0.55});
  figure.add(Text{{at.x - 0.3, at.y},
                  figureWords(state.load.si(), QuantityKind::Force),
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Accent,
                  1.0,
                  true});
  figure.add(Text{{at.x, axes.bottom() - 0.6},
                  figureWords(state.displacement.si(), QuantityKind::Length),
                  Side::Right,
                  Room::Movable,
                  Tone::Accent,
                  1.0,
                  true});
}

}  // namespace

Figure bearingStiffnessPicture(const mechanics::TaperBearing& bearing, const AxialState& state,
                               figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Load over displacement of a taper bearing";
  figure.description = figureWords(state.load.si(), QuantityKind::Force) + " at " +
                       figureWords(state.displacement.si(), QuantityKind::Length);
  const Length most = std::max(kBeyond * state.displacement, state.displacement + 0.8 * kShimStep);
  const auto points = curve(bearing, most);
  const double top = points.empty() ? 1 : points.back().y;
  const Axes axes(size, {0, inMillimetres(most)}, {0, 1.05 * std::max(top, 1e-9)});
  axes.draw(figure, {.title = "gives along the axle, mm"}, {.title = "load, kN"});
  figure.add(axes.line(points, Tone::Ink));
  if (state.displacement.si() <= 0) return figure;
  drawState(figure, axes, state);
  figure::headline(figure, "0.01 mm of shim: +" + figureWords(state.shimSlope.si() * kShimStep.si(),
                                                              QuantityKind::Force));
  return figure;
}

}  // namespace sw::compute
