// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "base/result.h"
#include "mechanics/number_checks.h"
#include "units/quantity.h"

namespace sw::mechanics {

/// A torque as a sheet gives it: one figure, which is the lower limit, or a range.
struct TorqueRange {
  Torque least;
  std::optional<Torque> most;
};

/// OutOfRange "measure.not_positive", "measure.not_finite" (min, max) or "bolts.range_upside_down"
/// (max).
[[nodiscard]] inline std::optional<Error> findBadRange(const TorqueRange& range) {
  if (auto error = NumberChecks().positive("min", range.least).error()) return error;
  if (!range.most) return std::nullopt;
  if (auto error = NumberChecks().positive("max", *range.most).error()) return error;
  if (*range.most >= range.least) return std::nullopt;
  return Error{ErrorCode::OutOfRange, "bolts.range_upside_down", "max", {}};
}

}  // namespace sw::mechanics
