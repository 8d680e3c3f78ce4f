// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "mechanics/bolts/thread.h"

// METHOD CARD: the sizes that are made, and which of them are mistaken for one another
// Series: coarse and fine pitches of ISO 261 / ISO 262 (M2 to M39) and UNC, UNF of ASME B1.1 (#0 to
//   1-1/2), both from memory.
// Look-alike: a thread of another size of the series whose diameter lies within 7 % and whose pitch
//   lies within 15 % (of the smaller). Both bounds are ours (common practice, no source): they find
//   the pairs known for it, 3/8-16 and M10, 1/2-20 and M12x1.25, #10-32 and M5.
// Engaged depth: of the thread depth of the larger nut, the share that the smaller bolt reaches,
//   (d_bolt - D1_nut) / (D_nut - D1_nut), from the basic profile.
// When not to use: it tells no thread from another by itself; a pitch gauge and a caliper do.
// Reference test: tests/core/mechanics/bolts/thread_designation_test.cpp.

namespace sw::mechanics {

inline constexpr double kLookAlikeDiameter = 0.07;
inline constexpr double kLookAlikePitch = 0.15;

/// All threads of the series, metric before inch, each size with its coarse pitch first.
[[nodiscard]] const std::vector<Thread>& standardThreads();
/// The thread of the series with this diameter and pitch.
[[nodiscard]] std::optional<Thread> findInSeries(ThreadStandard standard, Length diameter,
                                                 Length pitch);
/// The thread that the series gives a diameter: coarse or fine. Metric sizes have several fine
/// pitches, so only the coarse one is looked up; inch sizes have one of each.
[[nodiscard]] std::optional<Thread> findBySize(ThreadStandard standard, Length diameter,
                                               PitchFrom series);
/// How an inch diameter is written: "7/16", "#10", or a decimal where it is in no series.
[[nodiscard]] std::string inchSizeName(Length diameter);

struct LookAlike {
  Thread thread;
  Length diameterDifference;  ///< its diameter less that of the thread asked about
  Length pitchDifference;
  double engagedDepth = 0;  ///< of the smaller bolt in the nut of the larger, 1 = all of it
};
/// Errors: as threadGeometry.
[[nodiscard]] Result<std::vector<LookAlike>> lookAlikes(const Thread& thread);

}  // namespace sw::mechanics
