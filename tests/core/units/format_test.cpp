// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/format.h"

#include <cmath>
#include <limits>

#include "units/parse.h"
#include "units_testing.h"

namespace sw {
namespace {

using units_testing::fieldOf;
using units_testing::relativelyEqual;
using Kind = QuantityKind;

// The rule is JCGM 100:2008 7.2.6 and EA-4/02 6.3: two significant digits of U, the value to the
// same place, nearest (the rule and the 10.058 +/- 0.027 and 10.47 examples from memory).
TEST(RoundToUncertainty, FollowsTheRule) {
  struct Row {
    double value;
    double uncertainty;
    const char* shownValue;
    const char* shownUncertainty;
  };
  const Row rows[] = {
      {18.80419, 0.759674, "18.80", "0.76"},
      {18.74369, 1.06326, "18.7", "1.1"},
      {0.0823, 0.0996, "0.08", "0.10"},  // 0.0996 carries to 0.10
      {10.05762, 0.027, "10.058", "0.027"},
      {2003.7, 104.2, "2000", "100"},  // two digits are meant: 2.00e3, 0.10e3
      {100.4, 10.47, "100", "10"},     // nearest, where the guide's example rounds up to 11
      {-18.80419, 0.759674, "-18.80", "0.76"},
      {-0.001, 0.76, "0.00", "0.76"},  // never "-0.00"
      {995.0, 99.6, "1000", "100"},    // the carry moves both left by one place
      {0.145, 0.145, "0.15", "0.15"},  // 0.145 in binary lies below the half
  };
  for (const Row& row : rows) {
    const RoundedPair pair = roundToUncertainty(row.value, row.uncertainty);
    EXPECT_EQ(pair.value, row.shownValue) << row.value << " +/- " << row.uncertainty;
    EXPECT_EQ(pair.uncertainty, row.shownUncertainty) << row.value;
  }
}

TEST(RoundToUncertainty, ShowsTheValueInFullWithoutAnUncertainty) {
  EXPECT_EQ(roundToUncertainty(18.804, 0.0).value, "18.804");
  EXPECT_EQ(roundToUncertainty(18.804, 0.0).uncertainty, "0");
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_EQ(roundToUncertainty(18.804, infinity).value, "18.804");
  EXPECT_EQ(roundToUncertainty(18.804, infinity).uncertainty, "inf");
}

// A large value with a small uncertainty must not be moved by the help given to halves.
TEST(RoundToUncertainty, KeepsLargeValues) {
  EXPECT_EQ(roundToUncertainty(123456789.123, 0.010).value, "123456789.123");
}

// Arithmetic: rounding half away from zero, in decimal.
TEST(FixedDecimal, RoundsHalvesAwayFromZero) {
  EXPECT_EQ(fixedDecimal(0.145, 2), "0.15");
  EXPECT_EQ(fixedDecimal(1.005, 2), "1.01");
  EXPECT_EQ(fixedDecimal(2.5, 0), "3");
  EXPECT_EQ(fixedDecimal(-2.5, 0), "-3");
  EXPECT_EQ(fixedDecimal(0.1449, 2), "0.14");
  EXPECT_EQ(fixedDecimal(18.0, 2), "18.00");
  EXPECT_EQ(fixedDecimal(-0.0, 1), "0.0");
  EXPECT_EQ(fixedDecimal(-0.04, 1), "0.0");
  EXPECT_EQ(fixedDecimal(1250.0, -2), "1300");
  EXPECT_EQ(fixedDecimal(12.0, -2), "0");
  EXPECT_EQ(fixedDecimal(std::nan(""), 2), "nan");
  EXPECT_EQ(fixedDecimal(-std::numeric_limits<double>::infinity(), 2), "-inf");
}

TEST(FullPrecision, WritesPlainDecimalsOfFifteenDigits) {
  EXPECT_EQ(fullPrecision(18.5), "18.5");
  EXPECT_EQ(fullPrecision(0.1 + 0.2), "0.3");
  EXPECT_EQ(fullPrecision(100.0), "100");
  EXPECT_EQ(fullPrecision(1e-12), "0.000000000001");
  EXPECT_EQ(fullPrecision(1.5e20), "150000000000000000000");
  EXPECT_EQ(fullPrecision(-1.0 / 3.0), "-0.333333333333333");
  EXPECT_EQ(fullPrecision(2.0 / 3.0 * 1000.0), "666.666666666667");
  EXPECT_EQ(fullPrecision(0.999999999999999999), "1");
  EXPECT_EQ(fullPrecision(-0.0), "0");
}

// 73.7562149277265 lbf ft: worked from the definitions, see conversion_test.cpp.
TEST(DisplayText, ShowsSignificantDigitsInTheUnit) {
  const Unit poundFeet = *findUnit(Kind::Torque, "lbf ft");
  EXPECT_EQ(displayText(100.0, poundFeet), "73.8 lbf ft");
  EXPECT_EQ(displayText(100.0, poundFeet, 5), "73.756 lbf ft");
  EXPECT_EQ(displayText(100.0, defaultUnit(Kind::Torque)), "100 N m");
  EXPECT_EQ(displayText(25.0, defaultUnit(Kind::Torque)), "25.0 N m");
  EXPECT_EQ(displayText(0.00005, defaultUnit(Kind::Length)), "0.0500 mm");
  EXPECT_EQ(displayText(9.996, defaultUnit(Kind::Force)), "10.0 N");
  EXPECT_EQ(displayText(1236.0, defaultUnit(Kind::Force)), "1240 N");
  EXPECT_EQ(displayText(-18.55, defaultUnit(Kind::Force)), "-18.6 N");
  EXPECT_EQ(displayText(0.0, defaultUnit(Kind::Force)), "0 N");
  EXPECT_EQ(displayText(3.0, defaultUnit(Kind::Number)), "3.00");
}

TEST(ExactText, WritesFifteenDigitsInTheUnit) {
  EXPECT_EQ(exactText(18.5, defaultUnit(Kind::Force)), "18.5 N");
  EXPECT_EQ(exactText(0.00005, defaultUnit(Kind::Length)), "0.05 mm");
  EXPECT_EQ(exactText(100.0, *findUnit(Kind::Torque, "lbf ft")), "73.7562149277265 lbf ft");
  EXPECT_EQ(exactText(3.0, defaultUnit(Kind::Number)), "3");
}

// Reading is the inverse of writing, over all units and 30 powers of ten.
TEST(ExactText, ReadsBackInEveryUnit) {
  for (const Unit& unit : allUnits()) {
    for (int power = -18; power <= 12; ++power) {
      const double si = -1.23456789012345 * std::pow(10.0, power) * unit.toSi;
      const std::string text = exactText(si, unit);
      const auto back = parseQuantity(text, fieldOf(unit.kind));
      ASSERT_TRUE(back.has_value()) << text;
      EXPECT_TRUE(relativelyEqual(back->value.si, si)) << text;
      EXPECT_EQ(exactText(back->value.si, unit), text);
    }
  }
}

}  // namespace
}  // namespace sw
