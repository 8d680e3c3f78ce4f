// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/axes.h"
#include "figure/figure.h"

// What drawings of parts and rows of bars are made of: lines, boxes, arrows, dimensions, hatching,
// a scale for rows, and one figure as a part of another.

namespace sw::figure {

[[nodiscard]] Path straightLine(Point a, Point b, Tone tone, double width = 0.12);
[[nodiscard]] Path dashedLine(Point a, Point b, Tone tone, double width = 0.14);
/// A rectangle between two corners, filled at this opacity, with its outline.
[[nodiscard]] Path box(Point a, Point b, Tone tone, double fill);
/// The same without an outline.
[[nodiscard]] Path area(Point a, Point b, Tone tone, double fill);
/// A closed outline of any points, filled at this opacity.
[[nodiscard]] Path shape(std::vector<Point> points, Tone tone, double fill, double width = 0.12);
/// A rectangle with round corners, turned about its middle, degrees clockwise.
[[nodiscard]] Path roundedBox(Point middle, Size size, double radius, double turned, Tone tone,
                              double fill);
[[nodiscard]] Path circle(Point centre, double radius, Tone tone, double fill = 0,
                          double width = 0.12);

/// A shaft with a filled head at `to`.
void arrow(Figure& figure, Point from, Point to, Tone tone, double width = 0.16);
/// The same along a circle, angles in degrees clockwise from the top.
void turnArrow(Figure& figure, Point centre, double radius, double fromDegrees, double toDegrees,
               Tone tone, double width = 0.16);
/// A line between two short end strokes with a head at both ends: this is how far.
void dimension(Figure& figure, Point a, Point b, Tone tone);
/// A line between two short end strokes: from here to there lies the value.
void errorBar(Figure& figure, Point a, Point b, Tone tone, double width = 0.16);
/// Slanted lines within a rectangle: cut metal, or ground.
void hatch(Figure& figure, Point topLeft, Point bottomRight, Tone tone, double spacing = 0.6);

/// The answer in a few words at the top right, its mark at the end.
void headline(Figure& figure, const std::string& words, MarkShape mark, Tone tone);
void headline(Figure& figure, const std::string& words);

/// All of `part`, its corner at `corner`.
void place(Figure& figure, const Figure& part, Point corner);

/// Room for a text, in em, rather too much than too little.
[[nodiscard]] double roomFor(const std::string& text, double size = 1.0);

/// One scale from left to right under rows of bars and marks.
class RowScale {
 public:
  RowScale(const Range& range, double left, double right);
  [[nodiscard]] double at(double value) const;
  /// The same, brought back onto the end where it lies outside.
  [[nodiscard]] double inside(double value) const;
  [[nodiscard]] double left() const { return m_left; }
  [[nodiscard]] double right() const { return m_right; }
  [[nodiscard]] const Range& range() const { return m_range; }
  /// Grid from `top` to `bottom`, numbers and title below it: kScaleRoom more.
  void draw(Figure& figure, double top, double bottom, const std::string& title) const;

 private:
  Range m_range;
  double m_left, m_right;
};
inline constexpr double kScaleRoom = 2.7;  ///< em below a RowScale

}  // namespace sw::figure
