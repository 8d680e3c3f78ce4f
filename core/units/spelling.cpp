// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/spelling.h"

#include <algorithm>
#include <array>

#include "units/number_text.h"

namespace sw::spelling {

namespace {

using Kind = QuantityKind;
constexpr Reading kPlain = Reading::Plain;
constexpr Reading kForce = Reading::MassAsForce;
constexpr Reading kTorque = Reading::MassAsTorque;
constexpr std::size_t kLongestUnit = 40;

// Sources: SI Brochure names and symbols; the rest is common practice, no source. "mil" is the
// thousandth of an inch. A plain "ton", "pint" or "quart" has several sizes and is left out.
constexpr std::array kSpellings{
    Spelling{Kind::Length, "MM", "mm", kPlain, Capitals::Exact},
    Spelling{Kind::Length, "millimetre", "mm"},
    Spelling{Kind::Length, "millimetres", "mm"},
    Spelling{Kind::Length, "millimeter", "mm"},
    Spelling{Kind::Length, "millimeters", "mm"},
    Spelling{Kind::Length, "\"", "in"},
    Spelling{Kind::Length, "''", "in"},
    Spelling{Kind::Length, "inch", "in"},
    Spelling{Kind::Length, "inches", "in"},
    Spelling{Kind::Length, "thous", "thou"},
    Spelling{Kind::Length, "mil", "thou"},
    Spelling{Kind::Length, "mils", "thou"},
    Spelling{Kind::Length, "metre", "m"},
    Spelling{Kind::Length, "metres", "m"},
    Spelling{Kind::Length, "meter", "m"},
    Spelling{Kind::Length, "meters", "m"},
    Spelling{Kind::Length, "micron", "um"},
    Spelling{Kind::Length, "microns", "um"},
    Spelling{Kind::Length, "foot", "ft"},
    Spelling{Kind::Length, "feet", "ft"},
    Spelling{Kind::Length, "yard", "yd"},
    Spelling{Kind::Length, "yards", "yd"},
    Spelling{Kind::Length, "kms", "km"},
    Spelling{Kind::Length, "kilometre", "km"},
    Spelling{Kind::Length, "kilometres", "km"},
    Spelling{Kind::Length, "kilometer", "km"},
    Spelling{Kind::Length, "kilometers", "km"},
    Spelling{Kind::Length, "mile", "mi"},
    Spelling{Kind::Length, "miles", "mi"},
    Spelling{Kind::Force, "newton", "N"},
    Spelling{Kind::Force, "newtons", "N"},
    Spelling{Kind::Force, "kp", "kgf"},
    Spelling{Kind::Force, "lbsf", "lbf"},
    Spelling{Kind::Force, "kg", "kgf", kForce},
    Spelling{Kind::Force, "kgs", "kgf", kForce},
    Spelling{Kind::Force, "kilo", "kgf", kForce},
    Spelling{Kind::Force, "kilos", "kgf", kForce},
    Spelling{Kind::Force, "kilogram", "kgf", kForce},
    Spelling{Kind::Force, "kilograms", "kgf", kForce},
    Spelling{Kind::Force, "g", "gf", kForce, Capitals::Exact},
    Spelling{Kind::Force, "gram", "gf", kForce},
    Spelling{Kind::Force, "grams", "gf", kForce},
    Spelling{Kind::Force, "lb", "lbf", kForce},
    Spelling{Kind::Force, "lbs", "lbf", kForce},
    Spelling{Kind::Force, "pound", "lbf", kForce},
    Spelling{Kind::Force, "pounds", "lbf", kForce},
    Spelling{Kind::Force, "oz", "ozf", kForce},
    Spelling{Kind::Force, "ounce", "ozf", kForce},
    Spelling{Kind::Force, "ounces", "ozf", kForce},
    Spelling{Kind::Torque, "newton metre", "N m"},
    Spelling{Kind::Torque, "newton metres", "N m"},
    Spelling{Kind::Torque, "newton meter", "N m"},
    Spelling{Kind::Torque, "newton meters", "N m"},
    Spelling{Kind::Torque, "m kgf", "kgf m"},
    Spelling{Kind::Torque, "kp m", "kgf m"},
    Spelling{Kind::Torque, "m kp", "kgf m"},
    Spelling{Kind::Torque, "kg m", "kgf m", kTorque},
    Spelling{Kind::Torque, "m kg", "kgf m", kTorque},
    Spelling{Kind::Torque, "cm kgf", "kgf cm"},
    Spelling{Kind::Torque, "kp cm", "kgf cm"},
    Spelling{Kind::Torque, "cm kp", "kgf cm"},
    Spelling{Kind::Torque, "kg cm", "kgf cm", kTorque},
    Spelling{Kind::Torque, "cm kg", "kgf cm", kTorque},
    Spelling{Kind::Torque, "ft lbf", "lbf ft"},
    Spelling{Kind::Torque, "lb ft", "lbf ft", kTorque},
    Spelling{Kind::Torque, "lbs ft", "lbf ft", kTorque},
    Spelling{Kind::Torque, "ft lb", "lbf ft", kTorque},
    Spelling{Kind::Torque, "ft lbs", "lbf ft", kTorque},
    Spelling{Kind::Torque, "foot pound", "lbf ft", kTorque},
    Spelling{Kind::Torque, "foot pounds", "lbf ft", kTorque},
    Spelling{Kind::Torque, "pound foot", "lbf ft", kTorque},
    Spelling{Kind::Torque, "pound feet", "lbf ft", kTorque},
    Spelling{Kind::Torque, "in lbf", "lbf in"},
    Spelling{Kind::Torque, "lb in", "lbf in", kTorque},
    Spelling{Kind::Torque, "lbs in", "lbf in", kTorque},
    Spelling{Kind::Torque, "in lb", "lbf in", kTorque},
    Spelling{Kind::Torque, "in lbs", "lbf in", kTorque},
    Spelling{Kind::Torque, "inch pound", "lbf in", kTorque},
    Spelling{Kind::Torque, "inch pounds", "lbf in", kTorque},
    Spelling{Kind::Torque, "in ozf", "ozf in"},
    Spelling{Kind::Torque, "oz in", "ozf in", kTorque},
    Spelling{Kind::Torque, "in oz", "ozf in", kTorque},
    Spelling{Kind::Torque, "m daN", "daN m"},
    Spelling{Kind::Angle, "\u00b0", "deg"},
    Spelling{Kind::Angle, "degs", "deg"},
    Spelling{Kind::Angle, "degree", "deg"},
    Spelling{Kind::Angle, "degrees", "deg"},
    Spelling{Kind::Angle, "radian", "rad"},
    Spelling{Kind::Angle, "radians", "rad"},
    Spelling{Kind::Mass, "kgs", "kg"},
    Spelling{Kind::Mass, "kilo", "kg"},
    Spelling{Kind::Mass, "kilos", "kg"},
    Spelling{Kind::Mass, "kilogram", "kg"},
    Spelling{Kind::Mass, "kilograms", "kg"},
    Spelling{Kind::Mass, "lbs", "lb"},
    Spelling{Kind::Mass, "pound", "lb"},
    Spelling{Kind::Mass, "pounds", "lb"},
    Spelling{Kind::Mass, "gram", "g"},
    Spelling{Kind::Mass, "grams", "g"},
    Spelling{Kind::Mass, "ounce", "oz"},
    Spelling{Kind::Mass, "ounces", "oz"},
    Spelling{Kind::Mass, "tonne", "t"},
    Spelling{Kind::Mass, "tonnes", "t"},
    Spelling{Kind::Speed, "kmh", "km/h"},
    Spelling{Kind::Speed, "kph", "km/h"},
    Spelling{Kind::Speed, "kmph", "km/h"},
    Spelling{Kind::Speed, "km/hr", "km/h"},
    Spelling{Kind::Speed, "km/hour", "km/h"},
    Spelling{Kind::Speed, "mi/h", "mph"},
    Spelling{Kind::Speed, "mile/hour", "mph"},
    Spelling{Kind::Speed, "miles/hour", "mph"},
    Spelling{Kind::Frequency, "hertz", "Hz"},
    Spelling{Kind::Frequency, "1/min", "rpm"},
    Spelling{Kind::Frequency, "r/min", "rpm"},
    Spelling{Kind::Pressure, "bars", "bar"},
    Spelling{Kind::Pressure, "lbf/in2", "psi"},
    Spelling{Kind::Pressure, "lb/in2", "psi"},
    Spelling{Kind::Pressure, "kgf/cm\u00b2", "kgf/cm2"},
    Spelling{Kind::Pressure, "kg/cm2", "kgf/cm2"},
    Spelling{Kind::Pressure, "kg/cm\u00b2", "kgf/cm2"},
    Spelling{Kind::Pressure, "kp/cm2", "kgf/cm2"},
    Spelling{Kind::Pressure, "MPA", "MPa", kPlain, Capitals::Exact},
    Spelling{Kind::Duration, "mins", "min"},
    Spelling{Kind::Duration, "minute", "min"},
    Spelling{Kind::Duration, "minutes", "min"},
    Spelling{Kind::Duration, "hr", "h"},
    Spelling{Kind::Duration, "hrs", "h"},
    Spelling{Kind::Duration, "hour", "h"},
    Spelling{Kind::Duration, "hours", "h"},
    Spelling{Kind::Duration, "sec", "s"},
    Spelling{Kind::Duration, "secs", "s"},
    Spelling{Kind::Duration, "second", "s"},
    Spelling{Kind::Duration, "seconds", "s"},
    Spelling{Kind::Volume, "litre", "l"},
    Spelling{Kind::Volume, "litres", "l"},
    Spelling{Kind::Volume, "liter", "l"},
    Spelling{Kind::Volume, "liters", "l"},
    Spelling{Kind::Volume, "mL", "ml", kPlain, Capitals::Exact},
    Spelling{Kind::Volume, "cm\u00b3", "cm3"},
    Spelling{Kind::Volume, "cc", "cm3"},
    Spelling{Kind::Volume, "ccm", "cm3"},
    Spelling{Kind::TemperatureDifference, "\u00b0C", "K"},
    Spelling{Kind::TemperatureDifference, "degC", "K"},
    Spelling{Kind::Area, "mm\u00b2", "mm2"},
    Spelling{Kind::Area, "cm\u00b2", "cm2"},
    Spelling{Kind::Area, "in\u00b2", "in2"},
    Spelling{Kind::Area, "sq in", "in2"},
    Spelling{Kind::Stiffness, "kg/mm", "kgf/mm"},
    Spelling{Kind::Stiffness, "lb/in", "lbf/in"},
};

/// Symbols whose capitals matter: a different one would be a thousand or a million times as much,
/// or another quantity.
constexpr std::array<std::string_view, 9> kExactSymbols{"mm", "m", "g",  "MPa", "Pa",
                                                        "ml", "t", "um", "K"};

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// Product signs and blanks between factors as one blank each; blanks around '/' and a full stop at
/// the end dropped.
std::string withPlainProducts(std::string_view text) {
  std::string plain;
  bool pending = false;
  while (!text.empty()) {
    const bool dot = text.starts_with("\u00b7");
    const char c = text[0];
    const bool separates = dot || number_text::isBlank(c) || c == '.' || c == '-' || c == '*';
    // A sign in front of the unit is no product: "25 -N" stays unknown.
    if (separates && !(plain.empty() && !number_text::isBlank(c))) {
      pending = true;
    } else {
      if (pending && c != '/' && !plain.ends_with('/')) plain.push_back(' ');
      pending = false;
      plain.push_back(c);
    }
    text.remove_prefix(dot && pending ? 2 : 1);
  }
  return plain;
}

/// Whether text is the spelling, where each blank of the spelling may also be missing.
bool matches(std::string_view spelling, std::string_view text, Capitals capitals) {
  std::size_t at = 0;
  for (const char expected : spelling) {
    const bool there =
        at < text.size() &&
        (capitals == Capitals::Exact ? text[at] == expected : lower(text[at]) == lower(expected));
    if (there) {
      ++at;
    } else if (expected != ' ') {
      return false;
    }
  }
  return at == text.size();
}

bool needsExactCapitals(std::string_view symbol) {
  return std::find(kExactSymbols.begin(), kExactSymbols.end(), symbol) != kExactSymbols.end();
}

std::optional<UnitMatch> matchPlain(Kind kind, std::string_view text, Capitals capitals) {
  for (const Unit& unit : allUnits()) {
    const bool eligible = unit.kind == kind && !unit.symbol.empty() &&
                          (capitals == Capitals::Exact || !needsExactCapitals(unit.symbol));
    if (eligible && matches(unit.symbol, text, capitals)) return UnitMatch{unit, kPlain};
  }
  for (const Spelling& spelling : kSpellings) {
    const bool eligible = spelling.kind == kind &&
                          (capitals == Capitals::Exact || spelling.capitals == Capitals::Any);
    if (!eligible || !matches(spelling.text, text, capitals)) continue;
    if (const auto unit = findUnit(kind, spelling.symbol)) {
      return UnitMatch{*unit, spelling.reading};
    }
  }
  return std::nullopt;
}

}  // namespace

std::span<const Spelling> allSpellings() {
  return kSpellings;
}

std::optional<UnitMatch> matchUnit(QuantityKind kind, std::string_view text) {
  if (text.empty() || text.size() > kLongestUnit) return std::nullopt;
  const std::string plain = withPlainProducts(text);
  if (const auto exact = matchPlain(kind, plain, Capitals::Exact)) return exact;
  return matchPlain(kind, plain, Capitals::Any);
}

std::optional<QuantityKind> otherKindOf(QuantityKind kind, std::string_view text) {
  if (text.empty() || text.size() > kLongestUnit) return std::nullopt;
  const std::string plain = withPlainProducts(text);
  const Capitals loosest = plain.size() >= 3 ? Capitals::Any : Capitals::Exact;
  std::optional<QuantityKind> secondBest;  // kg is a mass first, though a force field takes it too
  for (const Capitals capitals : {Capitals::Exact, loosest}) {
    for (const Unit& unit : allUnits()) {
      if (unit.kind == kind) continue;
      const auto match = matchPlain(unit.kind, plain, capitals);
      if (match && match->reading == kPlain) return unit.kind;
      if (match && !secondBest) secondBest = unit.kind;
    }
  }
  return secondBest;
}

}  // namespace sw::spelling
