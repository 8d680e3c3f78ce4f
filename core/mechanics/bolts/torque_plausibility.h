// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/joint_friction.h"
#include "mechanics/bolts/strength_class.h"
#include "mechanics/bolts/utilisation.h"
#include "units/typed_quantity.h"

// METHOD CARD: is a tightening torque believable for this bolt?
// Formula: utilisation u of yield (utilisation.h, plastic modulus, linear form) at three frictions:
//   the least of the range, the middle 0.14 (or the end of the range nearest to it), the greatest
//   (but at least 0.24, which only ever makes the verdict milder). Thread and face have the same.
//   impossible:       u > 1 even at the greatest     check: u > 1 at the middle
//   note:             u > 1 only at the least         suspiciously_low: u < 0.2 at the least
//   Readings proposed where the figure is not plausible: the same number in every other unit of
//   torque, and the figure times 10, 100, 1/10, 1/100, those with u from 0.4 to 1.0 at the middle
//   friction. Nothing is ever corrected by itself.
// Source: common practice, no source, for the bounds; VDI 2230-1 (from memory) for u.
// What it finds: a figure ten times too high (or kgf m entered as N m after conversion) wherever
// the
//   right one has u > 0.1 at friction 0.24, ten times too low wherever it has u < 2 at 0.08. What
//   it often does not find: lbf ft taken for N m, a factor of 1.36. So keep the unit as typed.
// Exempt: angle-tightened bolts (their torque is a start, yield is meant): all but impossible.
//   Fasteners that clamp a bearing or pull up a taper: suspiciously_low, which is meant there.
// Degenerate cases: torque must be more than 0.
// When not to use: as the source of a torque; plausible is not right.
// Reference test: tests/core/mechanics/bolts/torque_plausibility_test.cpp.

namespace sw::mechanics {

enum class FastenerDuty { Joint, AngleTightened, Bearing, TaperJoint };

enum class TorqueVerdict { Plausible, Note, Check, Impossible, SuspiciouslyLow, Exempt };

/// A line of a spec sheet: the torque as typed and what it tightens.
struct TorqueClaim {
  TypedQuantity torque;
  Thread thread;
  StrengthClass strengthClass = StrengthClass::Iso8x8;
  FrictionRange friction;
  BearingFace face;
  FastenerDuty duty = FastenerDuty::Joint;
};

enum class Rereading { DecimalSlip, OtherUnit };
struct ProposedReading {
  TypedQuantity torque;
  Rereading as = Rereading::DecimalSlip;
  double utilisation = 0;  ///< at the middle friction
};

struct TorquePlausibility {
  TorqueVerdict verdict = TorqueVerdict::Plausible;
  std::optional<TorqueVerdict> exemptFrom;  ///< what it would be but for its duty
  double atLeastFriction = 0;               ///< u
  double atMiddleFriction = 0;
  double atGreatestFriction = 0;
  FrictionRange friction;  ///< as used: the least and the greatest
  double middleFriction = 0.14;
  FrictionDiameter face;
  std::vector<ProposedReading> readings;
};

/// Errors: as strengthOf, frictionDiameter, boltJoint, checkFriction (field friction),
/// "measure.not_positive" (torque).
[[nodiscard]] Result<TorquePlausibility> judgeTorque(const TorqueClaim& claim);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::FastenerDuty> {
  using E = mechanics::FastenerDuty;
  static constexpr std::array<std::pair<E, std::string_view>, 4> table{
      {{E::Joint, "joint"},
       {E::AngleTightened, "angle_tightened"},
       {E::Bearing, "bearing"},
       {E::TaperJoint, "taper_joint"}}};
};

template <>
struct Words<mechanics::TorqueVerdict> {
  using E = mechanics::TorqueVerdict;
  static constexpr std::array<std::pair<E, std::string_view>, 6> table{
      {{E::Plausible, "plausible"},
       {E::Note, "note"},
       {E::Check, "check"},
       {E::Impossible, "impossible"},
       {E::SuspiciouslyLow, "suspiciously_low"},
       {E::Exempt, "exempt"}}};
};

template <>
struct Words<mechanics::Rereading> {
  using E = mechanics::Rereading;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::DecimalSlip, "decimal_slip"}, {E::OtherUnit, "other_unit"}}};
};

}  // namespace sw
