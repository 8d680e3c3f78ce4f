// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_index.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sw::mechanics {
namespace {

UncertainVector vectorOf(double amount, double angle, double uncertainty = 0) {
  return {{millimetres(amount), degrees(angle)}, millimetres(uncertainty)};
}

double amountAt(const DiscIndex& index, std::size_t position) {
  return inMillimetres(index.positions.at(position).runout.vector.amount);
}

TEST(DiscIndex, FromHubAndDisc) {
  // Complex sums by hand.
  const auto got = indexFromParts(5, {vectorOf(0.060, 40), vectorOf(0.050, 100)}).value();
  const double expected[]{0.0954, 0.0457, 0.0249, 0.0820, 0.1094};
  for (std::size_t k = 0; k < 5; ++k) EXPECT_NEAR(amountAt(got, k), expected[k], 1e-4) << k;
  EXPECT_EQ(got.best, 2);
  EXPECT_EQ(got.worst, 4);
  EXPECT_NEAR(amountAt(got, 4) / amountAt(got, 2), 4.4, 0.01);
  EXPECT_NEAR(inMillimetres(got.floor), 0.010, 1e-12);
  EXPECT_NEAR(inMillimetres(got.ceiling), 0.110, 1e-12);
}

TEST(DiscIndex, FromTwoRuns) {
  // D = (T2 - T0) / (exp(i 144 deg) - 1), H = T0 - D, by hand.
  const auto got = indexFromRuns(5, {0, vectorOf(0.095, 60)}, {2, vectorOf(0.030, 350)}).value();
  EXPECT_NEAR(inMillimetres(got.parts.disc.vector.amount), 0.04695, 1e-4);
  EXPECT_NEAR(inDegrees(got.parts.disc.vector.angle), 96.40, 0.05);
  EXPECT_NEAR(inMillimetres(got.parts.hub.vector.amount), 0.06363, 1e-4);
  EXPECT_NEAR(inDegrees(got.parts.hub.vector.angle), 34.03, 0.05);
  EXPECT_NEAR(amountAt(got, 0), 0.095, 1e-12) << "what was measured comes out again";
  EXPECT_NEAR(amountAt(got, 1), 0.0456, 1e-4);
  EXPECT_NEAR(amountAt(got, 2), 0.030, 1e-12);
  EXPECT_NEAR(amountAt(got, 3), 0.0844, 1e-4);
  EXPECT_NEAR(amountAt(got, 4), 0.1102, 1e-4);
  EXPECT_EQ(got.best, 2);
}

TEST(DiscIndex, AnyTwoPositionsGiveBackThePartsTheyWereMadeFrom) {
  for (const int studs : {3, 4, 5, 6, 8, 12}) {
    const auto made = indexFromParts(studs, {vectorOf(0.02, 300), vectorOf(0.07, 15)}).value();
    for (int a = 0; a < studs; ++a) {
      for (int b = 0; b < studs; ++b) {
        if (a == b) continue;
        const auto got = indexFromRuns(studs, made.positions[static_cast<std::size_t>(a)],
                                       made.positions[static_cast<std::size_t>(b)])
                             .value();
        EXPECT_NEAR(inMillimetres(got.parts.hub.vector.amount), 0.02, 1e-9);
        EXPECT_NEAR(inDegrees(got.parts.hub.vector.angle), 300, 1e-6);
        EXPECT_NEAR(inMillimetres(got.parts.disc.vector.amount), 0.07, 1e-9);
        EXPECT_NEAR(inDegrees(got.parts.disc.vector.angle), 15, 1e-6);
        EXPECT_EQ(got.best, made.best) << studs << ": " << a << ", " << b;
      }
    }
  }
}

TEST(DiscIndex, EveryPositionLiesBetweenFloorAndCeiling) {
  const auto got = indexFromParts(6, {vectorOf(0.05, 10), vectorOf(0.03, 200)}).value();
  for (const auto& position : got.positions) {
    EXPECT_GE(position.runout.vector.amount, got.floor);
    EXPECT_LE(position.runout.vector.amount, got.ceiling);
  }
  const auto hubAlone = indexFromParts(6, {vectorOf(0.05, 10), vectorOf(0, 0)}).value();
  EXPECT_EQ(hubAlone.floor, hubAlone.ceiling) << "indexing cures no hub";
  EXPECT_EQ(hubAlone.best, 0);
}

TEST(DiscIndex, UncertaintyIsLinearInTheTwoRuns) {
  // Four studs, runs at 0 and 2: z = 1 and -1. H = D = half the sum and difference: u / sqrt(2);
  // T_1 = H + i D: again hypot of u / sqrt(2) twice correlated as (1 - b), b with b = (1 - i) / 2,
  // |b| = |1 - b| = 1 / sqrt(2): u(T_1) = u. By hand.
  const auto got =
      indexFromRuns(4, {0, vectorOf(0.08, 0, 0.004)}, {2, vectorOf(0.03, 90, 0.004)}).value();
  EXPECT_NEAR(inMillimetres(got.parts.hub.standardUncertainty), 0.004 / std::sqrt(2.0), 1e-12);
  EXPECT_NEAR(inMillimetres(got.parts.disc.standardUncertainty), 0.004 / std::sqrt(2.0), 1e-12);
  EXPECT_NEAR(inMillimetres(got.positions[0].runout.standardUncertainty), 0.004, 1e-12);
  EXPECT_NEAR(inMillimetres(got.positions[2].runout.standardUncertainty), 0.004, 1e-12);
  EXPECT_NEAR(inMillimetres(got.positions[1].runout.standardUncertainty), 0.004, 1e-12);
  EXPECT_NEAR(inMillimetres(got.positions[3].runout.standardUncertainty), 0.004, 1e-12);
}

TEST(DiscIndex, NeighboursPredictTheFarSidePoorly) {
  // Finite differences of the prediction itself, along and across each run.
  const IndexPosition first{0, vectorOf(0.09, 20, 0.003)};
  const IndexPosition second{1, vectorOf(0.06, 330, 0.003)};
  const auto base = indexFromRuns(8, first, second).value();
  const double step = 1e-7;
  double squares = 0;
  for (int which = 0; which < 2; ++which) {
    IndexPosition moved[]{first, second};
    auto z = toComplex(moved[which].runout.vector);
    z += std::complex<double>(step, 0);
    moved[which].runout.vector = fromComplex(z);
    const auto other = indexFromRuns(8, moved[0], moved[1]).value();
    const double slope = std::abs(toComplex(other.positions[4].runout.vector) -
                                  toComplex(base.positions[4].runout.vector)) /
                         step;
    squares += slope * slope;
  }
  EXPECT_NEAR(inMillimetres(base.positions[4].runout.standardUncertainty),
              0.003 * std::sqrt(squares), 1e-7);
  EXPECT_GT(base.positions[4].runout.standardUncertainty, millimetres(0.009));
}

TEST(DiscIndex, RefusesWhatCannotBe) {
  const IndexPosition run{0, vectorOf(0.05, 0)};
  const auto keyOf = [](const Result<DiscIndex>& got) {
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf(indexFromRuns(2, run, run)), "disc_index.bad_studs studs");
  EXPECT_EQ(keyOf(indexFromRuns(13, run, run)), "disc_index.bad_studs studs");
  EXPECT_EQ(keyOf(indexFromRuns(5, run, run)), "disc_index.same_position runs/1/position");
  EXPECT_EQ(keyOf(indexFromRuns(5, run, {5, vectorOf(0.05, 0)})),
            "disc_index.bad_position runs/1/position");
  EXPECT_EQ(keyOf(indexFromRuns(5, {0, vectorOf(-0.05, 0)}, {1, vectorOf(0.05, 0)})),
            "measure.not_positive runs/0/amount");
  EXPECT_EQ(keyOf(indexFromParts(5, {vectorOf(0.05, NAN), vectorOf(0.05, 0)})),
            "measure.not_finite hub/angle");
}

}  // namespace
}  // namespace sw::mechanics
