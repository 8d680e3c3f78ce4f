// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/compare_figures.h"

#include <cmath>

#include "units/parse.h"

namespace sw {
namespace {

TypedQuantity typed(QuantityKind kind, const char* text) {
  return parseQuantity(text, {"figure", kind, ""}).value().value;
}

FigureComparison compared(QuantityKind kind, const char* first, const char* second) {
  return compareFigures(typed(kind, first), typed(kind, second)).value();
}

struct Row {
  QuantityKind kind;
  const char* first;
  const char* second;
  FigureAgreement agreement;
};

TEST(CompareFigures, CommonPairs) {
  constexpr auto kTorque = QuantityKind::Torque;
  constexpr auto kForce = QuantityKind::Force;
  constexpr auto kAgree = FigureAgreement::Agree;
  constexpr auto kQuery = FigureAgreement::Query;
  // Common practice, no source. By hand with 1 lbf ft = 1.3558179 N m, e.g. 85 N m: 84.5 ... 85.5 N
  // m is 62.32 ... 63.06 lbf ft, 62 is 61.5 ... 62.5: they overlap.
  for (const Row& row :
       {Row{kTorque, "25 N m", "18 lbf ft", kAgree}, Row{kTorque, "43 N m", "32 lbf ft", kAgree},
        Row{kTorque, "10 N m", "7.5 lbf ft", kAgree}, Row{kTorque, "85 N m", "62 lbf ft", kAgree},
        Row{kForce, "45 N", "4.6 kgf", kAgree}, Row{kTorque, "100 N m", "72 lbf ft", kQuery},
        Row{kTorque, "72 lbf ft", "100 N m", kQuery},
        // 85.0 is 84.95 ... 85.05: 62.66 ... 62.73, now apart from 62 (to 62.5)
        Row{kTorque, "85.0 N m", "62 lbf ft", kQuery},
        // 18.0 lbf ft is 24.34 ... 24.47 N m, below 24.5
        Row{kTorque, "25 N m", "18.0 lbf ft", kQuery},
        Row{kTorque, "25.0 N m", "18.0 lbf ft", kQuery}, Row{kForce, "45.0 N", "4.6 kgf", kAgree},
        Row{kForce, "45.0 N", "4.60 kgf", kQuery}}) {
    EXPECT_EQ(compared(row.kind, row.first, row.second).agreement, row.agreement)
        << row.first << " / " << row.second;
  }
}

TEST(CompareFigures, QueryShowsBothConversionsAndWhatWouldAgree) {
  const auto got = compared(QuantityKind::Torque, "100 N m", "72 lbf ft");
  EXPECT_NEAR(got.firstInSecondUnit, 73.756, 5e-4);  // 100 / 1.3558179483
  EXPECT_NEAR(got.secondInFirstUnit, 97.619, 5e-4);  // 72 x 1.3558179483
  EXPECT_EQ(got.besideFirst.text(), "74 lbf ft");
  EXPECT_EQ(got.besideSecond.text(), "98 N m");
  EXPECT_NEAR(got.gapSi, 100 - 97.619 - 0.5 - 0.678, 1e-3);
}

TEST(CompareFigures, WhatWouldAgreeDoesAgree) {
  for (const char* first : {"100 N m", "7.25 N m", "33.3 N m", "1 N m"}) {
    for (const char* second : {"72 lbf ft", "11.11 lbf in", "4.6 kgf m", "900 N m"}) {
      const auto a = typed(QuantityKind::Torque, first);
      const auto b = typed(QuantityKind::Torque, second);
      const auto got = compareFigures(a, b).value();
      EXPECT_EQ(compareFigures(a, got.besideFirst).value().agreement, FigureAgreement::Agree)
          << first << " / " << got.besideFirst.text();
      EXPECT_EQ(compareFigures(got.besideSecond, b).value().agreement, FigureAgreement::Agree)
          << got.besideSecond.text() << " / " << second;
      EXPECT_EQ(got.agreement, compareFigures(b, a).value().agreement) << "in either order";
    }
  }
}

TEST(CompareFigures, TouchingIntervalsAgree) {
  // 10 mm is 9.5 ... 10.5, 11 mm 10.5 ... 11.5; 0.1 and 0.2 touch at 0.15, which no double holds.
  EXPECT_EQ(compared(QuantityKind::Length, "10 mm", "11 mm").agreement, FigureAgreement::Agree);
  EXPECT_EQ(compared(QuantityKind::Length, "0.1 mm", "0.2 mm").agreement, FigureAgreement::Agree);
  EXPECT_EQ(compared(QuantityKind::Length, "1.2 mm", "1.3 mm").gapSi, 0);
  EXPECT_EQ(compared(QuantityKind::Length, "10 mm", "12 mm").agreement, FigureAgreement::Query);
  EXPECT_EQ(compared(QuantityKind::Length, "0.10 mm", "0.12 mm").agreement, FigureAgreement::Query);
}

TEST(CompareFigures, SameFigureAgreesWithItself) {
  const auto got = compared(QuantityKind::Torque, "85 N m", "85 N m");
  EXPECT_EQ(got.agreement, FigureAgreement::Agree);
  EXPECT_EQ(got.besideFirst.text(), "85 N m");
}

TEST(CompareFigures, RefusesKindsThatDifferAndUnknownUnits) {
  const auto force = typed(QuantityKind::Force, "45 N");
  const auto torque = typed(QuantityKind::Torque, "45 N m");
  const auto kinds = compareFigures(force, torque);
  ASSERT_FALSE(kinds);
  EXPECT_EQ(kinds.error().key, "compare.kind_differs");
  EXPECT_EQ(kinds.error().detail("second"), word(QuantityKind::Torque));
  TypedQuantity strange = force;
  strange.unit = "furlong";
  EXPECT_EQ(compareFigures(force, strange).error().key, "units.unknown_unit");
}

}  // namespace
}  // namespace sw
