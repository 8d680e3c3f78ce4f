// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/vin.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace sw::model {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const std::string kOnes(17, '1');

// Seventeen ones are the usual test value: the weights add up to 89 = 8 x 11 + 1 (from memory).
TEST(Vin, SeventeenOnesAgree) {
  EXPECT_THAT(vinHints(kOnes), ElementsAre(VinHint::CheckDigitAgrees));
}

// By hand from the numbers and weights of 49 CFR 565.15(c) (from memory), no real vehicle:
//   12345678?00000000: 8+14+18+20+20+18+14+80 = 192 = 17 x 11 + 5.
//   11111111?ABCDEFGH: 45 + 9+16+21+24+25+24+21+16 = 201 = 18 x 11 + 3.
//   11111111?JKLMNPRS: 45 + 9+16+21+24+25+28+27+4 = 199 = 18 x 11 + 1.
//   11111111?TUVWXYZ1: 45 + 27+32+35+36+35+32+27+2 = 271 = 24 x 11 + 7.
TEST(Vin, EveryLetterAndDigitAgreesAsComputedByHand) {
  for (const char* vin :
       {"12345678500000000", "111111113ABCDEFGH", "111111111JKLMNPRS", "111111117TUVWXYZ1"}) {
    EXPECT_THAT(vinHints(vin), ElementsAre(VinHint::CheckDigitAgrees)) << vin;
  }
}

// 89 + 5 x 4 = 109 = 9 x 11 + 10, written X.
TEST(Vin, TenIsWrittenX) {
  EXPECT_THAT(vinHints("11111111X11115111"), ElementsAre(VinHint::CheckDigitAgrees));
  EXPECT_THAT(vinHints("11111111011115111"), ElementsAre(VinHint::CheckDigitDiffers));
}

// 11 is prime, no weight but that of the check digit is a multiple of it: one digit more by one
// always shows.
TEST(Vin, OneWrongDigitShowsAnywhere) {
  for (std::size_t place = 0; place < kOnes.size(); ++place) {
    std::string vin = kOnes;
    vin[place] = '2';
    EXPECT_THAT(vinHints(vin), ElementsAre(VinHint::CheckDigitDiffers)) << vin;
  }
}

// Elsewhere than in North America any character may stand in place 9.
TEST(Vin, ALetterInPlaceNineDiffersAndIsNotForbidden) {
  EXPECT_THAT(vinHints("11111111Z11111111"), ElementsAre(VinHint::CheckDigitDiffers));
}

// ISO 3779 (from memory): I, O and Q are not used.
TEST(Vin, LettersThatLookLikeDigitsAreForbidden) {
  for (const char* vin : {"1111111111111111I", "O1111111111111111", "11111111Q11111111",
                          "1111111111111.111", "1111111111111111\u00c9"}) {
    EXPECT_THAT(vinHints(vin), ElementsAre(VinHint::ForbiddenCharacter)) << vin;
  }
}

TEST(Vin, OlderChassisNumbersAreOnlyNotSeventeen) {
  EXPECT_THAT(vinHints("QI 1234/O"), ElementsAre(VinHint::NotSeventeen));
  EXPECT_THAT(vinHints(kOnes + "1"), ElementsAre(VinHint::NotSeventeen));
  EXPECT_THAT(vinHints(kOnes.substr(1)), ElementsAre(VinHint::NotSeventeen));
  EXPECT_THAT(vinHints(std::string(1 << 20, 'I')), ElementsAre(VinHint::NotSeventeen));
}

// 16 letters of two bytes and one digit are seventeen characters.
TEST(Vin, CharactersAreCountedNotBytes) {
  std::string vin = "1";
  for (int i = 0; i < 16; ++i) vin += "\u00c9";
  EXPECT_THAT(vinHints(vin), ElementsAre(VinHint::ForbiddenCharacter));
}

TEST(Vin, SpacesHyphensAndSmallLettersDoNotMatter) {
  EXPECT_THAT(vinHints(" 111-11111x 1111 5111 "), ElementsAre(VinHint::CheckDigitAgrees));
}

TEST(Vin, NothingTypedGivesNoHint) {
  EXPECT_THAT(vinHints(""), IsEmpty());
  EXPECT_THAT(vinHints("  - "), IsEmpty());
}

TEST(Vin, EveryHintHasAWordOfItsOwn) {
  EXPECT_EQ(word(VinHint::NotSeventeen), "not_seventeen");
  EXPECT_EQ(word(VinHint::ForbiddenCharacter), "forbidden_character");
  EXPECT_EQ(word(VinHint::CheckDigitDiffers), "check_digit_differs");
  EXPECT_EQ(word(VinHint::CheckDigitAgrees), "check_digit_agrees");
}

}  // namespace
}  // namespace sw::model
