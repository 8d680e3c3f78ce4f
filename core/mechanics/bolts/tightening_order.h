// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "base/result.h"

// METHOD CARD: the crosswise order of fasteners on one circle
// Formula: fasteners are numbered 1..n clockwise. Odd n: always on by (n - 1) / 2, modulo n. Even
//   n = 2 m: opposite pairs (k, k + m), the pairs in the order of m fasteners.
// Source: common practice, no source: opposite to opposite, each once; 4: 1-3-2-4, 5: 1-3-5-2-4,
//   6: 1-4-2-5-3-6. The rule above gives these and continues them; 8: 1-5-3-7-2-6-4-8 and
//   12: 1-7-4-10-2-8-5-11-3-9-6-12 are flange practice (from memory).
// What it promises: each fastener once, beginning with 1. Odd n: each move as far as any can be.
//   Even n: every second move goes straight across. From 5 on no move goes to a neighbour; from 8
//   on, where 4 divides n, each quarter of the circle has one after the first four.
// Assumptions: one circle, even spacing, equal fasteners.
// When not to use: where the vehicle's sheet gives an order of its own, that one holds; rows and
//   rectangles of fasteners are tightened from the middle outwards, which this does not give.
// Valid range: n from 1 to 12. Degenerate cases: 1, 2 and 3 have one order but for its direction.
// Accuracy: exact, it counts.
// Reference test: tests/core/mechanics/bolts/tightening_order_test.cpp.

namespace sw::mechanics {

inline constexpr int kMostFasteners = 12;

/// The fasteners in the order they are tightened, by number. Errors: OutOfRange
/// "tightening.bad_count" (details: text, most).
[[nodiscard]] Result<std::vector<int>> tighteningOrder(int fasteners);

}  // namespace sw::mechanics
