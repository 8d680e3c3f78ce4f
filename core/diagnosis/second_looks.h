// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>

// METHOD CARD: where to look again when everything was looked at
// Formula: next = the look with the largest p (1 - d)^m d / c, with p the chance of the cause at
// the
//   outset, d the chance that one look finds it where it is, m the looks already taken and c the
//   minutes of one.
// Source: Blackwell's rule, as reported by Chew, Ann. Math. Stat. 38 (1967) 494-502 (from memory).
// Assumptions: looks at one cause are independent of each other; nothing is opened or closed.
// Degenerate cases: a look that costs nothing comes first; nothing to find anywhere: none.
// Reference test: tests/core/diagnosis/second_looks_test.cpp.

namespace sw::diagnosis {

struct Look {
  double chance = 0;     ///< of the cause at the outset
  double detection = 1;  ///< of one look
  double minutes = 0;
  std::size_t taken = 0;
};

/// Which look is worth most now; equal ones: the first.
[[nodiscard]] std::optional<std::size_t> nextLook(std::span<const Look> looks);

}  // namespace sw::diagnosis
