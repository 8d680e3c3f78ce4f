// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "mechanics/brakes/turn_vector.h"
#include "units/quantity.h"

// METHOD CARD: readings at N even steps round a disc, by order of the turn
// Formula: with c_n = (2 / N) sum r_j exp(i n t_j), t_j = 360 j / N: amplitude R_n = |c_n|, phase
//   p_n = arg c_n, so that r(t) = mean + sum R_n cos(n t - p_n). The high spots of order n stand at
//   (p_n + 360 m) / n. Largest minus smallest of what is left without order n: the residual.
// Captured share: the least part of the peak-to-peak of order h that N even points can show, over
//   all phases. With M = N / gcd(N, h) different places in its wave: M even cos(180 / M),
//   M odd (1 + cos(180 / M)) / 2. M = 1 and M = 2 give 0: those points are blind to that order.
//   Why: the readings then are cosines at M even steps. M even, each has an opposite, and the crest
//   may lie 180 / M off the nearest; M odd, crest and trough cannot both miss, the sum
//   cos x + cos(180 / M - x) of their misses is least at its ends.
// Source: discrete Fourier sum of even samples (textbook); the share is plane trigonometry, checked
//   against a search over phases.
// Uncertainty: equal independent reading errors u give u(R_n) = u sqrt(2 / N) along the vector and
//   across it (least squares on orthogonal columns).
// Valid range: N >= 3. Amplitude and phase are defined below N / 2 only; above that an order reads
//   as a lower one, which the points alone cannot tell.
// Degenerate cases: an amplitude below 1e-12 m is rounding: 0 with the phase 0.
// Reference test: tests/core/mechanics/brakes/even_samples_test.cpp.

namespace sw::mechanics {

inline constexpr int kHighestOrder = 4;

/// One order of the turn.
struct Order {
  int order = 1;
  double capturedShare = 0;          ///< least part of its peak-to-peak that the points show
  std::optional<VectorAmount> wave;  ///< empty where the points cannot tell it (2 n >= N)
};

/// The share for N points and order h; N >= 1, h >= 1.
[[nodiscard]] double capturedShare(int points, int order);

/// Orders 1 to kHighestOrder. Needs three readings or more.
[[nodiscard]] std::vector<Order> ordersOf(const std::vector<Length>& readings);

struct Extent {
  Length least, most, mean;
  std::size_t leastAt = 0;  ///< the first place with the least
  [[nodiscard]] Length span() const { return most - least; }
};
/// Needs at least one reading.
[[nodiscard]] Extent extentOf(const std::vector<Length>& readings);

/// The readings less one wave of the first order.
[[nodiscard]] std::vector<Length> withoutFirstOrder(const std::vector<Length>& readings,
                                                    const VectorAmount& first);

}  // namespace sw::mechanics
