// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/brake_torque_variation.h"

#include <numbers>

#include "mechanics/number_checks.h"

namespace sw::mechanics {

Result<TorqueVariation> brakeTorqueVariation(const TorqueVariationInput& input) {
  const auto checked = NumberChecks()
                           .notNegative("thickness_variation", input.thicknessVariation)
                           .positive("stiffness", input.stiffness)
                           .positive("friction", input.friction)
                           .positive("effective_radius", input.effectiveRadius)
                           .positive("piston_diameter", input.pistonDiameter)
                           .done();
  if (!checked) return failAs(checked);
  TorqueVariation result;
  result.clampingForce = Force::fromSi(input.stiffness.si() * input.thicknessVariation.si());
  result.torque = 2 * input.friction * (result.clampingForce * input.effectiveRadius);
  if (input.pistonDiameter) {
    const double diameter = input.pistonDiameter->si();
    const double area = std::numbers::pi / 4 * diameter * diameter;
    result.pressure = Pressure::fromSi(result.clampingForce.si() / area);
  }
  return result;
}

Result<Frequency> judderFrequency(Speed speed, Length rollingCircumference, int order) {
  const auto checked = NumberChecks()
                           .positive("speed", speed)
                           .positive("rolling_circumference", rollingCircumference)
                           .positive("order", static_cast<double>(order))
                           .done();
  if (!checked) return failAs(checked);
  return Frequency::fromSi(order * speed.si() / rollingCircumference.si());
}

}  // namespace sw::mechanics
