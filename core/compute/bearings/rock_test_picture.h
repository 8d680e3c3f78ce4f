// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/bearings/rock_test.h"

namespace sw::compute {

/// Rock with the brake on and off as two bars: what the brake takes out is the wheel bearing.
[[nodiscard]] figure::Figure rockTestPicture(const mechanics::RockTestInput& input,
                                             const mechanics::RockTest& test,
                                             const std::optional<Length>& expected,
                                             figure::Size size);

}  // namespace sw::compute
