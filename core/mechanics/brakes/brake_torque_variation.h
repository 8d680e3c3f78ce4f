// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: brake torque from a disc of uneven thickness
// Formula: a thicker sector spreads the pads by dx: clamping force dN = k dx, k the axial stiffness
//   of caliper, pads and fluid; torque dT = 2 mu r dN on two faces; pressure dN / (pi d^2 / 4) on a
//   piston of diameter d. All peak to peak. Frequency of order n at road speed v: n v / C, C the
//   rolling circumference.
// Source: plane statics; that thicker sectors push the pistons back and pressure and torque vary:
//   automotive chassis textbook (seen). No published k was found.
// Valid range: dx >= 0; k, mu, r, d, v, C > 0; n >= 1.
// Assumptions: linear spring, mu constant, slow against the fluid. Linear in dx, k, mu and r.
// When not to use: k of a given caliper is not in a book and grows with pressure (10 to 30 kN/mm is
//   a guess, common practice, no source): use it to compare, not to set a limit.
// Reference test: tests/core/mechanics/brakes/brake_torque_variation_test.cpp.

namespace sw::mechanics {

struct TorqueVariationInput {
  Length thicknessVariation;
  Stiffness stiffness;
  double friction = 0.4;
  Length effectiveRadius;
  std::optional<Length> pistonDiameter;
};

struct TorqueVariation {
  Force clampingForce;
  Torque torque;
  std::optional<Pressure> pressure;
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (field named).
[[nodiscard]] Result<TorqueVariation> brakeTorqueVariation(const TorqueVariationInput& input);

/// Errors: the same.
[[nodiscard]] Result<Frequency> judderFrequency(Speed speed, Length rollingCircumference,
                                                int order);

}  // namespace sw::mechanics
