// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/track_rod_picture.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "compute/geometry/axle_drawing.h"
#include "compute/picture_parts.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Stroke;
using figure::Text;
using figure::Tone;
using mechanics::RodChange;
using mechanics::RodPlace;

constexpr double kFlatsOfATurn = 6;
constexpr double kMostDegrees = 8;
constexpr double kArmIn = 0.12;  // of the distance of the wheels, that an arm leans inwards
constexpr double kHexagon = 2.0;

std::string headline(const mechanics::RodTurns& turns) {
  const std::string flats = shortNumber(kFlatsOfATurn * turns.turns, 1) + " flats";
  switch (turns.change) {
    case RodChange::Lengthen:
      return "lengthen the rod: " + flats;
    case RodChange::Shorten:
      return "shorten the rod: " + flats;
    case RodChange::Leave:
      return "leave the rod as it is";
  }
  return "";
}

struct RodEnds {
  Point left, right;
};

RodEnds rodOf(const AxlePlaces& axle, RodPlace place) {
  const double sign = place == RodPlace::BehindAxle ? 1 : -1;
  const double in = kArmIn * (axle.right.x - axle.left.x);
  const double y = axle.left.y + sign * 0.36 * axle.wheel.height;
  return {{axle.left.x + axle.wheel.width / 2 + in, y},
          {axle.right.x - axle.wheel.width / 2 - in, y}};
}

void drawRod(Figure& figure, const AxlePlaces& axle, const RodEnds& rod, RodChange change) {
  const double swivel = 0.5 * axle.wheel.width + 0.9;
  const Point left{axle.left.x + swivel, axle.left.y};
  const Point right{axle.right.x - swivel, axle.right.y};
  figure.add(figure::line(left, right, Tone::Material, 0.5));
  figure.add(figure::line(left, rod.left, Tone::Material, 0.35));
  figure.add(figure::line(right, rod.right, Tone::Material, 0.35));
  figure.add(figure::line(rod.left, rod.right, Tone::Accent, 0.35));
  for (const Point& joint : {left, right, rod.left, rod.right}) {
    figure.add(figure::Mark{joint, figure::MarkShape::Disc, Tone::Ink, 0.35});
  }
  if (change == RodChange::Leave) return;
  const double reach = 0.16 * (rod.right.x - rod.left.x);
  const double y = rod.left.y + (rod.left.y > left.y ? 0.9 : -0.9);
  const bool out = change == RodChange::Lengthen;
  const auto arrow = [&](double from, double to) {
    add(figure, Arrow{{from, y}, {to, y}, Tone::Accent, 0.26});
  };
  const double leftEnd = rod.left.x;
  const double rightEnd = rod.right.x;
  arrow(out ? leftEnd + reach : leftEnd, out ? leftEnd : leftEnd + reach);
  arrow(out ? rightEnd - reach : rightEnd, out ? rightEnd : rightEnd - reach);
}

/// The adjuster's hexagon end on, with the flats it is turned by; whole turns are said only.
void drawHexagon(Figure& figure, Point centre, double radius, double turns) {
  std::vector<Point> points;
  for (int i = 0; i < 6; ++i) points.push_back(figure::onCircle(centre, radius, 60.0 * i + 30));
  figure.add(figure::outline(points, Tone::Accent, 0, 0.16));
  const double degrees = 360 * std::min(turns, 0.97);
  add(figure, figure::Turn{centre, radius + 0.6, 0, degrees, Tone::Accent, 0.2});
  figure.add(Text{centre, shortNumber(turns, 2), Side::Centre, Room::Fixed, Tone::Accent,
                  std::clamp(0.6 * radius, 0.9, 1.3), true});
  figure.add(Text{{centre.x + radius + 0.9, centre.y},
                  turns == 1 ? "turn" : "turns",
                  Side::Right,
                  Room::Movable,
                  Tone::Accent,
                  figure::kLabelSize});
}

void drawWheels(Figure& figure, const AxlePlaces& axle, const mechanics::ToeChange& change) {
  const Angle larger =
      std::abs(change.present.si()) > std::abs(change.wanted.si()) ? change.present : change.wanted;
  const double times = enlargement(larger / 2, kMostDegrees);
  const double present = times * inDegrees(change.present) / 2;
  const double wanted = times * inDegrees(change.wanted) / 2;
  for (const auto& [place, sign] : {std::pair{axle.left, 1.0}, std::pair{axle.right, -1.0}}) {
    drawWheelFromAbove(figure, place, axle.wheel, sign * wanted, Tone::Ink, Stroke::Solid);
    drawWheelFromAbove(figure, place, axle.wheel, sign * present, Tone::Quiet, Stroke::Dashed);
  }
  const std::string enlarged = times > 1 ? ", toe " + shortNumber(times, 0) + " times larger" : "";
  figure.add(
      Text{{(axle.left.x + axle.right.x) / 2, axle.left.y + axle.wheel.height / 2 + 0.3},
           (change.present == change.wanted ? "toe as wanted" : "dashed: as it is" + enlarged),
           Side::Below,
           Room::Optional,
           Tone::Quiet,
           0.8});
}

}  // namespace

Figure trackRodPicture(const mechanics::TrackRod& rod, const mechanics::ToeChange& change,
                       const mechanics::RodTurns& turns, figure::Size size) {
  Figure figure = newFigure(size, "Adjusting the track rod",
                            "Axle and track rod from above, and how far the rod is turned");
  figure.add(
      Text{{0.4, 0.1}, headline(turns), Side::BelowRight, Room::Fixed, Tone::Accent, 1.15, true});
  const AxlePlaces axle = axleIn({0.8, 2.2, size.width - 0.8, size.height - 1.6});
  const RodEnds ends = rodOf(axle, rod.place);
  drawWheels(figure, axle, change);
  drawRod(figure, axle, ends, turns.change);
  drawForward(figure, {0.7, size.height - 2.3});
  if (turns.change == RodChange::Leave) return figure;
  const double radius = std::min(kHexagon, 0.14 * axle.wheel.height);
  const double away = radius + 1.6;
  const double y = rod.place == RodPlace::BehindAxle ? axle.left.y - away : axle.left.y + away;
  drawHexagon(figure, {(axle.left.x + axle.right.x) / 2 - 1.0, y}, radius, turns.turns);
  return figure;
}

}  // namespace sw::compute
