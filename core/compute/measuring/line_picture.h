// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "compute/calculation.h"
#include "measure/straight_line.h"

namespace sw::compute {

struct LineShown {
  std::vector<measure::LinePoint> points;
  measure::StraightLine line;
  std::optional<double> at;     ///< an x that was asked for
  std::optional<double> reach;  ///< a y that was asked for
  std::optional<double> place;  ///< the x that reaches it
};

/// Points, line, its band of two standard uncertainties, and what was asked for.
[[nodiscard]] figure::Figure linePicture(const LineShown& shown, figure::Size size);

}  // namespace sw::compute
