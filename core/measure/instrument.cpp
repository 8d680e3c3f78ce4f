// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/instrument.h"

#include <cmath>

#include "measure/type_b.h"

namespace sw::measure {

std::string_view word(CalibrationState state) {
  switch (state) {
    case CalibrationState::NeverCalibrated:
      return "never_calibrated";
    case CalibrationState::Ok:
      return "ok";
    case CalibrationState::Due:
      return "due";
    case CalibrationState::Overdue:
      return "overdue";
  }
  return {};
}

CalibrationState calibrationState(const CalibrationDates& dates, const Date& today,
                                  int warningDays) {
  if (!dates.calibrated) return CalibrationState::NeverCalibrated;
  if (!dates.due) return CalibrationState::Ok;
  const auto left = daysBetween(today, *dates.due);
  if (left < 0) return CalibrationState::Overdue;
  return left <= warningDays ? CalibrationState::Due : CalibrationState::Ok;
}

CheckCorrection correctionFrom(const OwnCheck& check, double graduation) {
  return {check.applied - check.shown,
          std::hypot(check.appliedStandardUncertainty, graduationUncertainty(graduation))};
}

bool covers(const OwnCheck& check, double reading) {
  if (check.applied == 0) return false;
  const double ratio = reading / check.applied;
  return ratio >= 0.5 && ratio <= 2.0;
}

CheckAgreement compareWithPermissible(const InstrumentCapability& instrument) {
  if (!instrument.check || !instrument.permissibleError) return CheckAgreement::NothingToCompare;
  const CheckCorrection own = correctionFrom(*instrument.check, instrument.graduation);
  const double allowed = *instrument.permissibleError + 2 * own.standardUncertainty;
  return std::abs(own.correction) > allowed ? CheckAgreement::ExceedsPermissible
                                            : CheckAgreement::Agrees;
}

bool withinRange(const InstrumentCapability& instrument, double reading) {
  if (instrument.differenceOfTwo) {
    if (!instrument.rangeMax) return true;
    return std::abs(reading) <= *instrument.rangeMax - instrument.rangeMin.value_or(0);
  }
  return (!instrument.rangeMin || reading >= *instrument.rangeMin) &&
         (!instrument.rangeMax || reading <= *instrument.rangeMax);
}

}  // namespace sw::measure
