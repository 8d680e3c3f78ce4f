// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "measure/budget.h"
#include "measure/evaluation.h"

// Standard uncertainties of one reading and of a difference of two with one gauge, by the budget of
// measure/series_budget.h.

namespace sw::mechanics {

struct GaugeReading {
  InstrumentCapability instrument;
  std::optional<PooledScatter> repeatability;  ///< of single readings at one spot
  double averagedOver = 1;  ///< readings behind each value; only the repeatability gets smaller
};

[[nodiscard]] measure::Combined uncertaintyOfReading(const GaugeReading& gauge);
[[nodiscard]] measure::Combined uncertaintyOfDifference(const GaugeReading& gauge);
/// Of a difference, from the instrument alone.
[[nodiscard]] double instrumentPartOfDifference(const GaugeReading& gauge);

/// Checks graduation, permissible error, local error and repeatability.
/// Errors: OutOfRange "measure.not_positive" or "measure.not_finite" (field as in the input).
[[nodiscard]] Result<void> checkGauge(const GaugeReading& gauge);

}  // namespace sw::mechanics
