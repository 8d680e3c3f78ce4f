// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/axes.h"
#include "figure/figure.h"

// One axis alone, with what lies on it in lanes above.

namespace sw::figure {

/// Even: like steps are as long. Ratio: like ratios are.
enum class Spacing { Even, Ratio };

class NumberLine {
 public:
  /// Across from `left` to `right`; Ratio needs a range above 0.
  NumberLine(double left, double right, const Range& range, Spacing spacing = Spacing::Even);

  /// Where a value lies; on the end of the line where it is beyond.
  [[nodiscard]] double at(double value) const;
  [[nodiscard]] double left() const { return m_left; }
  [[nodiscard]] double right() const { return m_right; }
  [[nodiscard]] const Range& range() const { return m_range; }
  /// The side of its point with more room.
  [[nodiscard]] Side roomySide(double value) const;

  /// The axis at `bottom` with numbers and title below, which take kRoomBelowLine, and lines up to
  /// `top`.
  void draw(Figure& figure, double top, double bottom, const std::string& title) const;
  /// A filled bar from value to value.
  [[nodiscard]] Path bar(const Range& values, double middle, double height, Tone tone,
                         double fill = 0.25) const;
  /// An upright line at a value.
  [[nodiscard]] Path upright(double value, double top, double bottom, Tone tone,
                             Stroke stroke = Stroke::Solid) const;

 private:
  [[nodiscard]] std::vector<double> marks() const;

  double m_left, m_right;
  Range m_range;
  Spacing m_spacing;
};

/// What a number line needs below its axis.
inline constexpr double kRoomBelowLine = 2.7;  // em

}  // namespace sw::figure
