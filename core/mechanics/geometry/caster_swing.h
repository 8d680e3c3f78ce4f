// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: caster and kingpin inclination from a swing of the wheel
// Formula, small angles: caster = (camber steered outward by A - camber steered inward by A)
//   / (2 sin A); kingpin inclination = the same with the tilt of the wheel's fore-and-aft line,
//   front end up positive, brake locked. For A = 20 degrees the factor is 1.4619.
// Formula, exact: the wheel is turned about its axis in space, and the axis is sought that gives
// the
//   readings. Turned by A' about the axis itself this is
//   tan c = N (sin g+ - sin g-) / (2 sin A' cos g0), N = sqrt(1 + tan^2 c + tan^2 KPI), and
//   tan KPI = N (sin t+ - sin t-) / (2 sin A').
//   A turntable shows the heading of the wheel instead, for which A' is worked out.
//   u(c) = hypot(u(g+), u(g-)) / (2 sin A), and c u(A) / tan A.
// Source: geometry of a rotation in space; JCGM 100:2008 5.1.2.
// Signs: caster positive with the axis leaning back at the top, inclination positive with the top
//   leaning inboard, camber positive with the wheel leaning out at the top (ISO 8855, from memory).
// Assumptions: the turntables are level side to side; a slope they share cancels. The wheel does
// not
//   roll while it is swung.
// When not to use: factors met in public that are not 1 / (2 sin A): for 20 degrees 1.5 is 2.6 %
// too
//   much, 1.432 2 % too little, and 1 / sin 2A = 1.556 is wrong by 6.4 %.
// Valid range: A 5 to 45 degrees; readings within 40 degrees; angles of the axis within 30; camber
//   within 15; frame within 30.
// Degenerate cases: readings that no axis within 30 degrees gives are out of range.
// Accuracy: small angles within about 1 % of exact at usual axes; start camber and toe do not
// matter
//   to it, inclination by less than 1 %. Exact: to the readings.
// Reference test: tests/core/mechanics/geometry/caster_swing_test.cpp.

namespace sw::mechanics {

enum class TurnShown { Turntable, AboutAxis };
[[nodiscard]] std::string_view word(TurnShown shown);

/// Two readings, the wheel steered as far to either side.
struct Swing {
  Angle turn;
  Angle outward;
  Angle inward;
};

/// Caster from cambers, or inclination from tilts. Errors: OutOfRange "measure.not_finite",
/// "wheels.out_of_range".
[[nodiscard]] Result<Angle> smallAngleSwing(const Swing& swing);

/// What besides the readings an exact answer needs.
struct SwingSetting {
  Angle camberAhead;  ///< wheels straight ahead
  TurnShown shown = TurnShown::Turntable;
};
/// Errors: as above.
[[nodiscard]] Result<Angle> exactCaster(const Swing& cambers, Angle inclination,
                                        const SwingSetting& setting = {});
[[nodiscard]] Result<Angle> exactInclination(const Swing& tilts, Angle caster,
                                             const SwingSetting& setting = {});
struct SteeringAxis {
  Angle caster;
  Angle inclination;
};
/// Both from both swings.
[[nodiscard]] Result<SteeringAxis> exactAxis(const Swing& cambers, const Swing& tilts,
                                             const SwingSetting& setting = {});

struct SwingUncertainty {
  Angle reading;  ///< standard, of each of the two
  Angle turn;     ///< standard
};
/// Standard uncertainty of `angle`, found from a swing by `turn`. Errors: as above.
[[nodiscard]] Result<Angle> uncertaintyOfSwing(Angle angle, Angle turn,
                                               const SwingUncertainty& uncertainty);

/// Caster is specified with the frame level. The frame's angle is positive with its front down.
/// Errors: as above.
[[nodiscard]] Result<Angle> casterAtLevelFrame(Angle measured, Angle frame);
/// What is to be measured on a frame at this angle for a specified caster. Errors: as above.
[[nodiscard]] Result<Angle> casterToMeasure(Angle specified, Angle frame);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::TurnShown> {
  using E = mechanics::TurnShown;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Turntable, "turntable"}, {E::AboutAxis, "about_axis"}}};
};

}  // namespace sw
