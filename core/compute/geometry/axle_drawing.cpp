// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/axle_drawing.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sw::compute {

namespace {

using figure::Box;
using figure::Figure;
using figure::Point;
using figure::Size;
using figure::Tone;

constexpr double kSlenderWheel = 0.3;  // width over length, about that of a tyre

}  // namespace

AxlePlaces axleIn(const Box& box) {
  const double length = std::min(box.height(), 0.42 * box.width());
  const double width = kSlenderWheel * length;
  const double apart = std::min(box.width() - 2.2 * width, 3.2 * length);
  const Point middle = box.centre();
  return {{middle.x - apart / 2, middle.y}, {middle.x + apart / 2, middle.y}, {width, length}};
}

double enlargement(Angle largest, double mostDegrees) {
  const double degrees = std::abs(inDegrees(largest));
  if (degrees <= 0) return 1;
  double best = 1;
  for (const double times : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
    if (times * degrees <= mostDegrees) best = times;
  }
  return best;
}

void drawWheelFromAbove(Figure& figure, Point middle, Size wheel, double degrees, Tone tone,
                        figure::Stroke stroke) {
  const bool solid = stroke == figure::Stroke::Solid;
  figure::Path tyre = figure::outline(figure::rectangle(middle, wheel, degrees), tone,
                                      solid ? 0.3 : 0.0, solid ? 0.16 : 0.1);
  tyre.stroke = stroke;
  figure.add(std::move(tyre));
  const Point front = figure::onCircle(middle, wheel.height / 2, degrees);
  const Point rear = figure::onCircle(middle, wheel.height / 2, degrees + 180);
  if (solid) figure.add(figure::line(rear, front, tone, 0.08));
}

void drawForward(Figure& figure, Point at) {
  add(figure, figure::Arrow{{at.x, at.y + 2.0}, at, Tone::Quiet, 0.14});
  figure.add(figure::Text{{at.x + 0.2, at.y + 1.1},
                          "forward",
                          figure::Side::Right,
                          figure::Room::Movable,
                          Tone::Quiet,
                          0.85});
}

}  // namespace sw::compute
