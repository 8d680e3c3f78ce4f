// SPDX-License-Identifier: GPL-3.0-or-later
// Expected values: typed numbers times exact definitions (1 kgf = 9.80665 N, 1 lbf
// = 4.4482216152605 N). How a line is cut is this program's own decision.
#include <gmock/gmock.h>
#include "units/parse.h"
#include "units_testing.h"

namespace sw {
namespace {

using testing::Contains;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;
using testing::Pointwise;
using units_testing::fieldOf;
using Kind = QuantityKind;

std::vector<double> newtonsOf(std::string_view text, std::string_view unit = {}) {
  const auto parsed = parseSeries(text, fieldOf(Kind::Force, unit));
  EXPECT_TRUE(parsed.has_value()) << text << ": " << (parsed ? "" : parsed.error().key);
  std::vector<double> values;
  if (!parsed) return values;
  for (const ParsedQuantity& reading : *parsed) values.push_back(reading.value.si);
  return values;
}

TEST(ParseSeries, CutsAtSpacesSemicolonsAndLineEnds) {
  const std::vector<double> expected{18.5, 19.0, 18.5};
  for (const char* text :
       {"18.5 19 18.5", "18.5;19;18.5", "18,5; 19; 18,5", "18.5\n19\n18.5\n", "18.5\r\n19\r\n18.5",
        " 18.5  19\t18.5 ", "18,5 19,0 18,5", "18.5;19;18.5;", "18.5N 19N 18.5N",
        "18.5 N 19 N 18.5 N", "18.5 19 18.5 N", "18.5; 19; 18.5 N", "18.5 N 19 18.5",
        "18.5\u00a0N 19\u00a0N 18.5\u00a0N", "\u0661\u0668.\u0665 19 18.5"}) {
    EXPECT_THAT(newtonsOf(text), Pointwise(testing::DoubleEq(), expected)) << text;
  }
}

TEST(ParseSeries, TakesATrailingUnitForAllNumbersBeforeIt) {
  const auto parsed = parseSeries("1,9 2,0 1,9 kg", fieldOf(Kind::Force));
  ASSERT_TRUE(parsed.has_value());
  ASSERT_EQ(parsed->size(), 3U);
  EXPECT_THAT((*parsed)[1].value.si, DoubleNear(19.6133, 1e-12));
  EXPECT_EQ((*parsed)[0].value.unit, "kgf");
  EXPECT_EQ((*parsed)[1].value.number, "2.0");
  EXPECT_THAT((*parsed)[0].notes, ElementsAre(ReadNote::MassAsForce, ReadNote::CommaAsDecimal));
}

TEST(ParseSeries, TakesTheFieldsUnitWithoutAnyAndSaysSo) {
  const auto parsed = parseSeries("1.9 2", fieldOf(Kind::Force, "kgf"));
  ASSERT_TRUE(parsed.has_value());
  EXPECT_THAT((*parsed)[1].value.si, DoubleNear(19.6133, 1e-12));
  EXPECT_THAT((*parsed)[1].notes, ElementsAre(ReadNote::BareNumber));
  EXPECT_THAT(parseSeries("1 2", fieldOf(Kind::Number))->front().notes, IsEmpty());
  EXPECT_THAT(parseSeries("1 2 N", fieldOf(Kind::Force))->front().notes,
              Not(Contains(ReadNote::BareNumber)));
}

TEST(ParseSeries, LetsEachNumberCarryItsOwnUnit) {
  EXPECT_THAT(newtonsOf("1 kgf 1 lbf 10 N"),
              Pointwise(DoubleNear(1e-12), std::vector<double>{9.80665, 4.4482216152605, 10.0}));
}

TEST(ParseSeries, KnowsUnitsOfSeveralWords) {
  const auto parsed = parseSeries("18 lbf ft 19 ft-lb 18 lb ft", fieldOf(Kind::Torque));
  ASSERT_TRUE(parsed.has_value());
  ASSERT_EQ(parsed->size(), 3U);
  for (const ParsedQuantity& torque : *parsed) EXPECT_EQ(torque.value.unit, "lbf ft");
}

TEST(ParseSeries, ReadsNumbersThatBeginWithTheMark) {
  const auto parsed = parseSeries(".020 .018 .022 in", fieldOf(Kind::Length));
  ASSERT_TRUE(parsed.has_value());
  ASSERT_EQ(parsed->size(), 3U);
  EXPECT_EQ((*parsed)[1].value.number, "0.018");
  EXPECT_THAT(newtonsOf("-1 -.5 +2"), ElementsAre(-1.0, -0.5, 2.0));
}

TEST(ParseSeries, NamesThePositionOfWhatItRefuses) {
  struct Row {
    const char* text;
    const char* key;
    const char* position;
  };
  const Row rows[] = {
      {"", "units.empty", "1"},
      {" ; \n", "units.empty", "1"},
      {"18 19 abc", "units.unknown_unit", "2"},
      {"18; abc; 19", "units.not_a_number", "2"},
      {"18.5 1.234,5 19", "units.two_marks", "2"},
      {"18,5, 19", "units.two_marks", "1"},
      {"18, 19", "units.not_a_number", "1"},
      {"18 ,5", "units.two_marks", "1"},
      {"19 18 .5", "units.two_marks", "2"},
      {"19 1\u00a0234", "units.two_marks", "2"},
      {"19 1\u202f234", "units.two_marks", "2"},
      {"18 19 nan", "units.unknown_unit", "2"},
      {"18; 19; nan", "units.not_finite", "3"},
      {"18 1e999", "units.not_finite", "2"},
      {"18 19 mm", "units.wrong_kind", "2"},
      {"18 N19", "units.not_a_number", "1"},
      {"18-19", "units.not_a_number", "1"},
      {"1.9 kgf 2.0 20 N", "units.mixed_units", "2"},
      {"18 1234567890123456789012345", "units.too_long", "2"},
      {"\xff", "units.not_a_number", "1"},
  };
  for (const Row& row : rows) {
    SCOPED_TRACE(row.text);
    const auto parsed = parseSeries(row.text, fieldOf(Kind::Force));
    ASSERT_FALSE(parsed.has_value());
    EXPECT_EQ(parsed.error().key, row.key);
    EXPECT_EQ(parsed.error().detail("position"), row.position);
    EXPECT_EQ(parsed.error().field, "starting force");
    EXPECT_EQ(parsed.error().detail("example"), "18.5 N");
  }
}

}  // namespace
}  // namespace sw
