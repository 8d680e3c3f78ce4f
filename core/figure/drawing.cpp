// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/drawing.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <utility>

namespace sw::figure {

namespace {

constexpr double kHeadlineMiddle = 0.85;
constexpr double kLetter = 0.66;  // em, a wide one

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

Path box(Point a, Point b, Tone tone, double fill) {
  return outline({a, {b.x, a.y}, b, {a.x, b.y}}, tone, fill);
}

Path area(Point a, Point b, Tone tone, double fill) {
  Path path = box(a, b, tone, fill);
  path.stroke = Stroke::None;
  return path;
}

Path roundedBox(Point middle, Size size, double radius, double degrees, Tone tone, double fill) {
  const double x = size.width / 2 - radius;
  const double y = size.height / 2 - radius;
  const std::array<Point, 4> corners{{{x, -y}, {x, y}, {-x, y}, {-x, -y}}};
  std::vector<Point> points;
  double from = 0;
  for (const Point& corner : corners) {
    const Point centre{middle.x + corner.x, middle.y + corner.y};
    for (const Point& each : arc(centre, radius, from, from + 90)) points.push_back(each);
    from += 90;
  }
  return outline(turned(std::move(points), middle, degrees), tone, fill);
}

Path disc(Point centre, double radius, Tone tone, double fill, double width) {
  return outline(arc(centre, radius, 0, 360), tone, fill, width);
}

void errorBar(Figure& figure, Point a, Point b, Tone tone, double width) {
  figure.add(line(a, b, tone, width));
  figure.add(endStroke(a, bearing(a, b), tone, width));
  figure.add(endStroke(b, bearing(a, b), tone, width));
}

void hatch(Figure& figure, Point topLeft, Point bottomRight, Tone tone, double spacing) {
  const double step = spacing * std::numbers::sqrt2;
  const double last = bottomRight.x + bottomRight.y;
  for (double sum = topLeft.x + topLeft.y + step; sum < last; sum += step) {
    const auto ends = slanted(sum, topLeft, bottomRight);
    if (!ends.empty()) figure.add(line(ends[0], ends[1], tone, 0.06));
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

}  // namespace sw::figure
