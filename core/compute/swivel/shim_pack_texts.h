// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/calculation.h"
#include "mechanics/swivel/pack_advice.h"

namespace sw::compute {

/// Pulls of another state that were left out.
[[nodiscard]] Note otherStates(int packs);
/// The recommendation in words, and what it rests on.
[[nodiscard]] std::vector<Note> shimPackNotes(const mechanics::PackQuestion& question,
                                              const mechanics::PackAdvice& advice);

/// The packs worth looking at, and what is known of slope and float.
[[nodiscard]] Readable shimPackShown(const mechanics::PackQuestion& question,
                                     const mechanics::PackAdvice& advice);

}  // namespace sw::compute
