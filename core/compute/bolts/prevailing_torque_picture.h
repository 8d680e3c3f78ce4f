// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/bolts/prevailing_torque.h"

namespace sw::compute {

struct DragDrawing {
  struct Tightening {
    mechanics::TorqueRange sheet;
    Torque drag;
    mechanics::DragRule rule = mechanics::DragRule::AddAlways;
    mechanics::FinalTorque final;
  };
  struct UsedNut {
    std::string thread;
    Torque breakaway;
    std::optional<Torque> least;
    mechanics::UsedNutVerdict verdict = mechanics::UsedNutVerdict::NoLimit;
  };
  std::optional<Tightening> tightening;
  std::optional<UsedNut> nut;
};

/// The figure of the sheet moved up by the drag, and what a used nut holds against the least.
[[nodiscard]] figure::Figure prevailingTorquePicture(const DragDrawing& drawing, figure::Size size);

}  // namespace sw::compute
