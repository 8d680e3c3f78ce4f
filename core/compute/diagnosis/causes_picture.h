// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"

namespace sw::compute {

/// One bar: a cause with its probability and the words for it.
struct CauseBar {
  std::string name;
  double probability = 0;
  std::string words;
};

/// The four leading causes, or as many as there is room for, and something else.
[[nodiscard]] figure::Figure causesPicture(const std::vector<CauseBar>& bars, figure::Size size);

}  // namespace sw::compute
