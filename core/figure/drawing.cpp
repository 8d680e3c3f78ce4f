// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace sw::figure {

namespace {

constexpr double kHead = 0.95;         // length of an arrow head, em
constexpr double kHeadHalf = 0.34;     // half of its width
constexpr double kHeadOfShaft = 0.45;  // short arrows have short heads
constexpr double kEndStroke = 0.45;    // half of the stroke at an end
constexpr double kHeadlineMiddle = 0.85;
constexpr double kNumberSize = 0.85;
constexpr double kEmAMark = 4.5;
constexpr double kLetter = 0.66;  // em, a wide one

Point between(Point a, Point b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

double distance(Point a, Point b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

/// The point beside `at`, square to the way from a to b.
Point beside(Point at, Point a, Point b, double by) {
  const double length = distance(a, b);
  if (!(length > 0)) return at;
  return {at.x - by * (b.y - a.y) / length, at.y + by * (b.x - a.x) / length};
}

void head(Figure& figure, Point back, Point tip, Tone tone) {
  const double half = kHeadHalf / kHead * distance(back, tip);
  figure.add(
      shape({tip, beside(back, back, tip, half), beside(back, back, tip, -half)}, tone, 1.0, 0.05));
}

void endStroke(Figure& figure, Point at, Point a, Point b, Tone tone, double width) {
  figure.add(
      straightLine(beside(at, a, b, kEndStroke), beside(at, a, b, -kEndStroke), tone, width));
}

/// Where the line x + y = `sum` enters and leaves the rectangle.
std::vector<Point> slanted(double sum, Point topLeft, Point bottomRight) {
  const double fromX = std::max(topLeft.x, sum - bottomRight.y);
  const double toX = std::min(bottomRight.x, sum - topLeft.y);
  if (!(toX > fromX)) return {};
  return {{fromX, sum - fromX}, {toX, sum - toX}};
}

void headlineWords(Figure& figure, const std::string& words, double right) {
  // Smaller where it would meet the title of an axis.
  const double size = roomFor(words) > 0.6 * figure.size.width ? 0.85 : 1.0;
  figure.add(Text{{right, kHeadlineMiddle}, words, Side::Left, Room::Fixed, Tone::Ink, size, true});
}

Point moved(Point point, Point by) {
  return {point.x + by.x, point.y + by.y};
}

}  // namespace

Path straightLine(Point a, Point b, Tone tone, double width) {
  Path path;
  path.points = {a, b};
  path.tone = tone;
  path.width = width;
  return path;
}

Path dashedLine(Point a, Point b, Tone tone, double width) {
  Path path = straightLine(a, b, tone, width);
  path.stroke = Stroke::Dashed;
  return path;
}

Path shape(std::vector<Point> points, Tone tone, double fill, double width) {
  Path path;
  path.points = std::move(points);
  path.tone = tone;
  path.width = width;
  path.closed = true;
  path.fill = fill;
  return path;
}

Path box(Point a, Point b, Tone tone, double fill) {
  return shape({a, {b.x, a.y}, b, {a.x, b.y}}, tone, fill);
}

Path area(Point a, Point b, Tone tone, double fill) {
  Path path = box(a, b, tone, fill);
  path.stroke = Stroke::None;
  return path;
}

Path roundedBox(Point middle, Size size, double radius, double turned, Tone tone, double fill) {
  const double x = size.width / 2 - radius;
  const double y = size.height / 2 - radius;
  const std::array<Point, 4> corners{{{x, -y}, {x, y}, {-x, y}, {-x, -y}}};
  const double angle = turned * std::numbers::pi / 180;
  std::vector<Point> points;
  double from = 0;
  for (const Point& corner : corners) {
    for (const Point& each : arc(corner, radius, from, from + 90)) {
      points.push_back({middle.x + each.x * std::cos(angle) - each.y * std::sin(angle),
                        middle.y + each.x * std::sin(angle) + each.y * std::cos(angle)});
    }
    from += 90;
  }
  return shape(std::move(points), tone, fill);
}

Path circle(Point centre, double radius, Tone tone, double fill, double width) {
  return shape(arc(centre, radius, 0, 360), tone, fill, width);
}

void arrow(Figure& figure, Point from, Point to, Tone tone, double width) {
  const double length = distance(from, to);
  if (!(length > 0)) return;
  const Point back = between(to, from, std::min(kHead, kHeadOfShaft * length) / length);
  figure.add(straightLine(from, back, tone, width));
  head(figure, back, to, tone);
}

void turnArrow(Figure& figure, Point centre, double radius, double fromDegrees, double toDegrees,
               Tone tone, double width) {
  const double turn = toDegrees - fromDegrees;
  const double length = std::abs(turn) * std::numbers::pi / 180 * radius;
  if (!(length > 0)) return;
  const double backDegrees = toDegrees - turn * std::min(kHead, kHeadOfShaft * length) / length;
  Path shaft;
  shaft.points = arc(centre, radius, fromDegrees, backDegrees);
  shaft.tone = tone;
  shaft.width = width;
  figure.add(std::move(shaft));
  head(figure, onCircle(centre, radius, backDegrees), onCircle(centre, radius, toDegrees), tone);
}

void dimension(Figure& figure, Point a, Point b, Tone tone) {
  const Point middle = between(a, b, 0.5);
  endStroke(figure, a, a, b, tone, 0.1);
  endStroke(figure, b, a, b, tone, 0.1);
  arrow(figure, middle, a, tone, 0.1);
  arrow(figure, middle, b, tone, 0.1);
}

void errorBar(Figure& figure, Point a, Point b, Tone tone, double width) {
  figure.add(straightLine(a, b, tone, width));
  endStroke(figure, a, a, b, tone, width);
  endStroke(figure, b, a, b, tone, width);
}

void hatch(Figure& figure, Point topLeft, Point bottomRight, Tone tone, double spacing) {
  const double step = spacing * std::numbers::sqrt2;
  const double last = bottomRight.x + bottomRight.y;
  for (double sum = topLeft.x + topLeft.y + step; sum < last; sum += step) {
    const auto ends = slanted(sum, topLeft, bottomRight);
    if (!ends.empty()) figure.add(straightLine(ends[0], ends[1], tone, 0.06));
  }
}

void headline(Figure& figure, const std::string& words, MarkShape mark, Tone tone) {
  const Point at{figure.size.width - 0.7, kHeadlineMiddle};
  figure.add(Mark{at, mark, tone, 0.5});
  headlineWords(figure, words, at.x - 0.6);
}

void headline(Figure& figure, const std::string& words) {
  headlineWords(figure, words, figure.size.width);
}

void place(Figure& figure, const Figure& part, Point corner) {
  for (Item item : part.items) {
    if (auto* path = std::get_if<Path>(&item)) {
      for (Point& point : path->points) point = moved(point, corner);
    } else if (auto* mark = std::get_if<Mark>(&item)) {
      mark->at = moved(mark->at, corner);
    } else if (auto* text = std::get_if<Text>(&item)) {
      text->at = moved(text->at, corner);
    }
    figure.add(std::move(item));
  }
}

double roomFor(const std::string& text, double size) {
  const auto letters = std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  });
  return kLetter * size * static_cast<double>(letters);
}

RowScale::RowScale(const Range& range, double left, double right)
    : m_range(range), m_left(left), m_right(right) {}

double RowScale::at(double value) const {
  return m_left + (value - m_range.low) / (m_range.high - m_range.low) * (m_right - m_left);
}

double RowScale::inside(double value) const {
  return at(std::clamp(value, m_range.low, m_range.high));
}

void RowScale::draw(Figure& figure, double top, double bottom, const std::string& title) const {
  const int marks = std::max(2, static_cast<int>((m_right - m_left) / kEmAMark));
  const double step = roundStep(m_range.high - m_range.low, marks);
  for (const double value : roundMarks(m_range, step)) {
    figure.add(straightLine({at(value), top}, {at(value), bottom}, Tone::Grid, 0.06));
    figure.add(Text{{at(value), bottom + 0.1},
                    markText(value, step),
                    Side::Below,
                    Room::Optional,
                    Tone::Quiet,
                    kNumberSize});
  }
  figure.add(straightLine({m_left, bottom}, {m_right, bottom}, Tone::Quiet, 0.1));
  figure.add(Text{{m_right, bottom + kScaleRoom - 0.1},
                  title,
                  Side::AboveLeft,
                  Room::Fixed,
                  Tone::Quiet,
                  kNumberSize});
}

}  // namespace sw::figure
