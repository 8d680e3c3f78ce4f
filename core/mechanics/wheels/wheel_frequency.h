// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "mechanics/wheels/rolling_circumference.h"
#include "units/quantity.h"

// METHOD CARD: how often something shakes at a road speed, and the speed where it does
// Formula: f = m v / C, v = f C / m; m = n for the n-th order of the wheel, the final drive ratio
//   for the prop shaft. u(f) / f = hypot(u(v) / v, u(C) / C), and the same for v from f.
//   A dial counts turns of the wheels the vehicle was built with: v = dial * C_on / C_built, so
//   f = m dial / C_built whatever tyre is on; its C drops out, and its uncertainty with it.
// Source: definition of rolling; JCGM 100:2008 5.1.6 for the uncertainty of a product.
// Assumptions: no slip; C and v independent; the dial is taken as true with the tyre the vehicle
//   was built with. UN R39 lets it show more than the true speed, never less (from memory).
// When not to use: to match an order closer than the uncertainty allows, about 3 % at k = 2 from a
//   marking.
// Valid range: speeds and frequencies >= 0, multiples > 0, uncertainties >= 0.
// Degenerate cases: standing still is 0 Hz with the uncertainty u(v) / C.
// Accuracy: exact but for the inputs.
// Reference test: tests/core/mechanics/wheels/wheel_frequency_test.cpp.

namespace sw::mechanics {

struct UncertainSpeed {
  Speed speed;
  Speed standardUncertainty;
};
struct UncertainFrequency {
  Frequency frequency;
  Frequency standardUncertainty;
};

/// The frequency of `multiple` events a turn. Errors: OutOfRange "measure.not_positive",
/// "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<UncertainFrequency> frequencyAtSpeed(const UncertainSpeed& speed,
                                                          const RollingCircumference& rolling,
                                                          double multiple = 1);
/// The speed at which `multiple` events a turn have this frequency. Errors: as above.
[[nodiscard]] Result<UncertainSpeed> speedAtFrequency(const UncertainFrequency& frequency,
                                                      const RollingCircumference& rolling,
                                                      double multiple = 1);

/// True speed over dial speed.
[[nodiscard]] double trueOverDial(const RollingCircumference& tyreOn,
                                  const RollingCircumference& builtWith);

}  // namespace sw::mechanics
