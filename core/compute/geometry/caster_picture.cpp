// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/caster_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "compute/geometry/axle_drawing.h"
#include "compute/geometry/limit_line.h"
#include "compute/picture_parts.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Box;
using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kMostDegrees = 20;  // as drawn
constexpr double kAxisBeyond = 1.0;  // em, of the axis above the wheel

struct View {
  Point hub;
  double radius = 0;

  [[nodiscard]] double ground() const { return hub.y + radius; }
};

View viewIn(const Box& box) {
  const double radius = std::min(box.width() / 2 - 0.5, (box.height() - 2.2) / 2);
  return {{box.centre().x, box.bottom - 0.4 - radius}, radius};
}

/// The axis through the hub, leaning clockwise, with the angle from the upright; its upper end.
Point drawAxis(Figure& figure, const View& view, double drawn, Tone tone) {
  const double reach = view.radius + kAxisBeyond;
  const double down = view.radius / std::cos(drawn * std::numbers::pi / 180);
  figure.add(figure::dashed({view.hub.x, view.hub.y - reach}, {view.hub.x, view.ground()},
                            Tone::Quiet, 0.1));
  const Point top = figure::onCircle(view.hub, reach, drawn);
  figure.add(figure::line(figure::onCircle(view.hub, down, drawn + 180), top, tone, 0.26));
  add(figure, figure::Turn{view.hub, 0.72 * view.radius, 0, drawn, tone, 0.14});
  return top;
}

void drawSide(Figure& figure, const CasterDrawing& drawing, const Box& box) {
  const View view = viewIn(box);
  const double times = enlargement(drawing.caster, kMostDegrees);
  figure.add(figure::circle(view.hub, view.radius, Tone::Material, 0.4));
  figure.add(figure::circle(view.hub, 0.55 * view.radius, Tone::Material, 0.12));
  figure.add(
      figure::line({box.left, view.ground()}, {box.right, view.ground()}, Tone::Quiet, 0.16));
  const double drawn = times * inDegrees(drawing.caster);
  drawAxis(figure, view, drawn, Tone::Accent);
  const Point at = figure::onCircle(view.hub, 0.72 * view.radius, drawn);
  const bool back = drawn >= 0;
  figure.add(Text{{at.x + (back ? 0.3 : -0.3), at.y},
                  "caster " + degreesLabel(drawing.caster, 2),
                  back ? Side::Right : Side::Left,
                  Room::Movable,
                  Tone::Accent,
                  1.05,
                  true});
  add(figure, Arrow{{box.left + 2.0, box.top + 0.6}, {box.left, box.top + 0.6}, Tone::Quiet, 0.14});
  figure.add(Text{
      {box.left + 2.1, box.top + 0.6}, "forward", Side::Right, Room::Movable, Tone::Quiet, 0.85});
  if (times <= 1) return;
  figure.add(Text{{view.hub.x + 0.2, view.ground() - 0.25 * view.radius},
                  "drawn " + shortNumber(times, 0) + " x",
                  Side::Right,
                  Room::Optional,
                  Tone::Quiet,
                  0.8});
}

/// The left wheel from behind, so that inboard is to the right.
void drawFront(Figure& figure, const CasterDrawing& drawing, const Box& box) {
  const View view = viewIn(box);
  const double width = 0.5 * view.radius;
  const Point middle{view.hub.x - 0.8 * width, view.hub.y};
  figure.add(figure::outline(figure::rectangle(middle, {width, 2 * view.radius}), Tone::Material,
                             0.3, 0.16));
  figure.add(
      figure::line({box.left, view.ground()}, {box.right, view.ground()}, Tone::Quiet, 0.16));
  const Point top = drawAxis(figure, view, inDegrees(*drawing.inclination), Tone::Second);
  figure.add(Text{top, "inclined " + degreesLabel(*drawing.inclination), Side::Above, Room::Movable,
                  Tone::Second, 1.0, true});
  figure.add(Text{{box.right, view.ground() - 0.1},
                  "from behind",
                  Side::AboveLeft,
                  Room::Optional,
                  Tone::Quiet,
                  0.8});
}

}  // namespace

Figure casterPicture(const CasterDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Caster from the side",
                            "The wheel with its leaning axis, and the caster against its limits");
  const double cut = drawing.limit ? size.height - kLimitLineHeight : size.height;
  const bool front = drawing.inclination && size.width > 1.25 * cut;
  const double half = front ? size.width / 2 : size.width;
  drawSide(figure, drawing, {0.5, 0.2, half - 0.5, cut - 0.2});
  if (front) drawFront(figure, drawing, {half + 0.5, 0.2, size.width - 0.5, cut - 0.2});
  if (!drawing.limit) return figure;
  LimitLine line{
      "caster, degrees", inDegrees(drawing.caster),      inDegrees(drawing.standardUncertainty), {},
      drawing.verdict,   degreesLabel(drawing.caster, 2)};
  if (drawing.limit->min) line.limit.min = inDegrees(radians(*drawing.limit->min));
  if (drawing.limit->max) line.limit.max = inDegrees(radians(*drawing.limit->max));
  drawLimitLine(figure, line, {1.0, cut + 0.4, size.width - 1.0, size.height});
  return figure;
}

}  // namespace sw::compute
