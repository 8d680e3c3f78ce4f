// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"

namespace sw::compute {

/// One check of a plan.
struct PlanBar {
  std::string name;
  double setupMinutes = 0;
  double minutes = 0;
  double stillLooking = 1;  ///< chance that it comes to this check
};

/// The plan along a line of minutes: set-ups thin, checks broad, paler the less likely it comes to
/// them. As many checks as there is room for.
[[nodiscard]] figure::Figure planPicture(const std::vector<PlanBar>& bars, figure::Size size);

}  // namespace sw::compute
