// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/verdict_phrase.h"
#include <gmock/gmock.h>

#include "text.h"

namespace sw::phrasing {
namespace {

const Unit kNewton = *findUnit(QuantityKind::Force, "N");
const Unit kKilogramForce = *findUnit(QuantityKind::Force, "kgf");
const Unit kMillimetre = *findUnit(QuantityKind::Length, "mm");

JudgedValue pulls(Verdict verdict, LimitSide side = LimitSide::None) {
  JudgedValue judged;
  judged.verdict = verdict;
  judged.side = side;
  judged.value = 18.8;
  judged.expandedUncertainty = 0.8;
  judged.used = 3;
  judged.planned = 3;
  judged.limit = {12.0, 20.0};
  return judged;
}

std::string said(const JudgedValue& judged) {
  return plain(verdictPhrase(judged, kNewton));
}

// JCGM 100:2008 7.2.6 (from memory): uncertainty to two significant digits, the value to the same
// place.
TEST(MeasuredText, TwoDigitsOfUncertainty) {
  EXPECT_EQ(plain(measuredText(18.8, 0.8, kNewton)), "18.80 ± 0.80 N");
  EXPECT_EQ(plain(measuredText(18.834, 0.1249, kNewton)), "18.83 ± 0.12 N");
  EXPECT_EQ(plain(measuredText(0.0004834, 0.000012, kMillimetre)), "0.483 ± 0.012 mm");
}

// 1 kgf = 9.80665 N (3rd CGPM 1901, exact).
TEST(MeasuredText, InTheUnitAsked) {
  EXPECT_EQ(plain(measuredText(2 * 9.80665, 0.1 * 9.80665, kKilogramForce)), "2.00 ± 0.10 kgf");
}

TEST(MeasuredText, WithoutUncertaintyTheValueAlone) {
  EXPECT_EQ(plain(measuredText(18.5, 0, kNewton)), "18.5 N");
  EXPECT_EQ(plain(measuredText(0, 0, kNewton)), "0 N");
}

TEST(MeasuredText, SpacesDoNotBreak) {
  const QString text = measuredText(18.8, 0.8, kNewton);
  EXPECT_FALSE(text.contains(' '));
  EXPECT_EQ(text.count(QChar(0x00A0)), 3);
}

TEST(LimitText, OneOrTwoSided) {
  EXPECT_EQ(plain(limitText({12.0, 20.0}, kNewton)), "12 to 20 N");
  EXPECT_EQ(plain(limitText({12.5, {}}, kNewton)), "at least 12.5 N");
  EXPECT_EQ(plain(limitText({{}, 0.00015}, kMillimetre)), "at most 0.15 mm");
  EXPECT_EQ(plain(limitText({0.0, 0.00015}, kMillimetre)), "0 to 0.15 mm");
  EXPECT_EQ(plain(limitText({4.6 * 9.80665, {}}, kKilogramForce)), "at least 4.6 kgf");
  EXPECT_EQ(plain(limitText({}, kNewton)), "");
}

TEST(VerdictPhrase, SaysTheWordTheValueAndTheLimit) {
  EXPECT_EQ(said(pulls(Verdict::Within)), "within: 18.80 ± 0.80 N (limit 12 to 20 N)");
  EXPECT_EQ(said(pulls(Verdict::Outside, LimitSide::Below)),
            "outside, below the limit: 18.80 ± 0.80 N (limit 12 to 20 N)");
  EXPECT_EQ(said(pulls(Verdict::Outside, LimitSide::Above)),
            "outside, above the limit: 18.80 ± 0.80 N (limit 12 to 20 N)");
  EXPECT_EQ(said(pulls(Verdict::Undecided, LimitSide::InsideLikely)),
            "undecided, probably inside: 18.80 ± 0.80 N (limit 12 to 20 N)");
  EXPECT_EQ(said(pulls(Verdict::Undecided, LimitSide::OutsideLikely)),
            "undecided, probably outside: 18.80 ± 0.80 N (limit 12 to 20 N)");
  EXPECT_EQ(said(pulls(Verdict::InstrumentTooCoarse)),
            "instrument too coarse: 18.80 ± 0.80 N (limit 12 to 20 N)");
}

TEST(VerdictPhrase, ProvisionalSaysHowFarAndWhatSoFar) {
  JudgedValue judged = pulls(Verdict::Provisional, LimitSide::InsideLikely);
  judged.used = 2;
  judged.soFar = Verdict::Undecided;
  EXPECT_EQ(said(judged),
            "provisional after 2 of 3, so far undecided, probably inside: 18.80 ± 0.80 N (limit 12 "
            "to 20 N)");
}

TEST(VerdictPhrase, WithoutALimitNoneIsNamed) {
  JudgedValue judged = pulls(Verdict::NoLimit);
  judged.limit = {};
  EXPECT_EQ(said(judged), "no limit on file: 18.80 ± 0.80 N");
}

TEST(VerdictPhrase, NeverClearsAVehicle) {
  for (const Verdict verdict : {Verdict::Within, Verdict::Outside, Verdict::Undecided,
                                Verdict::InstrumentTooCoarse, Verdict::NoLimit}) {
    EXPECT_EQ(said(pulls(verdict)).find("safe"), std::string::npos);
  }
}

TEST(JudgedValue, FromASeriesJustJudged) {
  SeriesInput input;
  input.readings = {15.0, 15.5, 15.0};
  input.instrument.graduation = 0.5;
  input.limit = {5.0, 40.0};
  const auto outcome = evaluateSeries(input);
  ASSERT_TRUE(outcome.has_value()) << outcome.error().key;
  const JudgedValue judged = judgedValue(*outcome, input);
  EXPECT_EQ(judged.used, 3);
  EXPECT_EQ(judged.planned, 3);
  EXPECT_THAT(said(judged), testing::AllOf(testing::StartsWith("within: 15."),
                                           testing::EndsWith(" N (limit 5 to 40 N)")));
}

TEST(JudgedValue, FromTheBookReadsTheSame) {
  model::VerdictGiven given;
  given.verdict = std::string(word(Verdict::Outside));
  given.soFar = std::string(word(Verdict::Outside));
  given.limitSide = std::string(word(LimitSide::Above));
  given.value = 22.0;
  given.expandedUncertainty = 0.8;
  given.used = 3;
  EXPECT_EQ(said(judgedValue(given, 3, {{}, 20.0})),
            "outside, above the limit: 22.00 ± 0.80 N (limit at most 20 N)");
}

}  // namespace
}  // namespace sw::phrasing
