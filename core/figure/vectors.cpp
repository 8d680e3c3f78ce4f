// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/vectors.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace sw::figure {

namespace {

constexpr double kHead = 0.9;            // em, length of a head
constexpr double kSlimHead = 0.6;        // of a thin line
constexpr double kHeadHalfWidth = 0.36;  // of its length
constexpr double kShortDimension = 2.2;  // em; shorter ones are shown from outside
constexpr double kMostOfShort = 0.75;    // of a short arrow, its head
constexpr double kLeastArrow = 0.3;      // em, shorter ones have no head
constexpr double kCornerReach = 0.75;    // of a mark's radius
constexpr double kOutside = 1.5;         // em of an arrow from outside
constexpr double kEndStroke = 0.45;      // half of the stroke at an end

double headOf(double width) {
  return width < 0.15 ? kSlimHead : kHead;
}

/// A head with its tip in `tip`, pointing that way.
Path headAt(Point tip, double towards, double length, Tone tone) {
  const Point back = onCircle(tip, length, towards + 180);
  const double half = kHeadHalfWidth * length;
  return outline({tip, onCircle(back, half, towards + 90), onCircle(back, half, towards - 90)},
                 tone, 1.0, 0.04);
}

}  // namespace

Path line(Point from, Point to, Tone tone, double width) {
  Path path;
  path.points = {from, to};
  path.tone = tone;
  path.width = width;
  return path;
}

Path dashed(Point from, Point to, Tone tone, double width) {
  Path path = line(from, to, tone, width);
  path.stroke = Stroke::Dashed;
  return path;
}

Path circle(Point centre, double radius, Tone tone, double width) {
  return outline(arc(centre, radius, 0, 360), tone, 0, width);
}

Path outline(std::vector<Point> points, Tone tone, double fill, double width) {
  Path path;
  path.points = std::move(points);
  path.tone = tone;
  path.width = width;
  path.closed = true;
  path.fill = fill;
  return path;
}

double distance(Point a, Point b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

double bearing(Point from, Point to) {
  return std::atan2(to.x - from.x, from.y - to.y) * 180.0 / std::numbers::pi;
}

Point between(Point a, Point b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

Point turned(Point point, Point about, double degrees) {
  const double angle = degrees * std::numbers::pi / 180.0;
  const double x = point.x - about.x;
  const double y = point.y - about.y;
  return {about.x + x * std::cos(angle) - y * std::sin(angle),
          about.y + x * std::sin(angle) + y * std::cos(angle)};
}

std::vector<Point> turned(std::vector<Point> points, Point about, double degrees) {
  for (Point& point : points) point = turned(point, about, degrees);
  return points;
}

std::vector<Point> rectangle(Point middle, Size size, double degrees) {
  const double w = size.width / 2;
  const double h = size.height / 2;
  return turned({{middle.x - w, middle.y - h},
                 {middle.x + w, middle.y - h},
                 {middle.x + w, middle.y + h},
                 {middle.x - w, middle.y + h}},
                middle, degrees);
}

Text label(const Mark& mark, std::string text, Side side, Room room) {
  const auto [x, y] = wayTo(side);
  const double reach = (x != 0 && y != 0 ? kCornerReach : 1.0) * mark.radius;
  return Text{{mark.at.x + x * reach, mark.at.y + y * reach},
              std::move(text),
              side,
              room,
              mark.tone,
              kLabelSize};
}

void add(Figure& figure, const Arrow& arrow) {
  const double length = distance(arrow.from, arrow.to);
  if (!(length > 0)) return;
  const double head = std::min(headOf(arrow.width), kMostOfShort * length);
  const bool room = length > kLeastArrow;
  const Point end = room ? between(arrow.to, arrow.from, 0.8 * head / length) : arrow.to;
  Path shaft = line(arrow.from, end, arrow.tone, arrow.width);
  shaft.stroke = arrow.stroke;
  figure.add(std::move(shaft));
  if (room) figure.add(headAt(arrow.to, bearing(arrow.from, arrow.to), head, arrow.tone));
}

Path endStroke(Point at, double towards, Tone tone, double width) {
  return line(onCircle(at, kEndStroke, towards + 90), onCircle(at, kEndStroke, towards - 90), tone,
              width);
}

void add(Figure& figure, const Dimension& dimension) {
  const auto& [from, to, text, side, tone, ends] = dimension;
  const double towards = bearing(from, to);
  const bool stroked = ends == DimensionEnds::Stroked;
  if (stroked) {
    figure.add(endStroke(from, towards, tone));
    figure.add(endStroke(to, towards, tone));
  }
  if (stroked || distance(from, to) >= kShortDimension) {
    const Point middle = between(from, to, 0.5);
    add(figure, Arrow{middle, from, tone, 0.1});
    add(figure, Arrow{middle, to, tone, 0.1});
  } else {
    figure.add(line(from, to, tone, 0.1));
    add(figure, Arrow{onCircle(from, kOutside, towards + 180), from, tone, 0.1});
    add(figure, Arrow{onCircle(to, kOutside, towards), to, tone, 0.1});
  }
  if (text.empty()) return;
  figure.add(Text{between(from, to, 0.5), text, side, Room::Movable, tone, kLabelSize});
}

void add(Figure& figure, const Turn& turn) {
  if (turn.toDegrees == turn.fromDegrees) return;
  const double head = headOf(turn.width);
  const double headDegrees = head / turn.radius * 180.0 / std::numbers::pi;
  const double sense = turn.toDegrees < turn.fromDegrees ? -1 : 1;
  const bool room = std::abs(turn.toDegrees - turn.fromDegrees) > headDegrees;
  const double end = room ? turn.toDegrees - 0.8 * sense * headDegrees : turn.toDegrees;
  Path path;
  path.points = arc(turn.centre, turn.radius, turn.fromDegrees, end);
  path.tone = turn.tone;
  path.width = turn.width;
  const Point tip = onCircle(turn.centre, turn.radius, turn.toDegrees);
  // Along the chord of the head, so that it lies on the arc and not beside it.
  const double towards = turn.toDegrees + sense * (90 - headDegrees / 2);
  figure.add(std::move(path));
  if (room) figure.add(headAt(tip, towards, head, turn.tone));
}

Scale::Scale(const Box& box, const Range& x, const Range& y)
    : m_middle(box.centre()),
      m_x((x.low + x.high) / 2),
      m_y((y.low + y.high) / 2),
      m_emPerUnit(std::min(box.width() / (x.high - x.low), box.height() / (y.high - y.low))) {}

Point Scale::at(double x, double y) const {
  return {m_middle.x + em(x - m_x), m_middle.y - em(y - m_y)};
}

}  // namespace sw::figure
