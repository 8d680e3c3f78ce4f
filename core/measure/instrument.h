// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "base/clock.h"
#include "measure/evaluation.h"

// METHOD CARD: what is known about an instrument today
// Calibration: overdue after the due day, due within the warning time before it.
// Own check against a known mass or gauge: correction = applied - shown;
//   u^2 = u(applied)^2 + d^2 / 12, since the check itself was read on the graduation.
// Source: JCGM 100:2008 4.3 (from memory); a fish scale has no certificate, so its user checks it.
// Assumptions (common practice, no source): the correction is an offset that holds for readings
// between
//   half and twice the applied value; 30 days of warning.
// Degenerate cases: a check with nothing applied only shows the zero and covers no reading.
// Reference test: tests/core/measure/instrument_test.cpp.

namespace sw::measure {

enum class CalibrationState { NeverCalibrated, Ok, Due, Overdue };
[[nodiscard]] std::string_view word(CalibrationState state);

struct CalibrationDates {
  std::optional<Date> calibrated;  ///< empty: never
  std::optional<Date> due;         ///< empty: no due date set
};
inline constexpr int kCalibrationWarningDays = 30;
/// On the due day itself the instrument is still in calibration.
[[nodiscard]] CalibrationState calibrationState(const CalibrationDates& dates, const Date& today,
                                                int warningDays = kCalibrationWarningDays);

struct CheckCorrection {
  double correction = 0;  ///< to be added to a reading
  double standardUncertainty = 0;
};
[[nodiscard]] CheckCorrection correctionFrom(const OwnCheck& check, double graduation);
/// Whether a check says something about readings of this size.
[[nodiscard]] bool covers(const OwnCheck& check, double reading);

/// The check held against the error the instrument is permitted.
enum class CheckAgreement { NothingToCompare, Agrees, ExceedsPermissible };
/// Exceeds when |correction| > permissible error + 2 u(correction).
[[nodiscard]] CheckAgreement compareWithPermissible(const InstrumentCapability& instrument);

/// A reading equal to an end of the range is inside. A difference of two must fit the span.
[[nodiscard]] bool withinRange(const InstrumentCapability& instrument, double reading);

}  // namespace sw::measure
