// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "base/result.h"
#include "measure/distributions.h"

// METHOD CARD: a straight line that starts from what is believed (normal-inverse-gamma)
// Formula: y = a + k x + e, e ~ N(0, s2). Belief: (a, k) | s2 ~ N(m, s2 V), s2 ~ InvGamma(shape,
//   rate). From workshop words: scatter s0 known like nu0 readings: shape = nu0 / 2, rate = nu0
//   s0^2 / 2; spreads Sa, Sk: V = diag((Sa / s0)^2, (Sk / s0)^2).
//   With readings: Vn = (V0^-1 + X'X)^-1, mn = Vn (V0^-1 m0 + X'y), shape += n / 2,
//   rate += [sum (y - X mn)^2 + (mn - m0)' V0^-1 (mn - m0)] / 2, which cannot go negative.
//   At v = (1, x): Student t, nu = 2 shape, location v'mn, scale^2 = rate / shape times h for the
//   line, 1 + h for one new reading, 1/m + h for a mean of m; h = v' Vn v.
//   Readings at one place count as a group: their mean, their number and their own sum of squares
//   say all. Where a place is set up anew each time, the set-ups of one place differ by a spread
//   of sqrt(r) s: a group's mean then weighs 1 / (1/m + r) instead of m, and r joins h.
// Source: the conjugate linear model of the textbooks (Gelman et al., Bayesian Data Analysis; from
//   memory). The limit without belief is the straight line of JCGM 100:2008 H.3.
// Valid range: spreads, scatter and readings > 0; r >= 0.
// Assumptions: x without error; one scatter along the whole line; r known.
// Degenerate cases: no readings give the belief back; any number of readings at one place is fine.
// Reference test: tests/core/measure/conjugate_line_test.cpp.

namespace sw::measure {

/// What is believed before, in workshop words.
struct LinePrior {
  double intercept = 0, interceptSpread = 1;
  double slope = 0, slopeSpread = 1;
  double scatter = 1;          ///< s0 of one reading
  double scatterReadings = 1;  ///< nu0: known like from that many
};

/// Readings at one place.
struct LineGroup {
  double x = 0;
  double mean = 0;
  double count = 1;
  double squares = 0;  ///< sum of squares about the group's mean
};
/// The group of these readings; needs at least one.
[[nodiscard]] LineGroup groupOf(double x, std::span<const double> readings);

/// Location and scale of a Student t distribution.
struct StudentPlace {
  double location = 0;
  double scale = 1;
};

struct LineBelief {
  double intercept = 0, slope = 0;                                  ///< m
  double varianceIntercept = 1, covariance = 0, varianceSlope = 1;  ///< V, in units of s2
  double shape = 1, rate = 1;

  [[nodiscard]] double degreesOfFreedom() const { return 2.0 * shape; }
  /// Of the line at x; `share` is added to h: 1 for one new reading, 1/m for a mean of m.
  [[nodiscard]] StudentPlace at(double x, double share = 0.0) const;
  [[nodiscard]] StudentPlace slopeAlone() const;
};

[[nodiscard]] LineBelief beliefOf(const LinePrior& prior);

struct UpdatedLine {
  LineBelief belief;
  /// Logarithm of the probability of the readings under the belief before, up to a constant that
  /// depends on their number and on shape and rate alone.
  double logEvidence = 0;
};
/// `setUpRatio` is r.
[[nodiscard]] UpdatedLine updated(const LineBelief& before, std::span<const LineGroup> groups,
                                  double setUpRatio = 0.0);

}  // namespace sw::measure
