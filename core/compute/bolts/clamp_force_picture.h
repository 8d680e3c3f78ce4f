// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/bolts/utilisation.h"

namespace sw::compute {

/// What the picture of a clamp force knows; one of torque, force and yield at least.
struct ClampDrawing {
  mechanics::BoltJoint joint;
  mechanics::JointFriction friction;
  std::optional<Torque> torque;
  std::optional<Force> clampForce;
  std::optional<mechanics::YieldCriterion> criterion;
  double share = mechanics::kUsualUtilisation;
};

/// What was asked over friction, the range of it that counts, and the limits: utilisation of yield
/// of a torque, or its force, or the torque that a force or the strength asks for.
[[nodiscard]] figure::Figure clampForcePicture(const ClampDrawing& given, figure::Size size);

}  // namespace sw::compute
