// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/calculation.h"
#include "mechanics/bolts/tightening_rounds.h"

namespace sw::compute {

/// The circle with the turn of each fastener on it, and the rounds as steps.
[[nodiscard]] figure::Figure tightenPatternPicture(
    const std::vector<int>& order, const std::vector<mechanics::TighteningRound>& rounds,
    figure::Size size);

}  // namespace sw::compute
