// SPDX-License-Identifier: GPL-3.0-or-later
// What must be refused rather than guessed. The rules are this program's own decisions; that each
// refused form is a real danger is common practice, no source.
#include "units/parse.h"
#include "units_testing.h"

namespace sw {
namespace {

using units_testing::fieldOf;
using Kind = QuantityKind;

void expectError(std::string_view text, Kind kind, std::string_view key) {
  SCOPED_TRACE("'" + std::string(text) + "'");
  const auto parsed = parseQuantity(text, fieldOf(kind));
  ASSERT_FALSE(parsed.has_value()) << parsed->value.text();
  EXPECT_EQ(parsed.error().code, ErrorCode::InvalidInput);
  EXPECT_EQ(parsed.error().key, key);
  EXPECT_EQ(parsed.error().field, "starting force");
  EXPECT_EQ(parsed.error().detail("expected"), word(kind));
  const auto example = parseQuantity(parsed.error().detail("example"), fieldOf(kind));
  EXPECT_TRUE(example.has_value()) << parsed.error().detail("example");
}

TEST(ParseErrors, AnswerAnEmptyField) {
  for (const char* text : {"", " ", "\t\n", "\u00a0", "\ufeff"}) {
    expectError(text, Kind::Force, "units.empty");
  }
}

TEST(ParseErrors, RefuseASecondMarkAndGroupedDigits) {
  for (const char* text : {"1.234,5", "1,234.5", "1.234.567", "1,,5", "1..5", "1 234", "1 234,5 N",
                           "1\u00a0234", "1\u202f234", "1\u2009234", "1'234", "1\u2019234",
                           "\u0661\u066c\u0662\u0663\u0664", "18 .5", "18 ,5 N"}) {
    expectError(text, Kind::Force, "units.two_marks");
  }
}

TEST(ParseErrors, RefuseWhatIsNotOneNumber) {
  for (const char* text :
       {"N",        "abc",         ".",      ",",         "-",        "+",        "--5",
        "+-5",      "- 5 N",       "18,",    "18. N",     "18-19",    "18 -19",   "18/19",
        "18 +/- 2", "18 \u00b1 2", "10:30",  "1/4",       "1e3",      "1.5E-3 N", "2x10^3",
        "0x10",     "1_000",       "18 N 5", "4.6 kgf 3", "\u2160 N", "\u00b2 N"}) {
    expectError(text, Kind::Force, "units.not_a_number");
  }
}

TEST(ParseErrors, RefuseWhatIsNotFinite) {
  for (const char* text : {"nan", "NaN N", "inf", "-inf", "Infinity N", "\u221e", "1e999",
                           "-1e999 N", "1,5e+400", "1E99999999999999999999"}) {
    expectError(text, Kind::Force, "units.not_finite");
  }
}

TEST(ParseErrors, RefuseNumbersBeyondTwentyFourCharacters) {
  expectError("1234567890123456789012345", Kind::Force, "units.too_long");
  expectError("0000000000000000000000001 N", Kind::Force, "units.too_long");
  expectError("0." + std::string(100, '0') + "1", Kind::Force, "units.too_long");
  expectError(std::string(100000, '9'), Kind::Force, "units.too_long");
}

TEST(ParseErrors, NameBothKindsWhenTheKindIsWrong) {
  struct Row {
    Kind kind;
    const char* text;
    const char* unit;
    const char* found;
  };
  const Row rows[] = {
      {Kind::Force, "0.5 mm", "mm", "length"}, {Kind::Force, "25 Nm", "Nm", "torque"},
      {Kind::Torque, "45 N", "N", "force"},    {Kind::Length, "4.6 kg", "kg", "mass"},
      {Kind::Mass, "10 lbf", "lbf", "force"},  {Kind::Speed, "2 PSI", "PSI", "pressure"},
      {Kind::Duration, "30 m", "m", "length"}, {Kind::Number, "3 deg", "deg", "angle"},
      {Kind::Torque, "2.5 kg", "kg", "mass"},  {Kind::Length, "18 ft-lb", "ft-lb", "torque"},
  };
  for (const Row& row : rows) {
    expectError(row.text, row.kind, "units.wrong_kind");
    const Error error = parseQuantity(row.text, fieldOf(row.kind)).error();
    EXPECT_EQ(error.detail("unit"), row.unit);
    EXPECT_EQ(error.detail("found"), row.found) << row.text;
    EXPECT_EQ(error.detail("text"), row.text);
  }
}

// SI Brochure, prefixes: M is a million, m a thousandth; n is a billionth. A ton, a pint and a
// quart have several sizes. None of these may be read as a near neighbour.
TEST(ParseErrors, NeverTakeANeighbouringUnit) {
  const std::pair<Kind, const char*> rows[] = {
      {Kind::Length, "5 Mm"},    {Kind::Length, "5 nm"},      {Kind::Length, "5 M"},
      {Kind::Length, "5 m m"},   {Kind::Torque, "5 mN m"},    {Kind::Torque, "5 mNm"},
      {Kind::Torque, "5 kNm"},   {Kind::Torque, "5 MNm"},     {Kind::Torque, "5 N/m"},
      {Kind::Pressure, "5 mPa"}, {Kind::Pressure, "5 mbar"},  {Kind::Mass, "5 Mg"},
      {Kind::Mass, "5 mg"},      {Kind::Mass, "2 tons"},      {Kind::Volume, "1 pint"},
      {Kind::Volume, "1 Ml"},    {Kind::Force, "5 mN"},       {Kind::Force, "5 MN"},
      {Kind::Force, "5 G"},      {Kind::Force, "5 furlongs"}, {Kind::Frequency, "5 mHz"},
      {Kind::Force, "25 -N"},    {Kind::Number, "5 %"},       {Kind::Force, "5 N,"},
      {Kind::Speed, "5 m/h"},
  };
  for (const auto& [kind, text] : rows) expectError(text, kind, "units.unknown_unit");
}

TEST(ParseErrors, RefuseBrokenTextAndEchoItSafely) {
  expectError("\xff\xfe N", Kind::Force, "units.not_a_number");
  expectError(std::string("18\0 N", 5), Kind::Force, "units.not_a_number");
  expectError("18\x1b[31m", Kind::Force, "units.not_a_number");
  const Error broken = parseQuantity("5 \xff\x07", fieldOf(Kind::Force)).error();
  EXPECT_EQ(broken.detail("text"), "5 \ufffd ");
  const std::string endless(5000, 'x');
  EXPECT_LT(parseQuantity("5 " + endless, fieldOf(Kind::Force)).error().detail("text").size(), 70U);
}

TEST(ParseErrors, GiveAnExampleInTheUnitOfTheField) {
  const Error thou = parseQuantity("", fieldOf(Kind::Length, "thou")).error();
  EXPECT_EQ(thou.detail("example"), "20 thou");  // 0.5 mm is 19.7 thou
  const Error pounds = parseQuantity("", fieldOf(Kind::Torque, "lbf ft")).error();
  EXPECT_EQ(pounds.detail("example"), "48 lbf ft");  // 65 N m is 47.9 lbf ft
  const auto odometer = parseQuantity("twelve", {"odometer", Kind::Length, "km"});
  EXPECT_EQ(odometer.error().detail("example"), "12 km");
  EXPECT_EQ(parseQuantity("", fieldOf(Kind::Force)).error().detail("example"), "18.5 N");
}

TEST(ParseErrors, ReportAFieldWhoseOwnUnitIsOfAnotherKind) {
  const auto parsed = parseQuantity("5", fieldOf(Kind::Force, "mm"));
  ASSERT_FALSE(parsed.has_value());
  EXPECT_EQ(parsed.error().code, ErrorCode::Internal);
  EXPECT_EQ(parsed.error().key, "units.unknown_unit");
  EXPECT_FALSE(parseSeries("5", fieldOf(Kind::Force, "mm")).has_value());
}

}  // namespace
}  // namespace sw
