// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/swivel/starting_force.h"

namespace sw::compute {

struct StartingForceShown {
  StartingPull pull;
  std::optional<SwivelTorque> torque;  ///< where a force was given
  std::optional<Force> forTarget;      ///< the pull that `target` needs
  std::optional<Torque> target;
};

/// The arm from above, the pull on it at its angle, and the part of it that is square to the arm.
[[nodiscard]] figure::Figure startingForcePicture(const StartingForceShown& shown,
                                                  figure::Size size);

}  // namespace sw::compute
