// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/unbalance_picture.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "compute/picture_parts.h"
#include "compute/wheels/wheel_drawing.h"
#include "figure/axes.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::Polar;

constexpr double kGramsPerKilogram = 1000;
constexpr double kAround = 1.7;  // em, the angles about the rings
constexpr double kBeside = 10;   // em, what the unbalance does
constexpr double kBelow = 2.6;   // em, the same below where there is no room beside
constexpr double kNumbersAt = 45;

/// Grams from the middle outwards.
struct Rings {
  Point centre;
  double radius = 0;  ///< em
  double most = 1;    ///< g

  [[nodiscard]] Point at(double degrees, double grams) const {
    return figure::onCircle(centre, em(grams), degrees);
  }
  [[nodiscard]] double em(double grams) const { return radius * grams / most; }
};

void drawRings(Figure& figure, const Rings& rings) {
  const double step = figure::roundStep(rings.most, 3);
  for (const double grams : figure::roundMarks({0.5 * step, rings.most}, step)) {
    figure.add(figure::circle(rings.centre, rings.em(grams), Tone::Grid, 0.06));
    figure.add(Text{rings.at(kNumbersAt, grams), figure::markText(grams, step) + " g", Side::Centre,
                    Room::Optional, Tone::Quiet, 0.8});
  }
  for (int quarter = 0; quarter < 4; ++quarter) {
    const double degrees = 90.0 * quarter;
    const Point end = figure::onCircle(rings.centre, rings.radius, degrees);
    figure.add(figure::line(rings.centre, end, Tone::Grid, 0.06));
    figure.add(Text{figure::onCircle(rings.centre, rings.radius + 0.9, degrees),
                    shortNumber(degrees, 0) + "\u00b0", Side::Centre, Room::Optional, Tone::Quiet,
                    0.85});
  }
}

void drawLimit(Figure& figure, const Rings& rings, double grams) {
  figure::Path ring = figure::circle(rings.centre, rings.em(grams), Tone::Limit, 0.14);
  ring.stroke = figure::Stroke::Dashed;
  figure.add(std::move(ring));
  figure.add(Text{rings.at(135, grams), "a plane may keep " + shortNumber(grams, 1) + " g",
                  Side::BelowRight, Room::Movable, Tone::Limit, figure::kLabelSize});
}

struct Plane {
  Polar grams;
  const char* name = "";
  Verdict verdict = Verdict::NoLimit;
};

Polar gramsOf(const mechanics::UnbalanceVector& vector, Length radius) {
  return {kGramsPerKilogram * mechanics::massAt(vector.amount, radius).si(), vector.angle};
}

Text nameOf(const Mark& mark, const Rings& rings, const Plane& plane) {
  Text text = figure::label(mark, plane.name + shortNumber(plane.grams.amount, 1) + " g",
                            mark.at.x < rings.centre.x ? Side::Left : Side::Right);
  text.strong = true;
  return text;
}

void drawPlane(Figure& figure, const Rings& rings, const Plane& plane) {
  if (plane.grams.amount <= 0) return;
  const Mark mark =
      verdictMark(rings.at(inDegrees(plane.grams.angle), plane.grams.amount), plane.verdict, 0.55);
  figure.add(figure::line(rings.centre, mark.at, mark.tone, 0.26));
  figure.add(mark);
  figure.add(nameOf(mark, rings, plane));
}

void drawSum(Figure& figure, const Rings& rings, const Plane& sum) {
  if (sum.grams.amount <= 0) return;
  const Point tip = rings.at(inDegrees(sum.grams.angle), sum.grams.amount);
  add(figure, figure::Arrow{rings.centre, tip, Tone::Accent, 0.14, figure::Stroke::Dashed});
  Mark mark;
  mark.at = tip;
  mark.tone = Tone::Accent;
  figure.add(nameOf(mark, rings, sum));
}

void drawEffect(Figure& figure, const mechanics::UnbalanceAtSpeed& unbalance, Point at) {
  const std::array<std::string, 2> lines{"force " + labelText(unbalance.force),
                                         "couple " + labelText(unbalance.couple)};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    figure.add(Text{{at.x, at.y + 1.4 * static_cast<double>(i)},
                    lines[i],
                    Side::Right,
                    Room::Fixed,
                    Tone::Ink,
                    1.0,
                    true});
  }
}

}  // namespace

Figure unbalancePicture(const UnbalanceDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Unbalance of both planes",
                            "The weights of both planes as vectors, their sum and the limit");
  const auto& unbalance = drawing.unbalance;
  const Plane inner{gramsOf(unbalance.inner, drawing.radius), "inner ", drawing.inner};
  const Plane outer{gramsOf(unbalance.outer, drawing.radius), "outer ", drawing.outer};
  const Plane sum{gramsOf(unbalance.statical, drawing.radius), "sum "};
  const double limit = kGramsPerKilogram * drawing.limitEachPlane.value_or(Mass{}).si();
  double most = 1.15 * limit;
  for (const Plane* plane : {&inner, &outer, &sum}) {
    most = std::max(most, 1.1 * plane->grams.amount);
  }
  const bool wide = isWide(size);
  const double width = wide ? size.width - kBeside : size.width;
  const double height = wide ? size.height : size.height - kBelow;
  const Rings rings{
      {width / 2, height / 2}, std::min(width, height) / 2 - kAround, most > 0 ? most : 1.0};
  drawRings(figure, rings);
  if (limit > 0) drawLimit(figure, rings, limit);
  drawSum(figure, rings, sum);
  drawPlane(figure, rings, inner);
  drawPlane(figure, rings, outer);
  drawEffect(figure, unbalance,
             wide ? Point{width, size.height / 2 - 0.7} : Point{0.1, size.height - 2.2});
  return figure;
}

}  // namespace sw::compute
