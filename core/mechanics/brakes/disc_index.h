// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "base/result.h"
#include "mechanics/brakes/turn_vector.h"

// METHOD CARD: which way round a disc goes on its hub
// Formula: runout of order 1 at one radius is the hub's part plus the disc's, turned with it:
//   T_k = H + D z_k, z_k = exp(i k 360 / N), k the position on N studs. Two runs a, b give
//   D = (T_b - T_a) / (z_b - z_a), H = T_a - D z_a; all others follow. Best = smallest |T_k|;
//   floor = ||H| - |D||, ceiling = |H| + |D|: indexing cannot cure a hub alone.
// Uncertainty: each vector has the same standard uncertainty u along it and across, all
//   independent. Every answer is linear in the two: T_k = (1 - b) T_a + b T_b with
//   b = (z_k - z_a) / (z_b - z_a), so u(T_k) = u sqrt(|1 - b|^2 + |b|^2);
//   u(H) = u(D) = u sqrt(2) / |z_b - z_a|. From H and D given: u(T_k) = hypot(u(H), u(D)).
// Source: complex arithmetic; the influence of a disc turned on its hub as in field balancing
//   (textbook); JCGM 100:2008 5.1 for the linear propagation.
// Valid range: 3 to 12 studs; two different positions; amounts >= 0.
// Assumptions: R1 amounts (half of the TIR of a pure tilt), phase from one mark on the hub, clean
//   seats and the same nut torque each time.
// When not to use: it does nothing for order 2 and up. The linear uncertainty of an amount is an
//   upper figure where the amount is not much larger than it.
// Degenerate cases: neighbours on many studs lie close together: u grows as 1 / |z_b - z_a|.
//   Of two positions alike the lower number is named.
// Reference test: tests/core/mechanics/brakes/disc_index_test.cpp.

namespace sw::mechanics {

inline constexpr int kFewestStuds = 3;
inline constexpr int kMostStuds = 12;

/// A vector with its standard uncertainty along it and across.
struct UncertainVector {
  VectorAmount vector;
  Length standardUncertainty;
};

struct HubAndDisc {
  UncertainVector hub;   ///< H, fixed to the hub
  UncertainVector disc;  ///< D, at position 0
};

/// The disc turned on by `position` studs the way angles grow, and the runout there.
struct IndexPosition {
  int position = 0;
  UncertainVector runout;
};

struct DiscIndex {
  HubAndDisc parts;
  std::vector<IndexPosition> positions;  ///< 0 to N - 1
  int best = 0;
  int worst = 0;
  Length floor, ceiling;
};

/// Errors: OutOfRange "disc_index.bad_studs" (details: studs, least, most),
/// "disc_index.bad_position" (field), "measure.not_positive", "measure.not_finite";
/// Degenerate "disc_index.same_position".
[[nodiscard]] Result<DiscIndex> indexFromRuns(int studs, const IndexPosition& first,
                                              const IndexPosition& second);
[[nodiscard]] Result<DiscIndex> indexFromParts(int studs, const HubAndDisc& parts);

}  // namespace sw::mechanics
