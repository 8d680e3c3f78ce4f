// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/quantity_text.h"

#include <gtest/gtest.h>

#include "job_fixture.h"

namespace sw::report {
namespace {

using testing::quantity;

std::string utf8(const QString& text) {
  return text.toStdString();
}

constexpr auto kNbsp = "\u00A0";

// SI Brochure, 9th edition, 5.4.3 (from memory): a space between number and unit, none before the
// degree sign of plane angle.
TEST(QuantityText, UnitsStandAfterANoBreakSpace) {
  EXPECT_EQ(utf8(typed(quantity("62 N m", QuantityKind::Torque))),
            std::string("62") + kNbsp + "N" + kNbsp + "m");
  EXPECT_EQ(utf8(typed(quantity("10 deg", QuantityKind::Angle))), "10\u00B0");
  EXPECT_EQ(utf8(withUnit("-0.12", "mm")), std::string("\u2212") + "0.12" + kNbsp + "mm");
}

TEST(QuantityText, WhatWasTypedKeepsItsDigits) {
  EXPECT_EQ(utf8(typed(quantity("25.0 N", QuantityKind::Force))),
            std::string("25.0") + kNbsp + "N");
  EXPECT_EQ(utf8(typed(quantity("2,40 kgf", QuantityKind::Force))),
            std::string("2.40") + kNbsp + "kgf");
}

// 1 kgf = 9.80665 N (3rd CGPM 1901): 2.1 kgf = 20.594 N; 1 lbf ft = 1.3558 N m (1959 pound and
// yard): 46 lbf ft = 62.37 N m; 0.5 thou = 0.0127 mm.
TEST(QuantityText, TheSiValueStandsBesideAnotherUnit) {
  EXPECT_EQ(utf8(typedAndSi(quantity("2.1 kgf", QuantityKind::Force))),
            std::string("2.1") + kNbsp + "kgf (20.6" + kNbsp + "N)");
  EXPECT_EQ(utf8(typedAndSi(quantity("46 lbf ft", QuantityKind::Torque))),
            std::string("46") + kNbsp + "lbf" + kNbsp + "ft (62.4" + kNbsp + "N" + kNbsp + "m)");
  EXPECT_EQ(utf8(typedAndSi(quantity("0.5 thou", QuantityKind::Length))),
            std::string("0.5") + kNbsp + "thou (0.0127" + kNbsp + "mm)");
  EXPECT_EQ(utf8(typedAndSi(quantity("18.5 N", QuantityKind::Force))),
            std::string("18.5") + kNbsp + "N");
}

// JCGM 100:2008 7.2.6 (from memory): U with two significant digits at most, the value to its place.
TEST(QuantityText, ValueAndUncertaintyEndAtTheSamePlace) {
  EXPECT_EQ(utf8(valueWithUncertainty(QuantityKind::Force, 20.0333, 0.8421)),
            std::string("(20.03") + kNbsp + "±" + kNbsp + "0.84)" + kNbsp + "N");
  EXPECT_EQ(utf8(valueWithUncertainty(QuantityKind::Length, 0.0000333, 0.0000151)),
            std::string("(0.033") + kNbsp + "±" + kNbsp + "0.015)" + kNbsp + "mm");
  EXPECT_EQ(utf8(valueWithUncertainty(QuantityKind::Force, 123.4, 14.9)),
            std::string("(123") + kNbsp + "±" + kNbsp + "15)" + kNbsp + "N");
}

TEST(QuantityText, LimitsInWords) {
  model::SpecItem item;
  item.max = quantity("0.08 mm", QuantityKind::Length);
  EXPECT_EQ(utf8(limitText(item)), std::string("at most 0.08") + kNbsp + "mm");
  item.min = quantity("0.02 mm", QuantityKind::Length);
  EXPECT_EQ(utf8(limitText(item)), std::string("0.02") + kNbsp + "mm to 0.08" + kNbsp + "mm");
}

TEST(QuantityText, ATorqueShowsBothFiguresAsTheSheetHasThem) {
  model::SpecItem item;
  item.value = quantity("62 N m", QuantityKind::Torque);
  item.secondValue = quantity("46 lbf ft", QuantityKind::Torque);
  EXPECT_EQ(utf8(torqueText(item)),
            std::string("62") + kNbsp + "N" + kNbsp + "m (46" + kNbsp + "lbf" + kNbsp + "ft)");
}

TEST(QuantityText, TimesAreThoseOfTheClockOnTheWall) {
  const auto time = parseTimestamp("2031-04-05T23:20:30+02:00");
  ASSERT_TRUE(time);
  EXPECT_EQ(utf8(timeText(*time)), "2031-04-05 23:20");
  EXPECT_EQ(utf8(dateText(*time)), "2031-04-05");
}

TEST(QuantityText, MoneyAndTime) {
  EXPECT_EQ(utf8(moneyText(1205, "EUR")), std::string("12.05") + kNbsp + "EUR");
  EXPECT_EQ(utf8(moneyText(-50, "CHF")), std::string("\u2212") + "0.50" + kNbsp + "CHF");
  EXPECT_EQ(utf8(minutesText(80)), std::string("1") + kNbsp + "h" + kNbsp + "20" + kNbsp + "min");
  EXPECT_EQ(utf8(minutesText(45)), std::string("45") + kNbsp + "min");
  EXPECT_EQ(utf8(minutesText(120)), std::string("2") + kNbsp + "h");
}

}  // namespace
}  // namespace sw::report
