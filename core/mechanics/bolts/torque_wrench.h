// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "base/words.h"
#include "measure/instrument.h"
#include "units/quantity.h"

// METHOD CARD: which torque wrench does for a torque, and how far it may be off
// Range: from the lowest mark to the maximum (ISO 6789-1:2017, from memory). Without a lowest mark
//   below 20 % of the maximum is refused (custom of ISO 6789:2003) and below 30 % warned of (common
//   practice, no source).
// Deviation: a = (set - reference) / reference, of the reference, not of the set value (ISO 6789-2,
//   from memory). Permitted 4 % where the maximum is above 10 N m, 6 % up to 10 N m (setting tools,
//   ISO 6789). Set S passes for references from S / (1 + p) to S / (1 - p).
// Uncertainty at the drive: p S / sqrt(3), graduation / sqrt(12) and handling S / sqrt(3), combined
//   (JCGM 100, from memory). ISO 6789-2 lists more parts.
// Calibration: 12 months or 5000 operations, whichever comes first (ISO 6789 default; an own
//   documented interval goes first). On the day the 12 months are full, and at 5000, it is due;
//   after that overdue. 29 February becomes 28. After a drop or an overload it is refused until
//   checked.
// Choice: those in order first, then warnings, then refusals, the mildest reason first; then the
//   smallest maximum, whose scale is the finest.
// Assumptions: a click wrench used within its direction; friction scatters the force by far more.
// When not to use: as a calibration; electronic wrenches with angle.
// Reference test: tests/core/mechanics/bolts/torque_wrench_test.cpp.

namespace sw::mechanics {

enum class WrenchCondition { Sound, DroppedOrOverloaded };

struct TorqueWrench {
  std::string name;
  std::optional<Torque> lowestMark;
  Torque maximum;
  std::optional<double> deviation;  ///< permitted, as a share; else by the maximum
  std::optional<Torque> graduation;
  double handling = 0;  ///< share by which the way it is held may be off, half-width
  std::optional<Date> calibratedOn;
  std::optional<int> operations;  ///< since then
  WrenchCondition condition = WrenchCondition::Sound;
};

inline constexpr double kLeastShareOfMaximum = 0.2;
inline constexpr double kComfortableShareOfMaximum = 0.3;
struct CalibrationInterval {
  int months = 12;
  int operations = 5000;
};

/// The permitted deviation as a share of the reading.
[[nodiscard]] double permittedDeviation(Torque maximum);

struct PassBand {
  Torque least;
  Torque most;
};
/// References at which a wrench set to this passes. Errors: OutOfRange "measure.not_positive",
/// "measure.not_finite" (set); "bolts.bad_deviation" unless 0 < permitted < 1 (field deviation).
[[nodiscard]] Result<PassBand> passBand(Torque set, double permitted);

enum class WrenchCheckVerdict { Within, Outside };
struct WrenchCheck {
  double deviation = 0;  ///< of the reference reading
  PassBand band;
  WrenchCheckVerdict verdict = WrenchCheckVerdict::Outside;
};
/// A wrench set to `set` clicks at `reference` on a tester. A deviation of just the permitted one
/// is within. Errors: as passBand, and reference.
[[nodiscard]] Result<WrenchCheck> checkWrench(Torque set, Torque reference, double permitted);

/// The day after which a calibration of this day is overdue.
[[nodiscard]] Date calibrationDue(const Date& calibrated, int months);
[[nodiscard]] measure::CalibrationState wrenchCalibration(const TorqueWrench& wrench,
                                                          const Date& today,
                                                          const CalibrationInterval& interval = {});

enum class WrenchUse { Ok, Warn, Refuse };
/// The worst first.
enum class WrenchReason {
  AboveMaximum,
  BelowLowestMark,
  BelowFifthOfMaximum,
  DroppedOrOverloaded,
  NeverCalibrated,
  CalibrationOverdue,
  BelowThreeTenthsOfMaximum,
  CalibrationDue,
};

struct WrenchFit {
  TorqueWrench wrench;
  WrenchUse use = WrenchUse::Ok;
  std::vector<WrenchReason> reasons;
  double deviation = 0;
  Torque standardUncertainty;  ///< of the torque at the drive
  std::optional<Torque> mark;  ///< nearest to the setting, where the graduation is known
};
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (setting, maximum, lowest_mark),
/// "bolts.wrench_range" (lowest mark above the maximum), "bolts.bad_deviation" (deviation,
/// handling).
[[nodiscard]] Result<WrenchFit> wrenchFor(Torque setting, const TorqueWrench& wrench,
                                          const Date& today,
                                          const CalibrationInterval& interval = {});
/// The best first.
[[nodiscard]] std::vector<WrenchFit> bestFirst(std::vector<WrenchFit> fits);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::WrenchCondition> {
  using E = mechanics::WrenchCondition;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Sound, "sound"}, {E::DroppedOrOverloaded, "dropped_or_overloaded"}}};
};

template <>
struct Words<mechanics::WrenchUse> {
  using E = mechanics::WrenchUse;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::Ok, "ok"}, {E::Warn, "warn"}, {E::Refuse, "refuse"}}};
};

template <>
struct Words<mechanics::WrenchReason> {
  using E = mechanics::WrenchReason;
  static constexpr std::array<std::pair<E, std::string_view>, 8> table{
      {{E::AboveMaximum, "above_maximum"},
       {E::BelowLowestMark, "below_lowest_mark"},
       {E::BelowFifthOfMaximum, "below_20_percent"},
       {E::DroppedOrOverloaded, "dropped_or_overloaded"},
       {E::NeverCalibrated, "never_calibrated"},
       {E::CalibrationOverdue, "calibration_overdue"},
       {E::BelowThreeTenthsOfMaximum, "below_30_percent"},
       {E::CalibrationDue, "calibration_due"}}};
};

template <>
struct Words<mechanics::WrenchCheckVerdict> {
  using E = mechanics::WrenchCheckVerdict;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Within, "within"}, {E::Outside, "outside"}}};
};

}  // namespace sw
