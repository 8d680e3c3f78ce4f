// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/input_reader.h"
#include "mechanics/bolts/clamp_force.h"
#include "mechanics/bolts/joint_friction.h"
#include "mechanics/bolts/utilisation.h"

// Friction and the face that rubs, as the calculations of fasteners read and describe them.

namespace sw::compute {

/// Whether anything was said about friction, or the usual span was taken.
enum class FrictionKnowledge { Given, Assumed };
struct FrictionInput {
  mechanics::JointFriction range;
  FrictionKnowledge knowledge = FrictionKnowledge::Assumed;
};
/// Reads friction_class and friction: the same in thread and under the head. Errors are kept.
[[nodiscard]] FrictionInput frictionField(InputReader& reader);
/// The same, and thread_friction and head_friction, which replace it.
[[nodiscard]] FrictionInput frictionFields(InputReader& reader);
/// Reads bearing_diameter and hole_diameter.
[[nodiscard]] mechanics::BearingFace faceFields(InputReader& reader);
[[nodiscard]] std::vector<FieldDescription> frictionDescription();
[[nodiscard]] std::vector<FieldDescription> frictionDescriptions();
[[nodiscard]] std::vector<FieldDescription> faceDescriptions();

/// {"min", "max"} of plain numbers.
[[nodiscard]] Json spanJson(double least, double most);
/// The fields "min" and "max" of plain numbers.
[[nodiscard]] std::vector<FieldDescription> spanFields();

void noteFriction(const FrictionInput& friction, std::vector<Note>& notes);
void noteFace(mechanics::FrictionDiameterFrom from, std::vector<Note>& notes);

}  // namespace sw::compute
