// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/load_index.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

TEST(LoadIndex, LoadsOfTheTradeTable) {
  struct Row {
    int index;
    double kilograms;
    const char* source;
  };
  // Two public trade tables agree on these; one prints 83 as 478, the other 62 as 165.
  for (const Row& row :
       {Row{83, 487, "trade tables, one misprinted 478"}, Row{96, 710, "trade tables"},
        Row{109, 1030, "trade tables"}, Row{62, 265, "trade tables, one misprinted 165"},
        Row{70, 335, "trade tables"}, Row{120, 1400, "from memory"}}) {
    ASSERT_TRUE(loadOfIndex(row.index)) << row.index;
    EXPECT_DOUBLE_EQ(inKilograms(*loadOfIndex(row.index)), row.kilograms) << row.source;
  }
}

TEST(LoadIndex, EveryEntryFollowsTheRuleWithinTwoPercent) {
  // The geometric rule of the scale (from memory), worked here on its own: a factor of ten every
  // eighty steps. It unmasks both misprints.
  for (int index = kLeastLoadIndex; index <= kMostLoadIndex; ++index) {
    const double rule = 45 * std::exp(std::log(10.0) * index / 80);
    ASSERT_TRUE(loadOfIndex(index));
    EXPECT_NEAR(inKilograms(*loadOfIndex(index)) / rule, 1, 0.02) << index;
    EXPECT_NEAR(inKilograms(loadIndexRule(index)), rule, 1e-9 * rule);
  }
  EXPECT_GT(std::abs(478 / inKilograms(loadIndexRule(83)) - 1), 0.02);
  EXPECT_GT(std::abs(165 / inKilograms(loadIndexRule(62)) - 1), 0.02);
}

TEST(LoadIndex, LoadsRiseAndEnd) {
  for (int index = kLeastLoadIndex; index < kMostLoadIndex; ++index) {
    EXPECT_LT(*loadOfIndex(index), *loadOfIndex(index + 1)) << index;
  }
  EXPECT_FALSE(loadOfIndex(kLeastLoadIndex - 1));
  EXPECT_FALSE(loadOfIndex(kMostLoadIndex + 1));
  EXPECT_FALSE(loadOfIndex(-5));
}

TEST(LoadIndex, SpeedSymbolsRankBySpeedNotByLetter) {
  struct Row {
    char symbol;
    double kilometresPerHour;
  };
  // Two public trade tables; H between U and V is the trap.
  for (const Row& row :
       {Row{'F', 80}, Row{'L', 120}, Row{'N', 140}, Row{'Q', 160}, Row{'S', 180}, Row{'T', 190},
        Row{'U', 200}, Row{'H', 210}, Row{'V', 240}, Row{'Y', 300}}) {
    ASSERT_TRUE(speedOfSymbol(row.symbol)) << row.symbol;
    EXPECT_NEAR(inKilometresPerHour(*speedOfSymbol(row.symbol)), row.kilometresPerHour, 1e-9);
  }
  EXPECT_LT(*speedOfSymbol('U'), *speedOfSymbol('H'));
  EXPECT_LT(*speedOfSymbol('H'), *speedOfSymbol('V'));
}

TEST(LoadIndex, LettersThatAreNoSymbol) {
  for (const char letter : {'I', 'O', 'X', 'Z', 'C', 's', '\0'}) {
    EXPECT_FALSE(speedOfSymbol(letter)) << letter;
  }
}

}  // namespace
}  // namespace sw::mechanics
