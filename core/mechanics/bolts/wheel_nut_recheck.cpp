// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/wheel_nut_recheck.h"

#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

constexpr Length kLightFirst = kilometres(50);
constexpr Length kHeavyFirst = kilometres(40);
constexpr Length kHeavyBy = kilometres(80);
constexpr Length kAgainFrom = kilometres(100);
constexpr Length kAgainBy = kilometres(160);
constexpr double kHeavyMinutes = 30;

std::optional<Error> findBad(const WheelNutsFitted& fitted) {
  if (auto error = NumberChecks().notNegative("odometer", fitted.odometer).error()) return error;
  if (fitted.firstAfter) {
    if (auto error = NumberChecks().positive("first_after", *fitted.firstAfter).error()) {
      return error;
    }
    if (*fitted.firstAfter > kAgainFrom) {
      return Error{
          ErrorCode::OutOfRange, "bolts.recheck_too_late", "first_after", {{"most", "100 km"}}};
    }
  }
  if (!fitted.odometerNow) return std::nullopt;
  if (auto error = NumberChecks().notNegative("odometer_now", *fitted.odometerNow).error()) {
    return error;
  }
  if (*fitted.odometerNow >= fitted.odometer) return std::nullopt;
  return Error{ErrorCode::OutOfRange, "bolts.odometer_backwards", "odometer_now", {}};
}

RecheckState stateAt(Length now, const WheelNutRecheck& recheck) {
  if (now < recheck.afterReading) return RecheckState::NotYet;
  return now <= recheck.byReading ? RecheckState::Due : RecheckState::Passed;
}

}  // namespace

Result<std::vector<WheelNutRecheck>> wheelNutRechecks(const WheelNutsFitted& fitted) {
  if (auto error = findBad(fitted)) return tl::make_unexpected(std::move(*error));
  const bool heavy = fitted.vehicle == VehicleWeight::Heavy;
  WheelNutRecheck first;
  first.after = fitted.firstAfter.value_or(heavy ? kHeavyFirst : kLightFirst);
  first.by = heavy ? std::max(kHeavyBy, first.after) : kAgainFrom;
  if (heavy) first.orAfter = minutes(kHeavyMinutes);
  WheelNutRecheck again;
  again.after = kAgainFrom;
  again.by = kAgainBy;
  std::vector<WheelNutRecheck> rechecks{first, again};
  for (WheelNutRecheck& each : rechecks) {
    each.afterReading = fitted.odometer + each.after;
    each.byReading = fitted.odometer + each.by;
    if (fitted.odometerNow) each.state = stateAt(*fitted.odometerNow, each);
  }
  return rechecks;
}

}  // namespace sw::mechanics
