// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/joint_friction.h"
#include "mechanics/bolts/thread.h"

// METHOD CARD: from tightening torque to clamp force and back
// Formula (Kellermann-Klein, Motosh; the form of VDI 2230): M = F [ d2/2 t + D_Km/2 mu_K ],
//   linear: t = P / (pi d2) + mu_G / cos 30, exact: t = tan(phi + rho'), tan phi = P / (pi d2),
//   tan rho' = mu_G / cos 30. The linear form gives 0.3 to 0.5 % more force from M6 to M14.
//   Undoing: the pitch term with the other sign. Short form: M = K d F, so K = [ ] / d.
// Source: VDI 2230-1 (from memory), Shigley, Mechanical Engineering Design, for the exact form
//   (from memory).
// Trap: K is no coefficient of friction: mu 0.12 makes K 0.163 on M10. The undoing torque (about
//   70 % of M) is no proof of how tight a bolt was.
// Valid range: 60 degree threads, 0 < mu <= 1, lengths > 0.
// Assumptions: friction of one value over thread and face; nothing rubs but these two (a
// self-locking
//   nut adds its own drag); no bending.
// When not to use: for the lasting force: settling, temperature and load come off it. Beyond yield
//   (angle tightening) force no longer follows torque.
// Accuracy: that of the friction, which is known to +/-25 % at best; hence ranges, not numbers.
// Reference test: tests/core/mechanics/bolts/clamp_force_test.cpp.

namespace sw::mechanics {

enum class TorqueFormula { Linear, Exact };

struct BoltJoint {
  Thread thread;
  ThreadGeometry geometry;
  Length frictionDiameter;  ///< D_Km
  TorqueFormula formula = TorqueFormula::Linear;
};
/// Errors: as threadGeometry; "measure.not_positive", "measure.not_finite" (friction_diameter).
[[nodiscard]] Result<BoltJoint> boltJoint(const Thread& thread, Length frictionDiameter,
                                          TorqueFormula formula = TorqueFormula::Linear);

// The functions below need a joint of boltJoint() and friction within its range.

/// t: thread torque is F d2/2 t.
[[nodiscard]] double threadFactor(const BoltJoint& joint, double threadFriction);
[[nodiscard]] Torque tighteningTorque(Force clamp, const BoltJoint& joint,
                                      const Friction& friction);
[[nodiscard]] Torque undoingTorque(Force clamp, const BoltJoint& joint, const Friction& friction);
[[nodiscard]] Force clampForce(Torque torque, const BoltJoint& joint, const Friction& friction);
[[nodiscard]] double nutFactor(const BoltJoint& joint, const Friction& friction);

/// Parts of the tightening torque; the first three make 1.
struct TorqueShares {
  double stretch = 0;
  double thread = 0;
  double head = 0;
  double undoing = 0;  ///< undoing torque / tightening torque
};
[[nodiscard]] TorqueShares torqueShares(const BoltJoint& joint, const Friction& friction);

/// The one friction, in thread and under the head, that makes this force of this torque (linear
/// form). Empty where even none does.
[[nodiscard]] std::optional<double> impliedFriction(Torque torque, Force clamp,
                                                    const BoltJoint& joint);

/// Short form. Errors: "measure.not_positive", "measure.not_finite" (fields torque, clamp_force,
/// nut_factor, diameter).
[[nodiscard]] Result<double> nutFactorFrom(Torque torque, Force clamp, Length diameter);
[[nodiscard]] Result<Force> clampForceByNutFactor(Torque torque, double nutFactor, Length diameter);
[[nodiscard]] Result<Torque> torqueByNutFactor(Force clamp, double nutFactor, Length diameter);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::TorqueFormula> {
  using E = mechanics::TorqueFormula;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Linear, "linear"}, {E::Exact, "exact"}}};
};

}  // namespace sw
