// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"

// Axes with round marks, and polar rings: where values land on a picture.

namespace sw::figure {

struct Range {
  double low = 0;
  double high = 1;
  void include(double value);
  /// Wider by this share of the span on both sides; a span of nothing becomes one of `least`.
  void widen(double share, double least);
};

struct AxisText {
  std::string title;  ///< "Pack, mm"
  int decimals = -1;  ///< of its numbers; -1 = as many as the marks need
  double step = 0;    ///< between its marks, such as 90 degrees; 0 = a round one for the room
};

/// 1, 2 or 5 times a power of ten for about `marks` marks.
[[nodiscard]] double roundStep(double span, int marks);
/// The multiples of the step within the range.
[[nodiscard]] std::vector<double> roundMarks(const Range& range, double step);
/// A number with as many decimals as the step has.
[[nodiscard]] std::string markText(double value, double step, int decimals = -1);

class Axes {
 public:
  /// Leaves room for numbers and titles at the left and below within `size`.
  Axes(Size size, const Range& x, const Range& y);

  [[nodiscard]] Point at(double x, double y) const;
  /// The same, brought back onto the edge where it lies outside.
  [[nodiscard]] Point inside(double x, double y) const;
  [[nodiscard]] double left() const { return m_left; }
  [[nodiscard]] double right() const { return m_right; }
  [[nodiscard]] double top() const { return m_top; }
  [[nodiscard]] double bottom() const { return m_bottom; }
  [[nodiscard]] const Range& x() const { return m_x; }
  [[nodiscard]] const Range& y() const { return m_y; }

  /// Grid, frame, numbers and titles.
  void draw(Figure& figure, const AxisText& x, const AxisText& y) const;
  /// Points of the line that lie within, joined.
  [[nodiscard]] Path line(const std::vector<Point>& values, Tone tone) const;
  /// The area between two lines over the same x.
  [[nodiscard]] Path band(const std::vector<Point>& low, const std::vector<Point>& high,
                          Tone tone) const;

 private:
  Range m_x, m_y;
  double m_left, m_right, m_top, m_bottom;
};

/// Rings and spokes about a centre; angles in degrees clockwise from the top, as a clock.
class Polar {
 public:
  Polar(Size size, const Range& radius);
  [[nodiscard]] Point at(double degrees, double value) const;
  [[nodiscard]] Point centre() const { return m_centre; }
  [[nodiscard]] double outer() const { return m_outer; }
  /// Rings at round values with their numbers, spokes with the texts given, evenly spaced.
  void draw(Figure& figure, const std::string& unit, const std::vector<std::string>& spokes) const;

 private:
  Range m_radius;
  Point m_centre;
  double m_inner, m_outer;
};

}  // namespace sw::figure
