// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"

namespace sw::compute {

/// One bar: a cause with its probability.
struct CauseBar {
  std::string name;
  double probability = 0;
};

/// How a chance is said beside its bar: "very likely", or "very likely, 78 of 100".
enum class ChanceAs { Words, WordsAndFigure };

/// The four leading causes, or as many as there is room for, and something else.
[[nodiscard]] figure::Figure causesPicture(const std::vector<CauseBar>& bars, figure::Size size,
                                           ChanceAs as = ChanceAs::Words);

}  // namespace sw::compute
