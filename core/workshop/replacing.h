// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "workshop/context.h"

// Internal to core/workshop: entries that take the place of others, for corrections and undo.

namespace sw::workshop {

/// The valid readings of a series.
[[nodiscard]] std::vector<model::Entry> readingsOf(const JobState& job, model::EntryId series);

/// Replaces the series and each of its readings by copies for `side`; gives the new series' id.
model::EntryId reenterSeries(Context& context, const model::Entry& series, model::Payload payload,
                             std::optional<model::Side> side, model::CorrectionReason reason,
                             const std::string& text);

/// The verdict that stands on the series is withdrawn, where there is one.
void withdrawVerdict(Context& context, model::EntryId series, model::CorrectionReason reason,
                     const std::string& text);

}  // namespace sw::workshop
