// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <array>
#include <set>

#include "phrasing/verdict_phrase.h"
#include "text.h"

namespace sw::phrasing {
namespace {

const Unit kNewton = *findUnit(QuantityKind::Force, "N");
const Unit kKilogramForce = *findUnit(QuantityKind::Force, "kgf");
const Unit kMillimetre = *findUnit(QuantityKind::Length, "mm");

std::string said(const Advice& advice, const Unit& unit) {
  return plain(advicePhrase(advice, unit));
}

TEST(AdvicePhrase, HowManyMore) {
  EXPECT_EQ(said({AdviceCode::MoreReadings, 2, {}}, kNewton),
            "2 more pulls would probably decide.");
  EXPECT_EQ(said({AdviceCode::MoreReadings, 1, {}}, kNewton), "1 more pull would probably decide.");
  EXPECT_EQ(said({AdviceCode::MoreReadings, 3, {}}, kMillimetre),
            "3 more readings would probably decide.");
}

TEST(AdvicePhrase, WhichGraduation) {
  EXPECT_EQ(said({AdviceCode::FinerInstrument, {}, 0.2}, kNewton),
            "A scale graduated 0.2 N or finer would decide.");
  EXPECT_EQ(said({AdviceCode::FinerInstrument, {}, 0.00001}, kMillimetre),
            "An instrument graduated 0.01 mm or finer would decide.");
  EXPECT_EQ(said({AdviceCode::FinerInstrument, {}, {}}, kNewton), "A finer scale is needed.");
}

// 0.2 N are 0.020394 kgf (1 kgf = 9.80665 N exactly): a scale graduated 0.021 kgf would be too
// coarse.
TEST(AdvicePhrase, AGraduationIsRoundedToTheFinerSide) {
  EXPECT_EQ(said({AdviceCode::FinerInstrument, {}, 0.2}, kKilogramForce),
            "A scale graduated 0.02 kgf or finer would decide.");
  EXPECT_EQ(said({AdviceCode::FinerInstrument, {}, 0.2099}, kNewton),
            "A scale graduated 0.2 N or finer would decide.");
}

TEST(AdvicePhrase, CannotHelpAndWhatWouldAreOneSentence) {
  const std::array advice{Advice{AdviceCode::FinerInstrument, {}, 0.2},
                          Advice{AdviceCode::MoreCannotHelp, {}, {}}};
  EXPECT_EQ(plain(advicePhrase(advice, kNewton)),
            "More pulls cannot help: a scale graduated 0.2 N or finer would.");
}

TEST(AdvicePhrase, OtherAdviceStandsBesideIt) {
  const std::array advice{Advice{AdviceCode::CheckInstrument, {}, {}},
                          Advice{AdviceCode::MoreCannotHelp, {}, {}},
                          Advice{AdviceCode::FinerInstrument, {}, {}}};
  EXPECT_EQ(plain(advicePhrase(advice, kMillimetre)),
            "Check the instrument against a known gauge. More readings cannot help. A finer "
            "instrument is needed.");
  EXPECT_EQ(plain(advicePhrase(std::span<const Advice>{}, kNewton)), "");
}

TEST(AdvicePhrase, DisagreeingPullsAreTakenAgain) {
  EXPECT_EQ(said({AdviceCode::RepeatInconsistent, 2, {}}, kNewton),
            "The pulls do not agree: take at least 2 more.");
  EXPECT_THAT(said({AdviceCode::RepeatInconsistent, {}, {}}, kNewton),
              testing::HasSubstr("take the series again"));
}

TEST(AdvicePhrase, EveryAdviceHasItsOwnSentence) {
  std::set<std::string> sentences;
  for (const Unit& unit : {kNewton, kMillimetre}) {
    for (const AdviceCode code :
         {AdviceCode::MoreReadings, AdviceCode::FinerInstrument, AdviceCode::MoreCannotHelp,
          AdviceCode::CheckInstrument, AdviceCode::RepeatInconsistent, AdviceCode::OutOfRange,
          AdviceCode::Settled}) {
      const std::string text = said({code, {}, {}}, unit);
      EXPECT_TRUE(text.ends_with(".")) << text;
      EXPECT_TRUE(sentences.insert(text).second) << text;
    }
  }
}

}  // namespace
}  // namespace sw::phrasing
