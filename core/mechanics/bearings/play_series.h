// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "base/result.h"
#include "measure/evaluation.h"
#include "mechanics/judged.h"
#include "units/quantity.h"

namespace sw::mechanics {

/// Readings of a play: each the travel between two ends, with one instrument.
struct PlaySeriesInput {
  std::vector<Length> readings;
  InstrumentCapability instrument;
  Limits<Length> limits;
  double confidence = 0.95;
};

/// Judged by measure/evaluation.h as differences of two readings; three or more are planned.
/// `field` names the list. Errors: Missing "measure.no_readings"; OutOfRange
/// "measure.not_positive", "measure.not_finite", "measure.empty_limit", "measure.bad_confidence".
[[nodiscard]] Result<SeriesOutcome> playSeries(const PlaySeriesInput& input,
                                               std::string_view field);

inline constexpr int kUsualReadings = 3;
/// As many as there are, but at least the usual ones.
[[nodiscard]] int plannedFor(std::size_t readings);

}  // namespace sw::mechanics
