// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "mechanics/bolts/thread.h"

// METHOD CARD: reading a thread as people write it
// Metric: "M10" (coarse pitch of ISO 261), "M10x1.25", "M10 x 1,25", "M10-1.25", "M10x1.25-6g",
//   "M10x1.25x40". Inch: "7/16-20", "7/16-20 UNF", "7/16 UNF", "1-1/8-7", "1 1/8-7", "#10-32",
//   "0.4375-20", "1/4-28 UNF-2A". Tolerance class, length and hand play no part in what follows.
// Source: ISO 965-1 and ASME B1.1 for the designations (from memory); the looser spellings are
//   common practice, no source.
// Assumptions: a size after M is in millimetres, one without it in inches. "M10" alone is read with
//   the coarse pitch; vehicles use fine pitches much, so the pitch must be confirmed.
// When not to use: Whitworth (BSW, BSF), BA and pipe threads are named and refused.
// Degenerate cases: "7/16" alone has two pitches and is refused; a named series that does not have
//   the pitch written is refused.
// Reference test: tests/core/mechanics/bolts/thread_designation_test.cpp.

namespace sw::mechanics {

/// Errors, all about field "thread", details text and example: InvalidInput "bolts.unknown_thread",
/// "bolts.other_thread_form", "bolts.needs_pitch", "bolts.series_differs" (detail expected);
/// OutOfRange "bolts.bad_pitch".
[[nodiscard]] Result<Thread> parseThread(std::string_view text);

}  // namespace sw::mechanics
