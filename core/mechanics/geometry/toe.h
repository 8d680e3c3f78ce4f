// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: toe in millimetres and degrees
// Formula: length = D (sin tl + sin tr), D the diameter at which the two points lie; a total angle
// t
//   shared by both wheels: length = 2 D sin(t / 2). Length = rear distance - front distance.
//   u of a difference of two readings on graduation d: d sqrt(2 / 12); of its angle u / D.
// Source: plane geometry; signs ISO 8855:2011.
// Signs: toe-in is positive for each wheel and in total. As a steer angle (positive to the left)
//   toe-in of the left wheel is negative, that of the right wheel positive.
// Assumptions: both points of a wheel at hub height; one D for both wheels. The mean of two
// readings
//   with the wheels rolled half a turn takes the rims' runout out; their half difference shows it.
// When not to use: millimetres without their diameter. The same 2 mm are 0.16 degrees at 700 mm and
//   0.28 at a 16 inch rim.
// Valid range: D > 0; toe within 10 degrees a wheel and the length below D / 3; 1 to 20 readings.
// Degenerate cases: one reading says nothing about runout.
// Accuracy: exact; the graduation is not divided by the number of readings, since a coarse scale
//   repeats its error.
// Reference test: tests/core/mechanics/geometry/toe_test.cpp.

namespace sw::mechanics {

struct WheelToe {
  Angle left;   ///< toe-in positive
  Angle right;  ///< toe-in positive
};

/// The same as steer angles, positive to the left: ISO 8855.
struct SteerAngles {
  Angle left;
  Angle right;
};
[[nodiscard]] SteerAngles asSteerAngles(const WheelToe& toe);

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<Length> toeLength(const WheelToe& toe, Length diameter);
[[nodiscard]] Result<Length> toeLength(Angle total, Length diameter);
/// The total angle, shared by both wheels.
[[nodiscard]] Result<Angle> toeAngle(Length toe, Length diameter);

/// Between the same two points, before the axle and behind it.
struct ToeReading {
  Length front;
  Length rear;
};
struct MeasuredToe {
  Length toe;  ///< mean over the readings
  Angle total;
  Length lengthUncertainty;  ///< standard, from the graduation alone
  Angle angleUncertainty;
  std::optional<Length> runout;  ///< half the difference of two readings half a turn apart
};
/// Errors: Missing "measure.no_readings"; others as above, the field as a path.
[[nodiscard]] Result<MeasuredToe> measuredToe(std::span<const ToeReading> readings, Length diameter,
                                              Length graduation);

}  // namespace sw::mechanics
