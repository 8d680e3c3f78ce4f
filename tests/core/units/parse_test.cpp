// SPDX-License-Identifier: GPL-3.0-or-later
// Expected values: the number typed times the exact definition of the unit, worked by hand (1 lbf =
// 4.4482216152605 N, 1 kgf = 9.80665 N, 1 in = 25.4 mm, 1 mile = 1609.344 m). Which spellings
// people use is common practice, no source.
#include "units/parse.h"
#include <gmock/gmock.h>

#include <numbers>

#include "units_testing.h"

namespace sw {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using units_testing::fieldOf;
using units_testing::relativelyEqual;
using Kind = QuantityKind;

struct Row {
  Kind kind;
  const char* text;
  const char* number;
  const char* unit;
  double si;
};

void expectRow(const Row& row) {
  SCOPED_TRACE(row.text);
  const auto parsed = parseQuantity(row.text, fieldOf(row.kind));
  ASSERT_TRUE(parsed.has_value()) << parsed.error().key;
  EXPECT_EQ(parsed->value.kind, row.kind);
  EXPECT_EQ(parsed->value.number, row.number);
  EXPECT_EQ(parsed->value.unit, row.unit);
  EXPECT_TRUE(relativelyEqual(parsed->value.si, row.si));
}

TEST(ParseQuantity, ReadsForces) {
  const Row rows[] = {
      {Kind::Force, "45 N", "45", "N", 45.0},
      {Kind::Force, "4.6kgf", "4.6", "kgf", 45.11059},
      {Kind::Force, "4,6 kg", "4.6", "kgf", 45.11059},
      {Kind::Force, "10 lbf", "10", "lbf", 44.482216152605},
      {Kind::Force, "10 lbs", "10", "lbf", 44.482216152605},
      {Kind::Force, "16 oz", "16", "ozf", 4.4482216152605},
      {Kind::Force, "500 g", "500", "gf", 4.903325},
      {Kind::Force, "1.8 KG", "1.8", "kgf", 17.65197},
      {Kind::Force, "18 n", "18", "N", 18.0},
      {Kind::Force, "1.8 daN", "1.8", "daN", 18.0},
      {Kind::Force, "2 kp", "2", "kgf", 19.6133},
  };
  for (const Row& row : rows) expectRow(row);
}

TEST(ParseQuantity, ReadsTorques) {
  const Row rows[] = {
      {Kind::Torque, "18 lbf ft", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "18 ft-lb", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "18 ftlb", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "18 lb ft", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "18 ft. lbs.", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "18 lbf\u00b7ft", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "18 Lb-Ft", "18", "lbf ft", 24.4047230699652072},
      {Kind::Torque, "25Nm", "25", "N m", 25.0},
      {Kind::Torque, "25 N.m", "25", "N m", 25.0},
      {Kind::Torque, "25 N\u22c5m", "25", "N m", 25.0},
      {Kind::Torque, "25 NM", "25", "N m", 25.0},
      {Kind::Torque, "25 nm", "25", "N m", 25.0},
      {Kind::Torque, "2.5 kgf m", "2.5", "kgf m", 24.516625},
      {Kind::Torque, "2.5 kgm", "2.5", "kgf m", 24.516625},
      {Kind::Torque, "2.5 mkg", "2.5", "kgf m", 24.516625},
      {Kind::Torque, "250 kg-cm", "250", "kgf cm", 24.516625},
      {Kind::Torque, "24 in lb", "24", "lbf in", 2.7116358966628008},
  };
  for (const Row& row : rows) expectRow(row);
}

TEST(ParseQuantity, ReadsLengthsAnglesAndSpeeds) {
  const Row rows[] = {
      {Kind::Length, "0.5 mm", "0.5", "mm", 0.0005},
      {Kind::Length, "20 thou", "20", "thou", 0.000508},
      {Kind::Length, "20 mils", "20", "thou", 0.000508},
      {Kind::Length, "0.020 in", "0.020", "in", 0.000508},
      {Kind::Length, "0.02\"", "0.02", "in", 0.000508},
      {Kind::Length, ".02\u2033", "0.02", "in", 0.000508},
      {Kind::Length, "50 \u00b5m", "50", "um", 0.00005},
      {Kind::Length, "50 \u03bcm", "50", "um", 0.00005},
      {Kind::Length, "2 MM", "2", "mm", 0.002},
      {Kind::Length, "120 miles", "120", "mi", 193121.28},
      {Kind::Angle, "15 deg", "15", "deg", 15.0 * std::numbers::pi / 180.0},
      {Kind::Angle, "15\u00b0", "15", "deg", 15.0 * std::numbers::pi / 180.0},
      {Kind::Angle, "15\u00ba", "15", "deg", 15.0 * std::numbers::pi / 180.0},
      {Kind::Speed, "80 km/h", "80", "km/h", 80.0 / 3.6},
      {Kind::Speed, "80 kmh", "80", "km/h", 80.0 / 3.6},
      {Kind::Speed, "80 kph", "80", "km/h", 80.0 / 3.6},
      {Kind::Speed, "80 KM / H", "80", "km/h", 80.0 / 3.6},
      {Kind::Speed, "50 mph", "50", "mph", 22.352},
  };
  for (const Row& row : rows) expectRow(row);
}

TEST(ParseQuantity, ReadsTheOtherKinds) {
  const Row rows[] = {
      {Kind::Pressure, "2.1 bar", "2.1", "bar", 210000.0},
      {Kind::Pressure, "30 psi", "30", "psi", 206842.71879504},
      {Kind::Pressure, "0.2 MPa", "0.2", "MPa", 200000.0},
      {Kind::Pressure, "2 kg/cm\u00b2", "2", "kgf/cm2", 196133.0},
      {Kind::Mass, "850 kg", "850", "kg", 850.0},
      {Kind::Mass, "1870 lb", "1870", "lb", 848.2177319},
      {Kind::Mass, "2 t", "2", "t", 2000.0},
      {Kind::Duration, "30 min", "30", "min", 1800.0},
      {Kind::Duration, "2 h", "2", "h", 7200.0},
      {Kind::Duration, "2 hrs", "2", "h", 7200.0},
      {Kind::Volume, "1.5 l", "1.5", "l", 0.0015},
      {Kind::Volume, "1,5 L", "1.5", "l", 0.0015},
      {Kind::Volume, "350 cc", "350", "cm3", 0.00035},
      {Kind::Frequency, "450 1/min", "450", "rpm", 7.5},
      {Kind::TemperatureDifference, "12 \u00b0C", "12", "K", 12.0},
      {Kind::Number, "3", "3", "", 3.0},
  };
  for (const Row& row : rows) expectRow(row);
}

TEST(ParseQuantity, ReadsSignsMarksAndSpaces) {
  const Row rows[] = {
      {Kind::Force, "+5 N", "5", "N", 5.0},
      {Kind::Force, "-5 N", "-5", "N", -5.0},
      {Kind::Force, "\u22125 N", "-5", "N", -5.0},
      {Kind::Force, " \t18.5\u00a0N \n", "18.5", "N", 18.5},
      {Kind::Force, "18.5\u202fN", "18.5", "N", 18.5},
      {Kind::Force, "\u206818.5\u2009N\u2069", "18.5", "N", 18.5},
      {Kind::Force, "25.0", "25.0", "N", 25.0},
      {Kind::Force, "007", "007", "N", 7.0},
      {Kind::Force, ",5", "0.5", "N", 0.5},
      {Kind::Force, "1,234", "1.234", "N", 1.234},
      {Kind::Force, "1.234", "1.234", "N", 1.234},
      {Kind::Force, "123456789012345678901234 N", "123456789012345678901234", "N",
       123456789012345678901234.0},
  };
  for (const Row& row : rows) expectRow(row);
}

TEST(ParseQuantity, ReadsNegativeZeroAsZero) {
  const auto parsed = parseQuantity("-0 N", fieldOf(Kind::Force));
  ASSERT_TRUE(parsed.has_value());
  EXPECT_FALSE(std::signbit(parsed->value.si));
}

// Code points from the Unicode code charts: U+0660, U+06F0, U+0966, U+09E6 and U+FF10 are the
// zeros.
TEST(ParseQuantity, ReadsDigitsOfAnyScript) {
  for (const char* text :
       {"\u0661\u0668\u066b\u0665 N", "\u06f1\u06f8\u066b\u06f5 N", "\u0967\u096e.\u096b N",
        "\u09e7\u09ee,\u09eb N", "\uff11\uff18\uff0e\uff15 \uff2e", "\u0e51\u0e58.\u0e55 N"}) {
    expectRow({Kind::Force, text, "18.5", "N", 18.5});
  }
}

TEST(ParseQuantity, TakesTheUnitOfTheFieldAndSaysSo) {
  const auto kilograms = parseQuantity("4.6", fieldOf(Kind::Force, "kgf"));
  ASSERT_TRUE(kilograms.has_value());
  EXPECT_EQ(kilograms->value.unit, "kgf");
  EXPECT_TRUE(relativelyEqual(kilograms->value.si, 45.11059));
  EXPECT_THAT(kilograms->notes, ElementsAre(ReadNote::BareNumber));
  const auto plain = parseQuantity("3", fieldOf(Kind::Number));
  ASSERT_TRUE(plain.has_value());
  EXPECT_THAT(plain->notes, IsEmpty());
}

TEST(ParseQuantity, NotesHowTheTextWasUnderstood) {
  const auto notes = [](const char* text, Kind kind) {
    const auto parsed = parseQuantity(text, fieldOf(kind));
    EXPECT_TRUE(parsed.has_value()) << text;
    return parsed ? parsed->notes : std::vector<ReadNote>{};
  };
  EXPECT_THAT(notes("45 N", Kind::Force), IsEmpty());
  EXPECT_THAT(notes("4.6 kgf", Kind::Force), IsEmpty());
  EXPECT_THAT(notes("4,6 kg", Kind::Force),
              ElementsAre(ReadNote::MassAsForce, ReadNote::CommaAsDecimal));
  EXPECT_THAT(notes("1,234", Kind::Force),
              ElementsAre(ReadNote::BareNumber, ReadNote::CommaAsDecimal));
  EXPECT_THAT(notes("18 lbf ft", Kind::Torque), IsEmpty());
  EXPECT_THAT(notes("18 ft-lb", Kind::Torque), ElementsAre(ReadNote::MassAsTorque));
  EXPECT_THAT(notes("2.5 mkg", Kind::Torque), ElementsAre(ReadNote::MassAsTorque));
  EXPECT_THAT(notes("850 kg", Kind::Mass), IsEmpty());
}

TEST(TypedQuantity, KeepsTheTextAsTyped) {
  EXPECT_EQ(parseQuantity("25,0Nm", fieldOf(Kind::Torque))->value.text(), "25.0 N m");
  EXPECT_EQ(parseQuantity("3", fieldOf(Kind::Number))->value.text(), "3");
  EXPECT_EQ(parseQuantity("2 kgf", fieldOf(Kind::Force))->value.as<Force>(), kilogramsForce(2.0));
}

// A figure stands for all values that round to it: half of the last place either way.
TEST(TypedQuantity, KnowsItsRoundingHalfWidth) {
  const auto halfWidth = [](const char* text, Kind kind) {
    return parseQuantity(text, fieldOf(kind))->value.roundingHalfWidthSi();
  };
  EXPECT_TRUE(relativelyEqual(halfWidth("25 N m", Kind::Torque), 0.5));
  EXPECT_TRUE(relativelyEqual(halfWidth("25.0 N m", Kind::Torque), 0.05));
  EXPECT_TRUE(relativelyEqual(halfWidth("25,00 N m", Kind::Torque), 0.005));
  EXPECT_TRUE(relativelyEqual(halfWidth("2500", Kind::Force), 0.5));
  EXPECT_TRUE(relativelyEqual(halfWidth("0.020 in", Kind::Length), 0.0000127));
  EXPECT_TRUE(relativelyEqual(halfWidth("-18 lbf ft", Kind::Torque), 0.6779089741657002));
  EXPECT_EQ((TypedQuantity{Kind::Force, "5", "mm", 5.0}).roundingHalfWidthSi(), 0.0);
}

}  // namespace
}  // namespace sw
