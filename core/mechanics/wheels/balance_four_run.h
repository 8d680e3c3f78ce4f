// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>

#include "base/result.h"
#include "mechanics/wheels/balance.h"
#include "units/quantity.h"

// METHOD CARD: balancing by four runs without a phase mark
// Formula: A0 without, A1 to A3 with the same trial weight W at 0, 120 and 240 degrees.
//   T = sqrt(mean(Ai^2) - A0^2), S = sum Ai^2 exp(i ti); unbalance W A0 / T at arg S, the
//   correction opposite. A linear wheel has |S| = 3 A0 T: one reading more than unknowns, so the
//   runs can be held against each other.
//   Uncertainty, linear, u the standard uncertainty of each reading:
//   dU/dA0 = W (T^2 + A0^2) / T^3, dU/dAi = -W A0 Ai / (3 T^3), so
//   u(U) = u W / T^3 hypot(T^2 + A0^2, A0 sqrt(sum Ai^2) / 3);
//   u(angle) = 2 u sqrt(sum (Ai Im(S exp(-i ti)))^2) / |S|^2.
// Source: textbook method (from memory); JCGM 100:2008 5.1.2 for the uncertainty, own derivatives.
// Assumptions: identical road, speed and load in all four runs; readings independent; weights in
//   one plane.
// When not to use: where the vibration depends on a couple, or on anything that changes from run to
//   run.
// Valid range: A0 > 0, Ai >= 0, W > 0, u > 0 where it is stated.
// Degenerate cases: mean(Ai^2) <= A0^2: T is imaginary, "balance.trial_imaginary". Runs that
//   contradict: | |S| - 3 A0 T | more than three of its standard uncertainties where u is stated,
//   else a ratio beyond 0.75 to 1.333 (own rule): "balance.runs_contradict". It is one check for
//   four readings: an error that lengthens T and S alike passes it, so runs that agree prove
//   little.
// Accuracy: linear propagation holds to a few per cent while u(U) / U stays below about 0.2.
// Reference test: tests/core/mechanics/wheels/balance_four_run_test.cpp.

namespace sw::mechanics {

struct FourRuns {
  double initial = 0;                 ///< A0, in any one unit
  std::array<double, 3> withTrial{};  ///< the trial weight at 0, 120, 240 degrees
  Mass trialWeight;
  std::optional<double> readingUncertainty;  ///< standard, of each reading, > 0
};

struct FourRunBalance {
  double trialEffect = 0;  ///< T
  WeightVector unbalance;
  WeightVector correction;
  double agreement = 1;                   ///< |S| / (3 A0 T), 1 where the runs agree
  std::optional<Mass> amountUncertainty;  ///< standard, where that of the readings is stated
  std::optional<Angle> angleUncertainty;
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range";
/// Degenerate "balance.trial_imaginary", "balance.runs_contradict" (detail: ratio).
[[nodiscard]] Result<FourRunBalance> balanceFourRuns(const FourRuns& runs);

}  // namespace sw::mechanics
