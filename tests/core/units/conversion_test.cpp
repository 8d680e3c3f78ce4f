// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>
#include <set>

#include "units/format.h"
#include "units/parse.h"
#include "units/unit.h"
#include "units_testing.h"

namespace sw {
namespace {

using units_testing::fieldOf;
using units_testing::relativelyEqual;
using Kind = QuantityKind;

double converted(std::string_view text, std::string_view to) {
  const auto parsed = parseQuantity(text, fieldOf(Kind::Torque));
  const auto unit = findUnit(Kind::Torque, to);
  EXPECT_TRUE(parsed.has_value() && unit.has_value()) << text << " to " << to;
  return parsed && unit ? parsed->value.si / unit->toSi : 0.0;
}

// Worked by hand from the exact definitions: 1 lbf = 0.45359237 kg x 9.80665 m/s2 (pound agreement
// of 1959, CGPM 1901), 1 in = 25.4 mm. The digits of the first two rows and of 100 N m are also in
// published conversion tables (100 N m = 73.76 lbf ft there).
TEST(TorqueConversion, GivesTheWorkedRows) {
  struct Row {
    const char* from;
    const char* to;
    double expected;
  };
  const Row rows[] = {
      {"1 lbf ft", "N m", 1.3558179483314004},
      {"1 lbf in", "N m", 0.1129848290276167},
      {"1 kgf m", "N m", 9.80665},
      {"1 kgf cm", "N m", 0.0980665},
      {"100 N m", "lbf ft", 73.7562149277265},
      {"250 lbf in", "N m", 28.2462072569042},
      {"250 kgf cm", "N m", 24.516625},
      {"8.5 kgf m", "N m", 83.356525},
      {"1 kgf m", "lbf ft", 7.23301385120989},
      {"1 ozf in", "N m", 0.00706155181422604},
      {"1 lbf ft", "lbf in", 12.0},
  };
  for (const Row& row : rows) {
    EXPECT_TRUE(relativelyEqual(converted(row.from, row.to), row.expected)) << row.from;
  }
}

// A factor seen in print, 1 ft lb = 0.1387 m kg, is wrong: 0.3048 x 0.45359237 = 0.138254954376.
TEST(TorqueConversion, RefusesTheMisprintedFootPound) {
  EXPECT_TRUE(relativelyEqual(converted("1 ft-lb", "kgf m"), 0.138254954376));
  EXPECT_GT(std::abs(converted("1 ft-lb", "kgf m") - 0.1387), 0.0004);
}

// Pound agreement of 1959 and CGPM 1901: 0.45359237 x 9.80665 = 4.4482216152605 exactly.
TEST(NamedConstructors, UseTheDefinitions) {
  EXPECT_TRUE(relativelyEqual(inNewtons(poundsForce(1.0)), 4.4482216152605));
  EXPECT_TRUE(relativelyEqual(inPoundsForce(newtons(4.4482216152605)), 1.0));
  EXPECT_TRUE(relativelyEqual(inNewtons(kilogramsForce(2.0)), 19.6133));
  EXPECT_TRUE(relativelyEqual(inKilogramsForce(newtons(19.6133)), 2.0));
  EXPECT_TRUE(relativelyEqual(inMillimetres(inches(1.0)), 25.4));
  EXPECT_TRUE(relativelyEqual(inInches(millimetres(25.4)), 1.0));
  EXPECT_TRUE(relativelyEqual(inNewtonMetres(poundFeet(1.0)), 1.3558179483314004));
  EXPECT_TRUE(relativelyEqual(inPoundFeet(newtonMetres(1.3558179483314004)), 1.0));
  EXPECT_TRUE(relativelyEqual(inDegrees(radians(3.14159265358979324)), 180.0));
  EXPECT_TRUE(relativelyEqual(inDegrees(degrees(15.0)), 15.0));
  EXPECT_TRUE(relativelyEqual(kilometresPerHour(36.0).si(), 10.0));
  EXPECT_TRUE(relativelyEqual(inKilometresPerHour(kilometresPerHour(80.0)), 80.0));
  EXPECT_TRUE(relativelyEqual(minutes(30.0).si(), 1800.0));
  EXPECT_EQ(seconds(4.0).si(), 4.0);
  EXPECT_EQ(inKilograms(kilograms(850.0)), 850.0);
}

// Mechanics: torque = force x arm; weight = mass x standard gravity.
TEST(Quantity, MultipliesOnlyIntoNamedTypes) {
  const Torque torque = newtons(20.0) * millimetres(150.0);
  EXPECT_TRUE(relativelyEqual(inNewtonMetres(torque), 3.0));
  EXPECT_EQ(millimetres(150.0) * newtons(20.0), torque);
  EXPECT_TRUE(relativelyEqual(inNewtons(weightOf(kilograms(10.0))), 98.0665));
}

TEST(Quantity, AddsScalesAndCompares) {
  const Force sum = newtons(12.0) + newtons(3.0) - newtons(5.0);
  EXPECT_EQ(inNewtons(sum), 10.0);
  EXPECT_EQ(inNewtons(-sum), -10.0);
  EXPECT_EQ(inNewtons(2.0 * sum), 20.0);
  EXPECT_EQ(inNewtons(sum * 3.0), 30.0);
  EXPECT_EQ(inNewtons(sum / 4.0), 2.5);
  EXPECT_EQ(sum / newtons(5.0), 2.0);
  EXPECT_LT(newtons(9.9), sum);
  EXPECT_EQ(Force{}, newtons(0.0));
}

TEST(UnitTable, NamesEachUnitOnceWithinItsKind) {
  std::set<std::pair<Kind, std::string_view>> seen;
  for (const Unit& unit : allUnits()) {
    EXPECT_TRUE(seen.emplace(unit.kind, unit.symbol).second) << unit.symbol;
    EXPECT_GT(unit.toSi, 0.0) << unit.symbol;
    EXPECT_EQ(findUnit(unit.kind, unit.symbol)->toSi, unit.toSi);
  }
  EXPECT_FALSE(findUnit(Kind::Force, "mm").has_value());
  EXPECT_FALSE(findUnit(Kind::Length, "MM").has_value());
}

// The default units are a decision of this program, not a measured fact.
TEST(UnitTable, StartsEachKindWithItsDefault) {
  const std::map<Kind, std::string_view> defaults{
      {Kind::Length, "mm"},    {Kind::Force, "N"},        {Kind::Torque, "N m"},
      {Kind::Angle, "deg"},    {Kind::Mass, "kg"},        {Kind::Speed, "km/h"},
      {Kind::Frequency, "Hz"}, {Kind::Pressure, "bar"},   {Kind::Duration, "min"},
      {Kind::Volume, "l"},     {Kind::Number, ""},        {Kind::TemperatureDifference, "K"},
      {Kind::Area, "mm2"},     {Kind::Stiffness, "N/mm"}, {Kind::Unbalance, "g mm"}};
  for (const auto& [kind, symbol] : defaults) EXPECT_EQ(defaultUnit(kind).symbol, symbol);
}

// Stored words: a change here would make existing books unreadable.
TEST(QuantityKinds, KeepTheirStoredWords) {
  const std::map<Kind, std::string_view> words{
      {Kind::Length, "length"},       {Kind::Force, "force"},
      {Kind::Torque, "torque"},       {Kind::Angle, "angle"},
      {Kind::Mass, "mass"},           {Kind::Speed, "speed"},
      {Kind::Frequency, "frequency"}, {Kind::Pressure, "pressure"},
      {Kind::Duration, "duration"},   {Kind::Volume, "volume"},
      {Kind::Number, "number"},       {Kind::TemperatureDifference, "temperature_difference"},
      {Kind::Area, "area"},           {Kind::Stiffness, "stiffness"},
      {Kind::Unbalance, "unbalance"}};
  for (const auto& [kind, text] : words) {
    EXPECT_EQ(word(kind), text);
    EXPECT_EQ(quantityKindFromWord(text), kind);
  }
  EXPECT_FALSE(quantityKindFromWord("Force").has_value());
  EXPECT_FALSE(quantityKindFromWord("").has_value());
}

}  // namespace
}  // namespace sw
