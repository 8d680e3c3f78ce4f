// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <span>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/polar.h"
#include "units/quantity.h"

// METHOD CARD: what weights on a turning wheel do
// Formula: w = v / r_dyn; Ui, Uo = sums of m r in the inner and outer plane (vectors); static
//   Us = Ui + Uo, force F = |Us| w^2; couple |Uo - Ui| / 2 * b w^2 about the middle between the
//   planes. Grade: e = G / w, U = m_wheel e, and backwards G = |Us| w / m_wheel.
// Source: plane dynamics; ISO 21940-11 for the grade (from memory).
// Assumptions: both planes at one radius, about that of the rim; the wheel is rigid and turns true.
// When not to use: the grade is for information only. G40, that standard's class for car wheels,
//   leaves a wheel about 30 g in each plane, far looser than any workshop: judge by the grams of
//   each plane. A bubble balance shows Us alone; a couple it does not see can be the larger moment
//   about the swivel.
// Valid range: amounts >= 0, radius > 0, spacing and lever >= 0, speed >= 0; at most 100 weights.
// Degenerate cases: no weights or no speed: nothing pulls. The angle of nothing is 0.
// Accuracy: exact but for the inputs; force and couple grow with the square of the speed.
// Reference test: tests/core/mechanics/wheels/unbalance_test.cpp.

namespace sw::mechanics {

enum class BalancePlane { Inner, Outer };
[[nodiscard]] std::string_view word(BalancePlane plane);

struct WheelWeight {
  BalancePlane plane = BalancePlane::Inner;
  Mass amount;
  Angle angle;
};

struct BalanceGeometry {
  Length radius;   ///< of the weights
  Length spacing;  ///< between the planes
  Length lever;    ///< of the force about the swivel axis
};

struct UnbalanceVector {
  Unbalance amount;
  Angle angle;
};

struct UnbalanceAtSpeed {
  double angularSpeed = 0;  ///< rad/s
  UnbalanceVector inner, outer, statical;
  Force force;
  Torque momentOfForce;  ///< on the lever
  Torque couple;
  Angle coupleAngle;  ///< of the outer plane's share
};

/// The weights at a speed of a wheel of this dynamic radius. Errors: OutOfRange
/// "measure.not_positive", "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<UnbalanceAtSpeed> unbalanceAtSpeed(std::span<const WheelWeight> weights,
                                                        const BalanceGeometry& geometry,
                                                        Speed speed, Length dynamicRadius);

/// What a grade lets a wheel keep.
struct GradeAllowance {
  Length eccentricity;
  Unbalance unbalance;
  Mass atRadius;  ///< all of it at the radius of the weights
  Mass eachPlane;
};
inline constexpr double kGradeOfCarWheels = 40;  ///< mm/s, ISO 21940-11 (from memory)
/// `grade` in mm/s. Errors: as above; a standing wheel has no allowance.
[[nodiscard]] Result<GradeAllowance> gradeAllowance(double grade, Mass wheel, double angularSpeed,
                                                    Length radius);
/// The grade a static unbalance amounts to, mm/s. Errors: as above.
[[nodiscard]] Result<double> gradeOf(Unbalance unbalance, Mass wheel, double angularSpeed);

/// The mass that makes an unbalance at a radius.
[[nodiscard]] Mass massAt(Unbalance unbalance, Length radius);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::BalancePlane> {
  using E = mechanics::BalancePlane;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Inner, "inner"}, {E::Outer, "outer"}}};
};

}  // namespace sw
