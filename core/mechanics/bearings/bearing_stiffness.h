// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: how far a taper roller bearing gives along its axis
// Formula (mm, N): load of one roller Q = F / (Z sin a); axial displacement
//   d = 7.68e-5 Q^0.9 / (sin a l^0.8), so F = K d^(10/9) and the slope dF/dd = F / (0.9 d).
//   Opposed pair in a rigid housing: a shim of s brings each bearing s / 2, the slope a shim is
//   half of one bearing's.
// Source: Palmgren's line contact of steel as in Harris, Rolling Bearing Analysis (from memory).
// Valid range: Z >= 3 rollers, 0 < a < 90 degrees, l > 0, F or d >= 0.
// Assumptions: all rollers share the load alike, raceways rigid but for the contact, both contacts
//   of a roller alike.
// When not to use: as the slope of a hub. Castings and pins are far softer and begin with float and
//   a knee; learn the slope from this axle's own pulls.
// Degenerate cases: no load: no displacement, slope 0.
// Accuracy: of the formula some 10 % (from memory); of a real hub see above.
// Reference test: tests/core/mechanics/bearings/bearing_stiffness_test.cpp.

namespace sw::mechanics {

struct TaperBearing {
  int rollers = 0;
  Angle contactAngle;
  Length rollerLength;  ///< in contact
};

struct AxialState {
  Force load;
  Length displacement;
  Stiffness slope;      ///< of the load over the displacement, here
  Stiffness shimSlope;  ///< of an opposed pair: preload a thickness of shim
};

/// Errors: OutOfRange "bearing_stiffness.bad_rollers" (details: rollers, least),
/// "bearing_stiffness.bad_angle", "measure.not_positive", "measure.not_finite" (field named).
[[nodiscard]] Result<AxialState> axialDisplacement(const TaperBearing& bearing, Force load);
[[nodiscard]] Result<AxialState> axialLoad(const TaperBearing& bearing, Length displacement);

}  // namespace sw::mechanics
