// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include "diagnosis/cause_table.h"
#include "diagnosis/two_faults.h"

// METHOD CARD: do two faults together explain the answers better than any one alone?
// Formula: sets of at most two causes weighed as in two_faults.h, with the share of each cause as
//   its prior. An answer counts as seen unless it is the word "no"; questions without that word,
//   such as what was done lately, say nothing here. The leak is kLeak for every question.
// Source: as two_faults.h; the leak is a starting value, common practice, no source.
// Assumptions: at most two faults; causes come independently.
// Degenerate cases: no answers: no pair, since two faults are rarer than one.
// Reference test: tests/core/diagnosis/two_faults_test.cpp.

namespace sw::diagnosis {

/// Chance that something is answered with yes where no cause brings it about.
inline constexpr double kLeak = 0.02;

struct GivenAnswer {
  std::size_t feature = 0;
  std::size_t answer = 0;
};

/// The most likely pair where it is more likely than every cause alone; without the cause "other",
/// which explains anything.
[[nodiscard]] std::optional<FaultSet> likelyPair(const CauseTable& table,
                                                 std::span<const GivenAnswer> answers);

}  // namespace sw::diagnosis
