// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/unit.h"

#include <algorithm>
#include <array>
#include <utility>

#include "units/quantity.h"

namespace sw {

namespace {

using Kind = QuantityKind;

constexpr std::array<std::pair<Kind, std::string_view>, 15> kWords{{
    {Kind::Length, "length"},
    {Kind::Force, "force"},
    {Kind::Torque, "torque"},
    {Kind::Angle, "angle"},
    {Kind::Mass, "mass"},
    {Kind::Speed, "speed"},
    {Kind::Frequency, "frequency"},
    {Kind::Pressure, "pressure"},
    {Kind::Duration, "duration"},
    {Kind::Volume, "volume"},
    {Kind::TemperatureDifference, "temperature_difference"},
    {Kind::Area, "area"},
    {Kind::Stiffness, "stiffness"},
    {Kind::Unbalance, "unbalance"},
    {Kind::Number, "number"},
}};

constexpr std::array kUnits{
    Unit{Kind::Length, "mm", 0.001},
    Unit{Kind::Length, "in", factor::kMetresPerInch},
    Unit{Kind::Length, "thou", factor::kMetresPerThou},
    Unit{Kind::Length, "cm", 0.01},
    Unit{Kind::Length, "m", 1.0},
    Unit{Kind::Length, "um", 0.000001},
    Unit{Kind::Length, "ft", factor::kMetresPerFoot},
    Unit{Kind::Length, "yd", factor::kMetresPerYard},
    Unit{Kind::Length, "km", 1000.0},
    Unit{Kind::Length, "mi", factor::kMetresPerMile},
    Unit{Kind::Force, "N", 1.0},
    Unit{Kind::Force, "kgf", factor::kNewtonsPerKilogramForce},
    Unit{Kind::Force, "lbf", factor::kNewtonsPerPoundForce},
    Unit{Kind::Force, "gf", factor::kNewtonsPerKilogramForce / 1000.0},
    Unit{Kind::Force, "ozf", factor::kNewtonsPerOunceForce},
    Unit{Kind::Force, "daN", 10.0},
    Unit{Kind::Force, "kN", 1000.0},
    Unit{Kind::Torque, "N m", 1.0},
    Unit{Kind::Torque, "lbf ft", factor::kNewtonsPerPoundForce* factor::kMetresPerFoot},
    Unit{Kind::Torque, "kgf m", factor::kNewtonsPerKilogramForce},
    Unit{Kind::Torque, "lbf in", factor::kNewtonsPerPoundForce* factor::kMetresPerInch},
    Unit{Kind::Torque, "kgf cm", factor::kNewtonsPerKilogramForce / 100.0},
    Unit{Kind::Torque, "N cm", 0.01},
    Unit{Kind::Torque, "ozf in", factor::kNewtonsPerOunceForce* factor::kMetresPerInch},
    Unit{Kind::Torque, "daN m", 10.0},
    Unit{Kind::Angle, "deg", factor::kRadiansPerDegree},
    Unit{Kind::Angle, "rad", 1.0},
    Unit{Kind::Mass, "kg", 1.0},
    Unit{Kind::Mass, "lb", factor::kKilogramsPerPound},
    Unit{Kind::Mass, "g", 0.001},
    Unit{Kind::Mass, "oz", factor::kKilogramsPerOunce},
    Unit{Kind::Mass, "t", 1000.0},
    Unit{Kind::Speed, "km/h", 1.0 / 3.6},
    Unit{Kind::Speed, "mph", factor::kMetresPerMile / 3600.0},
    Unit{Kind::Speed, "m/s", 1.0},
    Unit{Kind::Frequency, "Hz", 1.0},
    Unit{Kind::Frequency, "rpm", 1.0 / 60.0},
    Unit{Kind::Frequency, "kHz", 1000.0},
    Unit{Kind::Pressure, "bar", factor::kPascalsPerBar},
    Unit{Kind::Pressure, "psi", factor::kPascalsPerPsi},
    Unit{Kind::Pressure, "kPa", 1000.0},
    Unit{Kind::Pressure, "kgf/cm2", factor::kPascalsPerKilogramForcePerSquareCentimetre},
    Unit{Kind::Pressure, "MPa", 1000000.0},
    Unit{Kind::Pressure, "Pa", 1.0},
    Unit{Kind::Duration, "min", 60.0},
    Unit{Kind::Duration, "h", 3600.0},
    Unit{Kind::Duration, "s", 1.0},
    Unit{Kind::Volume, "l", factor::kCubicMetresPerLitre},
    Unit{Kind::Volume, "ml", factor::kCubicMetresPerLitre / 1000.0},
    Unit{Kind::Volume, "cm3", 0.000001},
    Unit{Kind::TemperatureDifference, "K", 1.0},
    Unit{Kind::Area, "mm2", 0.000001},
    Unit{Kind::Area, "in2", factor::kMetresPerInch* factor::kMetresPerInch},
    Unit{Kind::Area, "cm2", 0.0001},
    Unit{Kind::Stiffness, "N/mm", 1000.0},
    Unit{Kind::Stiffness, "kN/mm", 1000000.0},
    Unit{Kind::Stiffness, "kgf/mm", factor::kNewtonsPerKilogramForce * 1000.0},
    Unit{Kind::Stiffness, "lbf/in", factor::kNewtonsPerPoundForce / factor::kMetresPerInch},
    Unit{Kind::Unbalance, "g mm", 0.000001},
    Unit{Kind::Unbalance, "g cm", 0.00001},
    Unit{Kind::Unbalance, "oz in", factor::kKilogramsPerOunce* factor::kMetresPerInch},
    Unit{Kind::Number, "", 1.0},
};

}  // namespace

std::string_view word(QuantityKind kind) {
  const auto found = std::find_if(kWords.begin(), kWords.end(),
                                  [kind](const auto& entry) { return entry.first == kind; });
  return found == kWords.end() ? std::string_view{} : found->second;
}

std::optional<QuantityKind> quantityKindFromWord(std::string_view word) {
  const auto found = std::find_if(kWords.begin(), kWords.end(),
                                  [word](const auto& entry) { return entry.second == word; });
  if (found == kWords.end()) return std::nullopt;
  return found->first;
}

std::span<const Unit> allUnits() {
  return kUnits;
}

std::optional<Unit> findUnit(QuantityKind kind, std::string_view symbol) {
  const auto found = std::find_if(kUnits.begin(), kUnits.end(), [&](const Unit& unit) {
    return unit.kind == kind && unit.symbol == symbol;
  });
  if (found == kUnits.end()) return std::nullopt;
  return *found;
}

const Unit& defaultUnit(QuantityKind kind) {
  const auto found = std::find_if(kUnits.begin(), kUnits.end(),
                                  [kind](const Unit& unit) { return unit.kind == kind; });
  return found == kUnits.end() ? kUnits.back() : *found;
}

}  // namespace sw
