// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "figure/vectors.h"
#include "measure/evaluation.h"

// A setting with its uncertainty on a line with the limits, as the pictures of toe and caster end.

namespace sw::compute {

struct LimitLine {
  std::string title;  ///< "total toe, mm"
  double value = 0;   ///< in the unit of the title, as all here
  double standardUncertainty = 0;
  LimitBand limit;
  Verdict verdict = Verdict::NoLimit;
  std::string text;  ///< at the value
};

/// In a box of kLimitLineHeight or more.
void drawLimitLine(figure::Figure& figure, const LimitLine& line, const figure::Box& box);

inline constexpr double kLimitLineHeight = 6.0;  // em

}  // namespace sw::compute
