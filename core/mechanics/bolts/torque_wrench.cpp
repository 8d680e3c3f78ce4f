// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/torque_wrench.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "measure/type_b.h"
#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

using measure::CalibrationState;

constexpr double kSmallTool = 10;  // N m
constexpr double kSmallToolDeviation = 0.06;
constexpr double kUsualDeviation = 0.04;
constexpr double kSameTorque = 1e-9;  // relative: 40 N m typed in lbf ft is still the mark

bool below(Torque torque, Torque mark) {
  return torque.si() < mark.si() * (1 - kSameTorque);
}

std::optional<Error> findBadDeviation(double deviation, std::string_view field = "deviation") {
  if (deviation > 0 && deviation < 1) return std::nullopt;
  return Error{ErrorCode::OutOfRange,
               "bolts.bad_deviation",
               std::string(field),
               {{"text", fullPrecision(deviation)}}};
}

std::optional<Error> findBadWrench(const TorqueWrench& wrench) {
  if (auto error = NumberChecks().positive("maximum", wrench.maximum).error()) return error;
  if (wrench.lowestMark) {
    if (auto error = NumberChecks().positive("lowest_mark", *wrench.lowestMark).error()) {
      return error;
    }
    if (*wrench.lowestMark >= wrench.maximum) {
      return Error{ErrorCode::OutOfRange, "bolts.wrench_range", "lowest_mark", {}};
    }
  }
  if (wrench.graduation) {
    if (auto error = NumberChecks().positive("graduation", *wrench.graduation).error()) {
      return error;
    }
  }
  if (wrench.handling != 0) {
    if (auto error = findBadDeviation(wrench.handling, "handling")) return error;
  }
  return wrench.deviation ? findBadDeviation(*wrench.deviation) : std::nullopt;
}

std::optional<WrenchReason> rangeReason(Torque setting, const TorqueWrench& wrench) {
  if (below(wrench.maximum, setting)) return WrenchReason::AboveMaximum;
  if (wrench.lowestMark) {
    if (below(setting, *wrench.lowestMark)) return WrenchReason::BelowLowestMark;
    return std::nullopt;
  }
  if (below(setting, kLeastShareOfMaximum * wrench.maximum)) {
    return WrenchReason::BelowFifthOfMaximum;
  }
  if (below(setting, kComfortableShareOfMaximum * wrench.maximum)) {
    return WrenchReason::BelowThreeTenthsOfMaximum;
  }
  return std::nullopt;
}

Torque uncertaintyAt(Torque setting, const TorqueWrench& wrench, double deviation) {
  const double graduation = wrench.graduation.value_or(Torque{}).si();
  return Torque::fromSi(std::hypot(measure::rectangular(deviation * setting.si()),
                                   measure::graduationUncertainty(graduation),
                                   measure::rectangular(wrench.handling * setting.si())));
}

std::optional<WrenchReason> reasonOf(CalibrationState state) {
  switch (state) {
    case CalibrationState::NeverCalibrated:
      return WrenchReason::NeverCalibrated;
    case CalibrationState::Due:
      return WrenchReason::CalibrationDue;
    case CalibrationState::Overdue:
      return WrenchReason::CalibrationOverdue;
    case CalibrationState::Ok:
      break;
  }
  return std::nullopt;
}

WrenchUse useFor(WrenchReason reason) {
  switch (reason) {
    case WrenchReason::AboveMaximum:
    case WrenchReason::BelowLowestMark:
    case WrenchReason::BelowFifthOfMaximum:
    case WrenchReason::DroppedOrOverloaded:
      return WrenchUse::Refuse;
    case WrenchReason::BelowThreeTenthsOfMaximum:
    case WrenchReason::CalibrationOverdue:
    case WrenchReason::NeverCalibrated:
    case WrenchReason::CalibrationDue:
      return WrenchUse::Warn;
  }
  return WrenchUse::Warn;
}

/// The worst reason; beyond the last where there is none.
int worst(const WrenchFit& fit) {
  int worstReason = static_cast<int>(Words<WrenchReason>::table.size());
  for (const WrenchReason reason : fit.reasons) {
    worstReason = std::min(worstReason, static_cast<int>(reason));
  }
  return worstReason;
}

CalibrationState byOperations(const TorqueWrench& wrench, const CalibrationInterval& interval) {
  if (!wrench.operations || *wrench.operations < interval.operations) return CalibrationState::Ok;
  return *wrench.operations == interval.operations ? CalibrationState::Due
                                                   : CalibrationState::Overdue;
}

}  // namespace

double permittedDeviation(Torque maximum) {
  return maximum.si() > kSmallTool * (1 + kSameTorque) ? kUsualDeviation : kSmallToolDeviation;
}

Result<PassBand> passBand(Torque set, double permitted) {
  if (auto error = NumberChecks().positive("set", set).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = findBadDeviation(permitted)) return tl::make_unexpected(std::move(*error));
  return PassBand{set / (1 + permitted), set / (1 - permitted)};
}

Result<WrenchCheck> checkWrench(Torque set, Torque reference, double permitted) {
  const auto band = passBand(set, permitted);
  if (!band) return failAs(band);
  if (auto error = NumberChecks().positive("reference", reference).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  WrenchCheck check{(set - reference) / reference, *band};
  const bool inside = !below(reference, band->least) && !below(band->most, reference);
  if (inside) check.verdict = WrenchCheckVerdict::Within;
  return check;
}

Date calibrationDue(const Date& calibrated, int months) {
  using std::chrono::year_month_day;
  const year_month_day from{std::chrono::year{calibrated.year},
                            std::chrono::month{static_cast<unsigned>(calibrated.month)},
                            std::chrono::day{static_cast<unsigned>(calibrated.day)}};
  year_month_day due = from + std::chrono::months{months};
  if (!due.ok()) due = due.year() / due.month() / std::chrono::last;
  return {static_cast<int>(due.year()), static_cast<int>(static_cast<unsigned>(due.month())),
          static_cast<int>(static_cast<unsigned>(due.day()))};
}

CalibrationState wrenchCalibration(const TorqueWrench& wrench, const Date& today,
                                   const CalibrationInterval& interval) {
  measure::CalibrationDates dates{wrench.calibratedOn, {}};
  if (wrench.calibratedOn) dates.due = calibrationDue(*wrench.calibratedOn, interval.months);
  const CalibrationState byDay = measure::calibrationState(dates, today, 0);
  if (byDay == CalibrationState::NeverCalibrated) return byDay;
  return std::max(byDay, byOperations(wrench, interval));
}

Result<WrenchFit> wrenchFor(Torque setting, const TorqueWrench& wrench, const Date& today,
                            const CalibrationInterval& interval) {
  if (auto error = NumberChecks().positive("setting", setting).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = findBadWrench(wrench)) return tl::make_unexpected(std::move(*error));
  WrenchFit fit;
  fit.wrench = wrench;
  fit.deviation = wrench.deviation.value_or(permittedDeviation(wrench.maximum));
  fit.standardUncertainty = uncertaintyAt(setting, wrench, fit.deviation);
  if (wrench.graduation) {
    fit.mark = std::round(setting / *wrench.graduation) * *wrench.graduation;
  }
  if (const auto reason = rangeReason(setting, wrench)) fit.reasons.push_back(*reason);
  if (wrench.condition == WrenchCondition::DroppedOrOverloaded) {
    fit.reasons.push_back(WrenchReason::DroppedOrOverloaded);
  }
  const auto calibration = reasonOf(wrenchCalibration(wrench, today, interval));
  if (calibration) fit.reasons.push_back(*calibration);
  for (const WrenchReason reason : fit.reasons) fit.use = std::max(fit.use, useFor(reason));
  return fit;
}

std::vector<WrenchFit> bestFirst(std::vector<WrenchFit> fits) {
  std::stable_sort(fits.begin(), fits.end(), [](const WrenchFit& a, const WrenchFit& b) {
    if (a.use != b.use) return a.use < b.use;
    if (worst(a) != worst(b)) return worst(a) > worst(b);
    return a.wrench.maximum < b.wrench.maximum;
  });
  return fits;
}

}  // namespace sw::mechanics
