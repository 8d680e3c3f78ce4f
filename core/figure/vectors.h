// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/axes.h"
#include "figure/figure.h"

// Lines, arrows, dimensions and angles of a drawing, and real lengths at one scale in a box.
// Bearings are degrees clockwise from the top, as on a clock.

namespace sw::figure {

/// Of texts beside what they name.
inline constexpr double kLabelSize = 0.9;  // em

[[nodiscard]] Path line(Point from, Point to, Tone tone, double width = 0.12);
[[nodiscard]] Path dashed(Point from, Point to, Tone tone, double width = 0.1);
[[nodiscard]] Path circle(Point centre, double radius, Tone tone, double width = 0.12);
/// Closed, and filled at this opacity.
[[nodiscard]] Path outline(std::vector<Point> points, Tone tone, double fill = 0,
                           double width = 0.12);

[[nodiscard]] double distance(Point a, Point b);
/// The bearing of one point from another.
[[nodiscard]] double bearing(Point from, Point to);
[[nodiscard]] Point between(Point a, Point b, double share);
/// Turned clockwise about a point.
[[nodiscard]] Point turned(Point point, Point about, double degrees);
[[nodiscard]] std::vector<Point> turned(std::vector<Point> points, Point about, double degrees);
/// A rectangle about its middle, turned clockwise.
[[nodiscard]] std::vector<Point> rectangle(Point middle, Size size, double degrees = 0);

/// A text beside a mark and clear of it, in its tone.
[[nodiscard]] Text label(const Mark& mark, std::string text, Side side, Room room = Room::Movable);

/// Its head ends in `to`. One too short for a head is drawn without; one of no length, not at all.
struct Arrow {
  Point from;
  Point to;
  Tone tone = Tone::Ink;
  double width = 0.2;
  Stroke stroke = Stroke::Solid;
};
void add(Figure& figure, const Arrow& arrow);

/// A short stroke across a way of that bearing.
[[nodiscard]] Path endStroke(Point at, double towards, Tone tone, double width = 0.1);

/// Stroked ends stand on their own; open ones lie on lines of the drawing.
enum class DimensionEnds { Open, Stroked };

/// A distance between two points with heads at both ends; from outside where it is short and there
/// are no end strokes. A text lies at the middle.
struct Dimension {
  Point from;
  Point to;
  std::string text = {};
  Side side = Side::Above;
  Tone tone = Tone::Ink;
  DimensionEnds ends = DimensionEnds::Open;
};
void add(Figure& figure, const Dimension& dimension);

/// A turn about a centre as an arc with a head at its end. One too small for a head has none.
struct Turn {
  Point centre;
  double radius = 1;
  double fromDegrees = 0;
  double toDegrees = 0;
  Tone tone = Tone::Ink;
  double width = 0.14;
};
void add(Figure& figure, const Turn& turn);

struct Box {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;

  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double height() const { return bottom - top; }
  [[nodiscard]] Point centre() const { return {(left + right) / 2, (top + bottom) / 2}; }
};

/// Real lengths, x to the right and y up, at the largest scale at which both ranges go into a box.
class Scale {
 public:
  Scale(const Box& box, const Range& x, const Range& y);

  [[nodiscard]] Point at(double x, double y) const;
  /// Of a length.
  [[nodiscard]] double em(double length) const { return length * m_emPerUnit; }

 private:
  Point m_middle;
  double m_x, m_y;
  double m_emPerUnit;
};

}  // namespace sw::figure
