// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/clamp_force.h"

// METHOD CARD: how much of a bolt's yield strength a tightening torque uses
// Formula: sigma = F / As; tau = M_G / W_p, W_p = pi/12 d0^3 (plastic) or pi/16 d0^3 (elastic);
//   sigma_red = sqrt(sigma^2 + 3 tau^2); u = sigma_red / yield. With t of clamp_force.h
//   u = F / (As yield) sqrt(1 + 3 (k d2/d0 t)^2), k = 3/2 plastic, 2 elastic. Greatest preload:
//   F with u = nu (0.9 by custom).
// Source: VDI 2230-1 (from memory). The plastic modulus came with the edition of 2001/2003; tables
//   up to 1986 use the elastic one and are 8 to 10 % lower. An answer says which was used.
// Friction is a range, so u is one: 25 N m on M8 8.8 is anything from 0.6 to 1.2. Judge "too tight"
//   by its upper end and "too loose" by the lower. Thread and head friction vary independently;
//   with A = mu_K D_Km / 2 and B = d2 / 2, u is largest at the least head friction and one end of
//   the thread friction, smallest at the greatest head friction and the t nearest B / (3 (k
//   d2/d0)^2 A).
// Tightening factor: alpha = F_max / F_min = (1 + s) / (1 - s); torque wrench 1.6 usual, 1.6 to 2.0
//   with estimated friction (VDI 2230).
// u > 1 means "would yield", no force follows from it any more. Below, u is linear in torque.
// When not to use: angle-tightened bolts, waisted shanks, threads in soft metal (they strip first).
// Reference test: tests/core/mechanics/bolts/utilisation_test.cpp.

namespace sw::mechanics {

enum class TorsionModulus { Plastic, Elastic };

inline constexpr double kUsualUtilisation = 0.9;

struct BoltStress {
  Pressure tension;
  Pressure torsion;
  Pressure combined;
};
/// Needs a joint of boltJoint() and friction within its range.
[[nodiscard]] BoltStress boltStress(Force clamp, const BoltJoint& joint, double threadFriction,
                                    TorsionModulus modulus);

/// Lower and upper end.
struct Span {
  double least = 0;
  double most = 0;
};
struct YieldCriterion {
  Pressure yield;
  TorsionModulus modulus = TorsionModulus::Plastic;
};
/// Errors: "measure.not_positive", "measure.not_finite" (torque, yield); as checkFriction
/// (thread_friction, head_friction).
[[nodiscard]] Result<Span> utilisation(Torque torque, const BoltJoint& joint,
                                       const JointFriction& friction,
                                       const YieldCriterion& criterion);

/// The preload at which u is `share`. Errors: as above; OutOfRange "bolts.bad_share" unless
/// 0 < share <= 1 (field utilisation).
[[nodiscard]] Result<Force> greatestPreload(const BoltJoint& joint, double threadFriction,
                                            const YieldCriterion& criterion,
                                            double share = kUsualUtilisation);
/// The torque at which u does not pass `share` anywhere in the range of friction. Errors: the same.
[[nodiscard]] Result<Torque> greatestTorque(const BoltJoint& joint, const JointFriction& friction,
                                            const YieldCriterion& criterion,
                                            double share = kUsualUtilisation);

/// Scatter +/-s of the preload as a tightening factor. Errors: OutOfRange "bolts.bad_scatter"
/// unless 0 <= s < 1 (field scatter).
[[nodiscard]] Result<double> tighteningFactorFrom(double scatter);
/// Errors: OutOfRange "bolts.bad_tightening_factor" below 1 (field tightening_factor).
[[nodiscard]] Result<double> scatterFrom(double tighteningFactor);
/// What may be left of the greatest preload. Errors: the same.
[[nodiscard]] Result<Force> leastPreload(Force greatest, double tighteningFactor);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::TorsionModulus> {
  using E = mechanics::TorsionModulus;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Plastic, "plastic"}, {E::Elastic, "elastic"}}};
};

}  // namespace sw
