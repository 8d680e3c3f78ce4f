// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "units/quantity.h"

// METHOD CARD: load index and speed symbol of a tyre
// Formula: table. Self-check of a load index: mass = 45 kg * 10^(LI / 80), rounded to a preferred
//   number; each entry lies within 2 % of it.
// Source: public tyre-trade tables, two each, for load indices 70 to 119 and for speed symbols;
//   60 to 69 and 120 to 126 from memory of the same table; the rule from memory.
// Valid range: load indices 60 to 126; symbols F to Y.
// Assumptions: the load of one tyre at the pressure its maker states for it. Of two indices
//   ("112/110") the first is for single fitting.
// When not to use: to choose a pressure, that is in the vehicle's documentation.
// Degenerate cases: an index or symbol outside the table has no answer. H stands between U and V,
//   so symbols are ranked by speed, never by letter.
// Accuracy: exact, it looks up.
// Reference test: tests/core/mechanics/wheels/load_index_test.cpp.

namespace sw::mechanics {

inline constexpr int kLeastLoadIndex = 60;
inline constexpr int kMostLoadIndex = 126;

[[nodiscard]] std::optional<Mass> loadOfIndex(int loadIndex);
/// What the rule gives before rounding to a preferred number.
[[nodiscard]] Mass loadIndexRule(int loadIndex);
/// The speed of a symbol, an upper-case letter.
[[nodiscard]] std::optional<Speed> speedOfSymbol(char symbol);

}  // namespace sw::mechanics
