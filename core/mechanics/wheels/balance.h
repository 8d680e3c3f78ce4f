// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include "base/result.h"
#include "mechanics/polar.h"
#include "units/quantity.h"

// METHOD CARD: balancing with trial weights and a phase mark
// Formula: influence coefficients a_ij = (V_i with trial j - V_i0) / W_j (complex). One plane:
//   B = -V0 / a. Two planes: [a] B = -V0. What is left after weights C: V0 + a C.
// Source: method of influence coefficients, any textbook on vibration (from memory).
// Assumptions: vibration is linear in the weights, at one and the same speed in all runs; each
//   trial weight is taken off again before the next; one sense of angle for marks, weights and
//   readings.
// When not to use: with a trial weight that changes little. A change of less than 30 % in amount
//   and 30 degrees in angle is common practice, no source, for "too little".
// Valid range: amounts >= 0, trial weights > 0, at least one initial vibration for a correction.
// Degenerate cases: a trial weight without any effect; two planes whose weights act alike
//   (|det| <= 1e-9 of the product of norms).
// Trap: a solution for the *unbalance* is not the correction. Weights put at its angles double the
//   vibration: check by substitution, V0 + a B = 0.
// Accuracy: condition() says by how much at most relative errors of readings grow.
// Reference test: tests/core/mechanics/wheels/balance_test.cpp.

namespace sw::mechanics {

/// A weight: its mass and angle.
struct WeightVector {
  Mass amount;
  Angle angle;
};
[[nodiscard]] WeightVector toWeight(const Polar& kilogramsAtAngle);

/// Vibration, in any one unit, for one kilogram.
using Influence = Polar;

struct OnePlaneRuns {
  Polar initial;
  WeightVector trialWeight;
  Polar withTrial;
};
struct OnePlaneBalance {
  Influence influence;
  WeightVector unbalance;
  WeightVector correction;     ///< opposite the unbalance
  bool trialTooSmall = false;  ///< changed the reading by less than 30 % and 30 degrees
};
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range";
/// Degenerate "balance.no_effect".
[[nodiscard]] Result<OnePlaneBalance> balanceOnePlane(const OnePlaneRuns& runs);
/// What is left with these weights on and no others of this balance.
[[nodiscard]] Polar residual(const Polar& initial, const Influence& influence,
                             const WeightVector& fitted);

/// Indexed by plane: 0 inner, 1 outer.
using PlanePair = std::array<Polar, 2>;
using WeightPair = std::array<WeightVector, 2>;

struct TwoPlaneRuns {
  PlanePair initial;
  WeightPair trialWeights;               ///< one a run
  std::array<PlanePair, 2> withTrial{};  ///< [run][plane read]
};
struct TwoPlaneBalance {
  std::array<PlanePair, 2> influence{};  ///< [plane read][plane of the weight]
  WeightPair unbalance;
  WeightPair correction;
  double condition = 1;  ///< largest over smallest singular value of the influence
};
/// Errors: as one plane, and Degenerate "balance.planes_alike".
[[nodiscard]] Result<TwoPlaneBalance> balanceTwoPlanes(const TwoPlaneRuns& runs);
[[nodiscard]] PlanePair residual(const PlanePair& initial,
                                 const std::array<PlanePair, 2>& influence,
                                 const WeightPair& fitted);

}  // namespace sw::mechanics
