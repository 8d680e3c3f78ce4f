// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "compute/calculation.h"
#include "mechanics/wheels/wheel_frequency.h"

namespace sw::compute {

enum class SpeedGrowth { None, Linear };

struct FrequencyDrawing {
  mechanics::RollingCircumference rolling;  ///< of the tyre that the speeds go by
  SpeedGrowth growth = SpeedGrowth::None;
  int orders = 1;
  std::optional<double> finalDrive;
  std::vector<Speed> speeds;
  std::vector<Frequency> frequencies;
  std::string speedTitle;  ///< "speed, km/h"
};

/// Frequency over speed, a line with its 95 % band for each order, and what was asked for.
[[nodiscard]] figure::Figure wheelFrequencyPicture(const FrequencyDrawing& drawing,
                                                   figure::Size size);

}  // namespace sw::compute
