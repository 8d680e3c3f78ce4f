// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <span>
#include <string>

#include "model/json.h"
#include "workshop/kit.h"

// The kit of a job with its ticks, as a text table and as JSON.

namespace sw::report {

using KitTicks = std::map<std::string, workshop::KitTick>;

[[nodiscard]] model::Json toJson(std::span<const workshop::KitLine> lines, const KitTicks& ticks,
                                 const workshop::JobState& job);
/// One line of the kit a row, single-use parts marked as new; what is no longer needed says so.
[[nodiscard]] std::string toText(std::span<const workshop::KitLine> lines, const KitTicks& ticks);

}  // namespace sw::report
