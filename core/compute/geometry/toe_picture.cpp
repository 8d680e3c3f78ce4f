// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/toe_picture.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "compute/geometry/axle_drawing.h"
#include "compute/geometry/limit_line.h"
#include "compute/picture_parts.h"

namespace sw::compute {

namespace {

using figure::Box;
using figure::Dimension;
using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kMostDegrees = 9;  // of a wheel as drawn
constexpr double kStraight = 1e-9;  // m

std::string sayToe(const ToeDrawing& drawing) {
  const double total = drawing.total.si();
  if (std::abs(total) < kStraight) return "no toe";
  const std::string word = total > 0 ? "toe-in " : "toe-out ";
  return word + shortNumber(std::abs(inMillimetres(drawing.total)), 2) + " mm, " +
         shortNumber(std::abs(inDegrees(drawing.left + drawing.right)), 2) + "\u00b0";
}

void drawAxle(Figure& figure, const ToeDrawing& drawing, const Box& box) {
  const Angle larger =
      std::abs(drawing.left.si()) > std::abs(drawing.right.si()) ? drawing.left : drawing.right;
  const double times = enlargement(larger, kMostDegrees);
  const AxlePlaces axle = axleIn({box.left, box.top + 1.4, box.right, box.bottom - 1.6});
  const double left = times * inDegrees(drawing.left);
  const double right = -times * inDegrees(drawing.right);
  const double in = 0.62 * axle.wheel.width;
  figure.add(figure::line({axle.left.x + in, axle.left.y}, {axle.right.x - in, axle.right.y},
                          Tone::Material, 0.5));
  drawWheelFromAbove(figure, axle.left, axle.wheel, left, Tone::Ink, figure::Stroke::Solid);
  drawWheelFromAbove(figure, axle.right, axle.wheel, right, Tone::Ink, figure::Stroke::Solid);
  const double half = axle.wheel.height / 2;
  const auto across = [&](double turn, const char* name, Side side) {
    add(figure,
        Dimension{figure::onCircle(axle.left, half, left + turn),
                  figure::onCircle(axle.right, half, right + turn), name, side, Tone::Quiet});
  };
  across(0, "front", Side::Above);
  across(180, "rear", Side::Below);
  const Point middle = figure::between(axle.left, axle.right, 0.5);
  figure.add(Text{{middle.x, middle.y - 0.4},
                  sayToe(drawing),
                  Side::Above,
                  Room::Movable,
                  lookOf(drawing.verdict).tone,
                  1.15,
                  true});
  drawForward(figure, {axle.left.x + axle.wheel.width + 0.5, axle.left.y - half + 0.5});
  if (times > 1) {
    figure.add(Text{{middle.x, middle.y + 0.4},
                    "toe drawn " + shortNumber(times, 0) + " times larger",
                    Side::Below,
                    Room::Movable,
                    Tone::Quiet,
                    0.8});
  }
  if (std::abs(drawing.left.si() - drawing.right.si()) <= 1e-9) return;
  const auto each = [&](Point at, Angle angle) {
    figure.add(Text{{at.x, at.y + half + 0.3},
                    degreesLabel(angle, 2),
                    Side::Below,
                    Room::Movable,
                    Tone::Ink,
                    figure::kLabelSize});
  };
  each(axle.left, drawing.left);
  each(axle.right, drawing.right);
}

}  // namespace

Figure toePicture(const ToeDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Toe from above",
                            "The front wheels from above with their toe enlarged, and its limits");
  const double cut = drawing.limit ? size.height - kLimitLineHeight : size.height;
  drawAxle(figure, drawing, {0.8, 0.3, size.width - 0.8, cut - 0.3});
  if (!drawing.limit) return figure;
  const double perRadian = inMillimetres(drawing.diameter);
  LimitLine line{"total toe at " + millimetresLabel(drawing.diameter, 0) + ", mm",
                 inMillimetres(drawing.total),
                 inMillimetres(drawing.standardUncertainty),
                 {},
                 drawing.verdict,
                 shortNumber(inMillimetres(drawing.total), 2) + " mm"};
  if (drawing.limit->min) line.limit.min = perRadian * *drawing.limit->min;
  if (drawing.limit->max) line.limit.max = perRadian * *drawing.limit->max;
  drawLimitLine(figure, line, {1.0, cut + 0.3, size.width - 1.0, size.height});
  return figure;
}

}  // namespace sw::compute
