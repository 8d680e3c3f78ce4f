// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <numbers>

#include "units/unit.h"  // before the aliases: its scoped enumerators carry the same names

// Typed physical quantities: a dimension tag and one double in SI. One must name the unit to get in
// or out, so a wrong unit is visible where it happens. Products exist only where physics gives a
// named type. Factors are exact definitions; their standards stand beside each constant.
//
// METHOD CARD
//   Formula      value in SI = value in unit * factor; value in unit = value in SI / factor.
//   Source       international yard and pound agreement of 1959 (yard = 0.9144 m, pound =
//                0.45359237 kg); 3rd CGPM 1901 (standard gravity 9.80665 m/s2); SI Brochure, 9th
//                edition, tables 8 (min, h, degree, litre, tonne) and 3 (from memory); bar = 1e5
//                Pa, ISO 80000-4 (from memory).
//   Valid range  any finite double. Assumptions: none, the definitions are exact; a product or
//                quotient of doubles adds at most a few parts in 1e16.
//   Degenerate   non-finite values are kept out by the readers (parse.h), not here.
//   Reference    tests/core/units/conversion_test.cpp: GNU units and worked torque rows.

namespace sw {

namespace factor {
inline constexpr double kMetresPerInch = 0.0254;             // 1959 yard-pound agreement, exact
inline constexpr double kMetresPerThou = 0.0000254;          // 1/1000 in, exact
inline constexpr double kMetresPerFoot = 0.3048;             // exact
inline constexpr double kMetresPerYard = 0.9144;             // 1959 agreement, exact
inline constexpr double kMetresPerMile = 1609.344;           // 1760 yd, exact
inline constexpr double kKilogramsPerPound = 0.45359237;     // 1959 agreement, exact
inline constexpr double kStandardGravity = 9.80665;          // m/s2, 3rd CGPM 1901, exact
inline constexpr double kNewtonsPerKilogramForce = 9.80665;  // exact
inline constexpr double kNewtonsPerPoundForce = kKilogramsPerPound * kStandardGravity;
inline constexpr double kNewtonsPerOunceForce = kNewtonsPerPoundForce / 16.0;
inline constexpr double kKilogramsPerOunce = kKilogramsPerPound / 16.0;
inline constexpr double kRadiansPerDegree = std::numbers::pi / 180.0;
inline constexpr double kPascalsPerBar = 100000.0;  // exact
inline constexpr double kPascalsPerPsi = kNewtonsPerPoundForce / (kMetresPerInch * kMetresPerInch);
inline constexpr double kPascalsPerKilogramForcePerSquareCentimetre = 98066.5;  // exact
inline constexpr double kCubicMetresPerLitre = 0.001;  // 12th CGPM 1964, exact
}  // namespace factor

template <class Dimension>
class Quantity {
 public:
  constexpr Quantity() = default;
  /// The SI value: metre, newton, newton metre, radian, kilogram, metre per second, hertz, pascal,
  /// second, cubic metre, kelvin difference, square metre, newton per metre, kilogram metre.
  [[nodiscard]] static constexpr Quantity fromSi(double value) { return Quantity(value); }
  [[nodiscard]] constexpr double si() const { return m_si; }

  friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.m_si + b.m_si); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.m_si - b.m_si); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.m_si); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(k * a.m_si); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.m_si * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.m_si / k); }
  /// A ratio of two like quantities is a plain number.
  friend constexpr double operator/(Quantity a, Quantity b) { return a.m_si / b.m_si; }

 private:
  explicit constexpr Quantity(double si) : m_si(si) {}
  double m_si = 0.0;
};

using Length = Quantity<struct LengthDimension>;
using Force = Quantity<struct ForceDimension>;
using Torque = Quantity<struct TorqueDimension>;
using Angle = Quantity<struct AngleDimension>;
using Mass = Quantity<struct MassDimension>;
using Speed = Quantity<struct SpeedDimension>;
using Frequency = Quantity<struct FrequencyDimension>;
using Pressure = Quantity<struct PressureDimension>;
using Duration = Quantity<struct DurationDimension>;
using Volume = Quantity<struct VolumeDimension>;
using TemperatureDifference = Quantity<struct TemperatureDifferenceDimension>;
using Area = Quantity<struct AreaDimension>;
using Stiffness = Quantity<struct StiffnessDimension>;
using Unbalance = Quantity<struct UnbalanceDimension>;

// Named constructors and readers, e.g. millimetres(0.05), inMillimetres(x).
[[nodiscard]] constexpr Length metres(double v) {
  return Length::fromSi(v);
}
[[nodiscard]] constexpr Length millimetres(double v) {
  return Length::fromSi(v / 1000.0);
}
[[nodiscard]] constexpr double inMillimetres(Length v) {
  return v.si() * 1000.0;
}
[[nodiscard]] constexpr Length inches(double v) {
  return Length::fromSi(v * factor::kMetresPerInch);
}
[[nodiscard]] constexpr double inInches(Length v) {
  return v.si() / factor::kMetresPerInch;
}
[[nodiscard]] constexpr Force newtons(double v) {
  return Force::fromSi(v);
}
[[nodiscard]] constexpr double inNewtons(Force v) {
  return v.si();
}
[[nodiscard]] constexpr Force kilogramsForce(double v) {
  return Force::fromSi(v * factor::kNewtonsPerKilogramForce);
}
[[nodiscard]] constexpr double inKilogramsForce(Force v) {
  return v.si() / factor::kNewtonsPerKilogramForce;
}
[[nodiscard]] constexpr Force poundsForce(double v) {
  return Force::fromSi(v * factor::kNewtonsPerPoundForce);
}
[[nodiscard]] constexpr double inPoundsForce(Force v) {
  return v.si() / factor::kNewtonsPerPoundForce;
}
[[nodiscard]] constexpr Torque newtonMetres(double v) {
  return Torque::fromSi(v);
}
[[nodiscard]] constexpr double inNewtonMetres(Torque v) {
  return v.si();
}
[[nodiscard]] constexpr Torque poundFeet(double v) {
  return Torque::fromSi(v * (factor::kNewtonsPerPoundForce * factor::kMetresPerFoot));
}
[[nodiscard]] constexpr double inPoundFeet(Torque v) {
  return v.si() / (factor::kNewtonsPerPoundForce * factor::kMetresPerFoot);
}
[[nodiscard]] constexpr Mass kilograms(double v) {
  return Mass::fromSi(v);
}
[[nodiscard]] constexpr double inKilograms(Mass v) {
  return v.si();
}
[[nodiscard]] constexpr Angle degrees(double v) {
  return Angle::fromSi(v * factor::kRadiansPerDegree);
}
[[nodiscard]] constexpr Angle radians(double v) {
  return Angle::fromSi(v);
}
[[nodiscard]] constexpr double inDegrees(Angle v) {
  return v.si() / factor::kRadiansPerDegree;
}
[[nodiscard]] constexpr Speed kilometresPerHour(double v) {
  return Speed::fromSi(v / 3.6);
}
[[nodiscard]] constexpr double inKilometresPerHour(Speed v) {
  return v.si() * 3.6;
}
[[nodiscard]] constexpr Duration seconds(double v) {
  return Duration::fromSi(v);
}
[[nodiscard]] constexpr Duration minutes(double v) {
  return Duration::fromSi(v * 60.0);
}

/// Moment of a force on a lever arm, force square to the arm.
[[nodiscard]] constexpr Torque operator*(Force f, Length arm) {
  return Torque::fromSi(f.si() * arm.si());
}
[[nodiscard]] constexpr Torque operator*(Length arm, Force f) {
  return f * arm;
}
/// The weight of a mass under standard gravity.
[[nodiscard]] constexpr Force weightOf(Mass m) {
  return Force::fromSi(m.si() * factor::kStandardGravity);
}

}  // namespace sw
