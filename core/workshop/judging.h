// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "workshop/context.h"
#include "workshop/series_judge.h"

// Internal to core/workshop: verdicts as facts.

namespace sw::workshop {

/// Judges the series with what it holds now, appends the verdict (replacing the one before) and
/// tells it. A series without a used reading gets none.
[[nodiscard]] Result<void> judgeAgain(Context& context, model::EntryId id);

/// Compares the pull straight ahead with those about 15 degrees to either side, same hub, same
/// scale: a force that is higher straight ahead with 95 % confidence means a dented bearing.
/// Appends the observation "peak_computed" (peak | none). Source of the rule: common practice, no
/// source.
[[nodiscard]] Result<void> lookForPeak(Context& context, std::size_t step);

}  // namespace sw::workshop
