// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/brakes/brake_torque_variation.h"

namespace sw::compute {

struct TorqueVariationShown {
  Length thicknessVariation;
  int order = 1;  ///< thick places a turn
  mechanics::TorqueVariation variation;
  std::optional<Frequency> frequency;
};

/// The unrolled disc, its thickness enlarged, above the brake torque: thick places brake harder.
[[nodiscard]] figure::Figure torqueVariationPicture(const TorqueVariationShown& shown,
                                                    figure::Size size);

}  // namespace sw::compute
