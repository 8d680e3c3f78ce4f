// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: swivel torque from the starting pull at the steering arm
// Formula: M = F L cos(a), a the deviation of the pull from square to the arm in the plane of
// rotation;
//   square force F cos(a). A pull off square always over-reads: 10 degrees 1.5 %, 20 degrees 6.4 %.
//   u(M)^2 = (L cos(a) u(F))^2 + (F cos(a) u(L))^2 + (F L sin(a) u(a))^2; nu from nu(F) alone.
//   With a direction only known within +/-w about the measured a, the force is also multiplied by
//   sin(w) / w and u(F) by the spread of the cosine (measure/type_b.h).
// Source: plane statics; JCGM 100:2008 5.1 (from memory) for the uncertainty.
// Valid range: F >= 0, L > 0, |a| < 90 degrees, 0 <= w < 90 degrees, uncertainties >= 0.
// Assumptions: the arm is measured from the swivel axis to the pulling point; inputs independent;
// the
//   pull does not load the bearing (no component along the axis).
// When not to use: to compute a bearing preload in newtons. At standstill under axial load the
// torque does
//   not follow the handbook friction figures: compare pulls with the target pull only.
// Reference test: tests/core/mechanics/swivel/starting_force_test.cpp.

namespace sw {

struct StartingPull {
  Force force;
  Length arm;
  Angle offSquare;                         ///< measured deviation from square to the arm
  Force forceUncertainty;                  ///< standard uncertainty
  Length armUncertainty;                   ///< standard uncertainty
  Angle offSquareUncertainty;              ///< standard uncertainty of the measured deviation
  Angle offSquareWithin;                   ///< half-width of an unknown deviation, 0 = none
  std::optional<double> degreesOfFreedom;  ///< of forceUncertainty; empty = infinite
};

struct SwivelTorque {
  Torque torque;
  Force squareForce;  ///< the force that, pulled square, gives the same torque
  Torque standardUncertainty;
  std::optional<double> degreesOfFreedom;
  double coverageFactor = 2;
  Torque expandedUncertainty;
};

/// Errors: OutOfRange "measure.not_positive" or "measure.not_finite" (field named), OutOfRange
/// "starting_force.not_square" for a quarter turn or more.
[[nodiscard]] Result<SwivelTorque> swivelTorque(const StartingPull& pull, double confidence = 0.95);

/// The pull that a torque needs at an arm, `offSquare` off square. Errors: as swivelTorque.
[[nodiscard]] Result<Force> forceForTorque(Torque torque, Length arm, Angle offSquare);

}  // namespace sw
