// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: what lifting the body does to the caster of a live axle
// Formula: arms clamped to the axle turn with it: turn = asin((h0 + h) / L) - asin(h0 / L), h0 the
//   height of the arm's pivot above the axle, h the lift, L the arm from axle to pivot. Pivot
//   behind the axle (leading arm): caster falls by it; pivot ahead (trailing arm): caster rises by
//   it; equal parallel links or leaf springs: about none. Wedge: angle = atan(rise / length).
// Source: plane geometry.
// Assumptions: the pivot goes up with the body by h; the axle stays at its height; bushes do not
//   give.
// When not to use: it says nothing about brake hoses, shafts, the height of the stops or whether a
//   lift is permitted: the vehicle's documentation and local rules do.
// Trap: turning the axle back for caster turns a rear-facing pinion nose down by the same angle;
// the
//   joints of its shaft feel that.
// Valid range: L > 0, |h0| and |h0 + h| below L; wedge rise below its length, length > 0; caster
// within 30
//   degrees.
// Degenerate cases: no lift, no turn.
// Accuracy: exact for a rigid arm.
// Reference test: tests/core/mechanics/geometry/axle_lift_test.cpp.

namespace sw::mechanics {

enum class ArmLayout { Leading, Trailing, Parallel };
[[nodiscard]] std::string_view word(ArmLayout layout);

struct AxleLift {
  ArmLayout layout = ArmLayout::Leading;
  Length armLength;
  Length pivotHeight;  ///< above the axle before the lift, negative below
  Length lift;         ///< negative where the body comes down
};
/// By how much the caster changes. Errors: OutOfRange "measure.not_positive", "measure.not_finite",
/// "wheels.out_of_range".
[[nodiscard]] Result<Angle> casterChange(const AxleLift& lift);

/// The caster after a change. Errors: as above.
[[nodiscard]] Result<Angle> casterAfter(Angle before, Angle change);

struct Wedge {
  Length rise;    ///< thick end less thin end
  Length length;  ///< between them
};
/// Errors: as above.
[[nodiscard]] Result<Angle> wedgeAngle(const Wedge& wedge);
/// The rise that turns the axle by an angle. Errors: as above.
[[nodiscard]] Result<Length> wedgeRise(Angle angle, Length length);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::ArmLayout> {
  using E = mechanics::ArmLayout;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::Leading, "leading"}, {E::Trailing, "trailing"}, {E::Parallel, "parallel"}}};
};

}  // namespace sw
