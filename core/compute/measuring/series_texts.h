// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "compute/calculation.h"
#include "measure/evaluation.h"

namespace sw::compute {

/// What the fields of the result do not say. Codes: so_far, extended, scatter_unknown,
/// instrument_error_unknown, own_check_used, outlier, drift.
[[nodiscard]] std::vector<Note> seriesNotes(const SeriesInput& input, const SeriesOutcome& outcome);

}  // namespace sw::compute
