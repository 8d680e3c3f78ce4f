// SPDX-License-Identifier: GPL-3.0-or-later
// Words for chances, for what speaks for a cause, and for minutes. The steps are our own.
#include "phrasing/cause_words.h"

#include <gtest/gtest.h>

namespace sw::phrasing {
namespace {

TEST(CauseWords, AChanceGetsStrongerWordsAsItRises) {
  EXPECT_EQ(likelihoodWords(0), QStringLiteral("hardly"));
  EXPECT_EQ(likelihoodWords(0.05), QStringLiteral("less likely"));
  EXPECT_EQ(likelihoodWords(0.2), QStringLiteral("possible"));
  EXPECT_EQ(likelihoodWords(0.3), QStringLiteral("may well be"));
  EXPECT_EQ(likelihoodWords(0.5), QStringLiteral("more likely than not"));
  EXPECT_EQ(likelihoodWords(0.9), QStringLiteral("very likely"));
  EXPECT_EQ(likelihoodWords(1), QStringLiteral("almost surely"));
}

TEST(CauseWords, WhatSpeaksForACauseGoesByTheOdds) {
  // 1 to 4.3 without it and 1 to 1 with it: odds times 4.3.
  EXPECT_EQ(speaksWords(0.5, 0.19), QStringLiteral("speaks strongly for it"));
  EXPECT_EQ(speaksWords(0.5, 0.38), QStringLiteral("speaks for it"));
  EXPECT_EQ(speaksWords(0.5, 0.5), QStringLiteral("hardly matters"));
  EXPECT_EQ(speaksWords(0.38, 0.5), QStringLiteral("speaks against it"));
  EXPECT_EQ(speaksWords(0.1, 0.5), QStringLiteral("speaks strongly against it"));
  // Nought and one have no finite odds.
  EXPECT_EQ(speaksWords(0, 0), QStringLiteral("hardly matters"));
  EXPECT_EQ(speaksWords(1, 1), QStringLiteral("hardly matters"));
  EXPECT_EQ(speaksWords(0.5, 0), QStringLiteral("speaks strongly for it"));
  EXPECT_EQ(speaksWords(0, 0.5), QStringLiteral("speaks strongly against it"));
}

TEST(CauseWords, AFigureIsOfAHundred) {
  EXPECT_EQ(ofHundred(0), QStringLiteral("0"));
  EXPECT_EQ(ofHundred(0.004), QStringLiteral("under 1"));
  EXPECT_EQ(ofHundred(0.006), QStringLiteral("1"));
  EXPECT_EQ(ofHundred(0.574), QStringLiteral("57"));
  EXPECT_EQ(ofHundred(1), QStringLiteral("100"));
}

TEST(CauseWords, MinutesAreRoundedAsPeopleSayThem) {
  EXPECT_EQ(workTime(0), QStringLiteral("0 min"));
  EXPECT_EQ(workTime(28.6), QStringLiteral("29 min"));
  EXPECT_EQ(workTime(32), QStringLiteral("30 min"));
  EXPECT_EQ(workTime(58), QStringLiteral("1 h"));
  EXPECT_EQ(workTime(143), QStringLiteral("2 h 25 min"));
}

}  // namespace
}  // namespace sw::phrasing
