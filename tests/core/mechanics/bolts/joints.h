// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "mechanics/bolts/clamp_force.h"
#include "mechanics/bolts/strength_class.h"
#include "mechanics/bolts/thread_designation.h"
#include "mechanics/bolts/utilisation.h"

// Bolted joints as the tests write them.

namespace sw::mechanics::bolts_testing {

/// With the friction diameter of the standard head, or 1.3 d.
inline BoltJoint joint(const char* thread, TorqueFormula formula = TorqueFormula::Linear) {
  const Thread parsed = parseThread(thread).value();
  return boltJoint(parsed, frictionDiameter(parsed, {}).value().diameter, formula).value();
}

inline Friction both(double mu) {
  return {mu, mu};
}

inline JointFriction one(double thread, double head) {
  return {{thread, thread}, {head, head}};
}

inline YieldCriterion yieldOf(StrengthClass strengthClass, const BoltJoint& joint,
                              TorsionModulus modulus = TorsionModulus::Plastic) {
  return {strengthOf(strengthClass, joint.thread.diameter).value().yield, modulus};
}

}  // namespace sw::mechanics::bolts_testing
