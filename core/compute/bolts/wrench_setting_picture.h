// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "compute/calculation.h"
#include "mechanics/bolts/torque_wrench.h"
#include "mechanics/bolts/wrench_adapter.h"

namespace sw::compute {

struct WrenchDrawing {
  struct Check {
    Torque reference;
    mechanics::WrenchCheck found;
  };
  std::optional<Torque> wanted;   ///< at the fastener
  std::optional<Torque> setting;  ///< at the drive
  std::optional<mechanics::WrenchAdapter> adapter;
  std::vector<mechanics::WrenchFit> fits;  ///< the best first
  std::optional<Check> check;
};

/// The adapter to scale, the ranges of the wrenches with the setting, and a check in its band:
/// those that there are, as far as there is room.
[[nodiscard]] figure::Figure wrenchSettingPicture(const WrenchDrawing& drawing, figure::Size size);

}  // namespace sw::compute
