// SPDX-License-Identifier: GPL-3.0-or-later
// Every unit of the table against GNU units, which keeps its own table of definitions.
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <set>

#include "units/parse.h"
#include "units/unit.h"
#include "units_testing.h"

namespace sw {
namespace {

using units_testing::fieldOf;
using units_testing::relativelyEqual;
using Kind = QuantityKind;

constexpr const char* kGnuUnits = "/usr/bin/units";

struct Pair {
  Kind kind;
  const char* from;     ///< our symbol
  const char* to;       ///< our symbol
  const char* gnuFrom;  ///< the same in the words of GNU units
  const char* gnuTo;
};

constexpr std::array kPairs{
    Pair{Kind::Length, "in", "mm", "inch", "mm"},
    Pair{Kind::Length, "thou", "mm", "thou", "mm"},
    Pair{Kind::Length, "mm", "thou", "mm", "mil"},
    Pair{Kind::Length, "mm", "in", "mm", "inch"},
    Pair{Kind::Length, "cm", "in", "cm", "inch"},
    Pair{Kind::Length, "um", "thou", "micron", "thou"},
    Pair{Kind::Length, "ft", "m", "foot", "m"},
    Pair{Kind::Length, "yd", "m", "yard", "m"},
    Pair{Kind::Length, "km", "mi", "km", "mile"},
    Pair{Kind::Length, "mi", "km", "mile", "km"},
    Pair{Kind::Force, "kgf", "N", "kgf", "N"},
    Pair{Kind::Force, "lbf", "N", "lbf", "N"},
    Pair{Kind::Force, "N", "lbf", "N", "lbf"},
    Pair{Kind::Force, "N", "kgf", "N", "kgf"},
    Pair{Kind::Force, "lbf", "kgf", "lbf", "kgf"},
    Pair{Kind::Force, "gf", "N", "gram force", "N"},
    Pair{Kind::Force, "ozf", "N", "ounce force", "N"},
    Pair{Kind::Force, "daN", "kgf", "daN", "kgf"},
    Pair{Kind::Force, "kN", "lbf", "kN", "lbf"},
    Pair{Kind::Torque, "lbf ft", "N m", "lbf ft", "N m"},
    Pair{Kind::Torque, "N m", "lbf ft", "N m", "lbf ft"},
    Pair{Kind::Torque, "lbf in", "N m", "lbf inch", "N m"},
    Pair{Kind::Torque, "lbf ft", "lbf in", "lbf ft", "lbf inch"},
    Pair{Kind::Torque, "kgf m", "N m", "kgf m", "N m"},
    Pair{Kind::Torque, "kgf m", "lbf ft", "kgf m", "lbf ft"},
    Pair{Kind::Torque, "kgf cm", "N m", "kgf cm", "N m"},
    Pair{Kind::Torque, "N cm", "lbf in", "N cm", "lbf inch"},
    Pair{Kind::Torque, "ozf in", "N m", "ounce force inch", "N m"},
    Pair{Kind::Torque, "daN m", "kgf m", "daN m", "kgf m"},
    Pair{Kind::Angle, "deg", "rad", "degree", "radian"},
    Pair{Kind::Angle, "rad", "deg", "radian", "degree"},
    Pair{Kind::Mass, "lb", "kg", "lb", "kg"},
    Pair{Kind::Mass, "kg", "lb", "kg", "lb"},
    Pair{Kind::Mass, "oz", "g", "oz", "g"},
    Pair{Kind::Mass, "t", "lb", "tonne", "lb"},
    Pair{Kind::Speed, "km/h", "m/s", "km/hour", "m/s"},
    Pair{Kind::Speed, "mph", "km/h", "mile/hour", "km/hour"},
    Pair{Kind::Speed, "m/s", "mph", "m/s", "mile/hour"},
    Pair{Kind::Frequency, "rpm", "Hz", "1/min", "Hz"},
    Pair{Kind::Frequency, "kHz", "rpm", "kHz", "1/min"},
    Pair{Kind::Pressure, "psi", "bar", "psi", "bar"},
    Pair{Kind::Pressure, "bar", "psi", "bar", "psi"},
    Pair{Kind::Pressure, "bar", "kPa", "bar", "kPa"},
    Pair{Kind::Pressure, "kgf/cm2", "bar", "kgf/cm^2", "bar"},
    Pair{Kind::Pressure, "MPa", "psi", "MPa", "psi"},
    Pair{Kind::Pressure, "Pa", "psi", "Pa", "psi"},
    Pair{Kind::Duration, "h", "min", "hour", "minute"},
    Pair{Kind::Duration, "min", "s", "minute", "second"},
    Pair{Kind::Volume, "l", "ml", "litre", "ml"},
    Pair{Kind::Volume, "cm3", "l", "cm^3", "litre"},
    Pair{Kind::Area, "in2", "mm2", "in^2", "mm^2"},
    Pair{Kind::Area, "cm2", "mm2", "cm^2", "mm^2"},
    Pair{Kind::Stiffness, "kN/mm", "N/mm", "kN/mm", "N/mm"},
    Pair{Kind::Stiffness, "kgf/mm", "N/mm", "kgf/mm", "N/mm"},
    Pair{Kind::Stiffness, "lbf/in", "N/mm", "lbf/in", "N/mm"},
    Pair{Kind::Unbalance, "g cm", "g mm", "g cm", "g mm"},
    Pair{Kind::Unbalance, "oz in", "g mm", "oz in", "g mm"},
};

/// What GNU units answers, or nothing if it cannot be run or does not know the units.
std::optional<double> gnuFactor(const Pair& pair) {
  const std::string command =
      std::string(kGnuUnits) + " -t -o '%.17g' '" + pair.gnuFrom + "' '" + pair.gnuTo + "' 2>&1";
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), &pclose);
  std::array<char, 200> line{};
  if (!pipe || std::fgets(line.data(), static_cast<int>(line.size()), pipe.get()) == nullptr) {
    return std::nullopt;
  }
  char* end = nullptr;
  const double value = std::strtod(line.data(), &end);
  if (end == line.data()) return std::nullopt;
  return value;
}

TEST(GnuUnits, AgreesOnEveryPair) {
  ASSERT_TRUE(std::filesystem::exists(kGnuUnits))
      << kGnuUnits << " is missing: install the Debian package 'units'; conversions must not go "
      << "unchecked";
  static_assert(kPairs.size() >= 40);
  for (const Pair& pair : kPairs) {
    SCOPED_TRACE(std::string(pair.from) + " to " + pair.to);
    const auto expected = gnuFactor(pair);
    ASSERT_TRUE(expected.has_value()) << "GNU units gave no number";
    const auto parsed = parseQuantity(std::string("1 ") + pair.from, fieldOf(pair.kind));
    ASSERT_TRUE(parsed.has_value());
    const auto to = findUnit(pair.kind, pair.to);
    ASSERT_TRUE(to.has_value());
    EXPECT_TRUE(relativelyEqual(parsed->value.si / to->toSi, *expected));
  }
}

TEST(GnuUnits, LeavesNoUnitOfTheTableUnchecked) {
  std::set<std::string_view> checked;
  for (const Pair& pair : kPairs) checked.insert({pair.from, pair.to});
  for (const Unit& unit : allUnits()) {
    const bool alone = unit.kind == Kind::Number || unit.kind == Kind::TemperatureDifference;
    EXPECT_TRUE(alone || checked.contains(unit.symbol)) << unit.symbol;
  }
}

}  // namespace
}  // namespace sw
