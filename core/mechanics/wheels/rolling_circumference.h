// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "base/result.h"
#include "mechanics/wheels/tyre_designation.h"
#include "units/quantity.h"

// METHOD CARD: rolling circumference of a wheel
// Formula: geometric pi D; dynamic, radial 3.05 D; dynamic, diagonal 2.99 D (D the free diameter;
//   maximum load, specified pressure, 60 km/h); static radius 2 pi SLR; roll-out: way / turns.
//   r_dyn = C / (2 pi). Worn tread takes twice its depth off D.
//   With speed: C(v) = C60 (1 + (v - 60 km/h) / 10000 km/h); what was measured standing or rolled
//   by hand counts as C at 0 km/h. Where the wheel turns f times a second v = f C(v), so
//   C = C60 (1 - 60 / 10000) / (1 - f C60 / 10000 km/h).
// Source: ETRTO for 3.05 and 2.99, WdK for the growth with speed, each as quoted by a technical
//   note; DIN 70020 for the 60 km/h.
// Assumptions: standard uncertainty 1.5 % from a marking, diameter or static radius, 0.3 % from a
//   roll-out; both can be set. One roll-out is done with the driver aboard at road pressure.
// When not to use: the geometric circumference is 3 % too long for a radial, and 2 pi SLR about 1 %
//   too short, since the belt keeps its length. Both are here to compare figures.
// Valid range: lengths > 0, turns 1 to 100, speeds 0 to 300 km/h, wear >= 0 and below the section
//   height (the caller's: below a tenth of D here), relative uncertainty > 0 up to 0.2.
// Degenerate cases: none.
// Accuracy: as the uncertainty says; bias-belted tyres are taken as radial (no source).
// Reference test: tests/core/mechanics/wheels/rolling_circumference_test.cpp.

namespace sw::mechanics {

enum class RollingConvention { Geometric, DynamicRadial, DynamicDiagonal, StaticRadius, RollOut };
[[nodiscard]] std::string_view word(RollingConvention convention);
[[nodiscard]] std::optional<RollingConvention> rollingConventionFromWord(std::string_view text);

/// The dynamic convention of a construction.
[[nodiscard]] RollingConvention conventionOf(TyreConstruction construction);

inline constexpr double kUncertaintyOfMarking = 0.015;
inline constexpr double kUncertaintyOfRollOut = 0.003;

struct RollingCircumference {
  Length circumference;
  double relativeUncertainty = kUncertaintyOfMarking;  ///< standard
  RollingConvention convention = RollingConvention::DynamicRadial;

  [[nodiscard]] Length standardUncertainty() const { return circumference * relativeUncertainty; }
  [[nodiscard]] Length dynamicRadius() const;
  [[nodiscard]] double turnsPerKilometre() const;
};

/// For Geometric and the two dynamic ones. Errors: OutOfRange "measure.not_positive",
/// "wheels.out_of_range" (tread_worn; convention for one that has no diameter).
[[nodiscard]] Result<RollingCircumference> circumferenceFromDiameter(Length diameter,
                                                                     RollingConvention convention,
                                                                     Length treadWorn = {});
[[nodiscard]] Result<RollingCircumference> circumferenceFromStaticRadius(Length radius);
[[nodiscard]] Result<RollingCircumference> circumferenceFromRollOut(Length way, int turns);

/// The same with another relative standard uncertainty. Errors: OutOfRange "wheels.out_of_range".
[[nodiscard]] Result<RollingCircumference> withUncertainty(RollingCircumference rolling,
                                                           double relative);

/// The circumference at a speed. Errors: OutOfRange "wheels.out_of_range" (speed).
[[nodiscard]] Result<RollingCircumference> atSpeed(RollingCircumference rolling, Speed speed);
/// The circumference at the speed where the wheel turns this often; beyond 300 km/h it grows no
/// more. Errors: OutOfRange "measure.not_positive", "measure.not_finite" (frequency).
[[nodiscard]] Result<RollingCircumference> atTurnRate(RollingCircumference rolling,
                                                      Frequency turns);

}  // namespace sw::mechanics
