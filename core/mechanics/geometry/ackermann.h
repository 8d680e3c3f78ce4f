// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: steer angles of inner and outer wheel on a bend
// Formula: cot(outer) - cot(inner) = distance of the kingpins at the ground / wheelbase.
// Source: Ackermann's condition: both wheels roll about one point on the line of the rear axle; any
//   textbook. Handbook habit: the inner angle is stated for an outer one of 20 degrees.
// Assumptions: no slip, low speed, rear wheels straight.
// When not to use: to judge a steering. Vehicles are built away from it on purpose: the vehicle's
//   documentation has the angle that counts.
// Valid range: lengths > 0; 0 <= outer and inner < 90 degrees.
// Degenerate cases: straight ahead both are 0. An outer angle so large that the inner one would
//   reach 90 degrees is out of range.
// Accuracy: exact.
// Reference test: tests/core/mechanics/geometry/ackermann_test.cpp.

namespace sw::mechanics {

struct SteeredAxle {
  Length kingpinSpacing;  ///< at the ground
  Length wheelbase;
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<Angle> innerAngle(const SteeredAxle& axle, Angle outer);
[[nodiscard]] Result<Angle> outerAngle(const SteeredAxle& axle, Angle inner);
/// Measured inner angle less the one for `outer`. Errors: as above.
[[nodiscard]] Result<Angle> innerDeviation(const SteeredAxle& axle, Angle outer,
                                           Angle measuredInner);

}  // namespace sw::mechanics
