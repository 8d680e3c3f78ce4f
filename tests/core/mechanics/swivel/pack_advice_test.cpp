// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/pack_advice.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

// The rules of reach ("never more than the measured interval times two, never from a reading
// without preload") are common practice, no source. The packs are counted anew by brute force.

namespace sw::mechanics {
namespace {

PackPulls pulls(double pack, std::initializer_list<double> forces) {
  PackPulls pulled{millimetres(pack), {}};
  for (const double force : forces) pulled.pulls.push_back(newtons(force));
  return pulled;
}

PackQuestion question() {
  PackQuestion asked;
  asked.stock.sizes = {{millimetres(0.05), 3}, {millimetres(0.2), 8}};
  asked.stock.maxCount = 10;
  asked.stock.maxPack = millimetres(1.5);
  asked.limit = {14.0, 20.0};
  asked.terms.instrumentUncertainty = newtons(0.2);
  asked.terms.graduationUncertainty = newtons(0.1);
  return asked;
}

double recommended(const PackAdvice& advice) {
  return advice.recommended ? inMillimetres(advice.rows[*advice.recommended].pack.total) : 0.0;
}

ShopHistory shopHistory() {
  std::vector<HistoricSide> sides;
  for (const double slope : {45.0, 55.0, 50.0, 60.0, 48.0}) {
    HistoricSide side;
    for (const double way : {-0.05, 0.05, 0.15, 0.25}) {
      const double force = 5 + slope * std::max(0.0, way);
      side.packs.push_back(pulls(0.9 - way, {force, force + 0.2, force - 0.2}));
    }
    sides.push_back(side);
  }
  return learnedFrom(sides, ShimEffect::ThinnerRaises, {newtons(0.3), 4}).value();
}

TEST(PackAdvice, EveryPackThatCanBeMadeIsInTheTable) {
  PackQuestion asked = question();
  asked.measured = {pulls(1.0, {6, 6, 6}), pulls(0.95, {9, 9, 9})};
  const auto advice = advisePack(asked).value();
  std::set<int> counted;  // totals in micrometres, by brute force
  for (int thin = 0; thin <= 3; ++thin) {
    for (int thick = 0; thick <= 8; ++thick) {
      const int total = 50 * thin + 200 * thick;
      if (thin + thick >= 1 && thin + thick <= 10 && total <= 1500) counted.insert(total);
    }
  }
  std::set<int> shown;
  for (const PackRow& row : advice.rows) {
    shown.insert(static_cast<int>(std::lround(inMillimetres(row.pack.total) * 1000)));
    EXPECT_TRUE(row.prediction);
  }
  EXPECT_EQ(shown, counted);
}

TEST(PackAdvice, NothingMeasuredAsksForAPullOrTakesTheMeasuredFloat) {
  PackQuestion asked = question();
  EXPECT_EQ(advisePack(asked)->reason, PackReason::MeasureFirst);
  EXPECT_FALSE(advisePack(asked)->recommended);
  asked.knee = MeasuredKnee{millimetres(0.83), millimetres(0.015)};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.reason, PackReason::MeasuredKnee);
  EXPECT_NEAR(recommended(advice), 0.85, 1e-9);
}

TEST(PackAdvice, OnePackWithoutHistoryIsOneStepAndNoPrediction) {
  PackQuestion asked = question();
  asked.measured = {pulls(1.0, {6, 6.5, 6})};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.basis, PredictionBasis::None);
  EXPECT_EQ(advice.reason, PackReason::OneStep);
  EXPECT_NEAR(recommended(advice), 0.95, 1e-9);
  for (const PackRow& row : advice.rows) EXPECT_FALSE(row.prediction);
}

TEST(PackAdvice, OneStepNamesTheVeryNextPack) {
  // 2 x 5 thou = 0.254 mm lies 4 um from 0.2 + 0.05 mm and is the next below 0.2 mm + 5 thou.
  PackQuestion asked = question();
  asked.effect = ShimEffect::ThickerRaises;
  asked.stock.sizes = {{millimetres(0.2), 1}, {inches(0.005), 2}, {millimetres(0.05), 1}};
  asked.stock.maxCount = 2;
  asked.measured = {pulls(0.327, {40, 40, 40})};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.reason, PackReason::OneStep);
  EXPECT_NEAR(recommended(advice), 0.254, 1e-9);
}

TEST(PackAdvice, ShimsBetweenPinAndCapStepTheOtherWay) {
  // Same pull, too low: remove under the flange, add between pin and cap.
  PackQuestion asked = question();
  asked.measured = {pulls(1.0, {6, 6.5, 6})};
  asked.effect = ShimEffect::ThickerRaises;
  EXPECT_NEAR(recommended(advisePack(asked).value()), 1.05, 1e-9);
}

TEST(PackAdvice, HistoryAlonePredictsAndStillGoesOneStep) {
  PackQuestion asked = question();
  asked.history = shopHistory();
  asked.measured = {pulls(0.9, {6, 6.5, 6})};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.basis, PredictionBasis::History);
  EXPECT_EQ(advice.reason, PackReason::OneStep);
  EXPECT_NEAR(recommended(advice), 0.85, 1e-9);
  EXPECT_TRUE(advice.rows.front().prediction);
}

TEST(PackAdvice, TwoPacksOnTheSlopeReachTwiceTheirInterval) {
  // 40 N/mm: 8 N at 1.00, 12 N at 0.90; 17 N wants 0.775.
  PackQuestion asked = question();
  asked.measured = {pulls(1.0, {8, 8.1, 7.9, 8, 8}), pulls(0.9, {12, 12.1, 11.9, 12, 12})};
  asked.history = shopHistory();
  const auto advice = advisePack(asked).value();
  for (const PackRow& row : advice.rows) {
    const double pack = inMillimetres(row.pack.total);
    const bool near = pack > 0.7 - 0.006 && pack < 1.2 + 0.006;
    const bool measured = std::abs(pack - 1.0) < 1e-6 || std::abs(pack - 0.9) < 1e-6;
    const PackReach wanted = measured ? PackReach::Measured
                             : near   ? PackReach::Reachable
                                      : PackReach::Beyond;
    EXPECT_EQ(row.reach, wanted) << pack;
  }
  EXPECT_EQ(advice.reason, PackReason::LikeliestWithin);
  EXPECT_NEAR(recommended(advice), 0.8, 0.051);
}

TEST(PackAdvice, ByPlainProportionFromTwoPulls) {
  // Flange pack 1.00 gives 8 N, 0.90 gives 12 N, wanted 16 N: slope -40 N/mm, pack 0.80 (by hand).
  PackQuestion asked = question();
  asked.limit = {14.5, 17.5};
  asked.measured = {pulls(1.0, {8, 8, 8, 8, 8}), pulls(0.9, {12, 12, 12, 12, 12})};
  EXPECT_NEAR(recommended(advisePack(asked).value()), 0.80, 1e-9);
}

TEST(PackAdvice, ABestPackBeyondReachIsApproached) {
  PackQuestion asked = question();
  asked.limit = {24.0, 30.0};
  asked.history = shopHistory();
  asked.measured = {pulls(0.9, {7.5, 7.6, 7.4, 7.5, 7.5}), pulls(0.85, {10, 10.1, 9.9, 10, 10})};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.reason, PackReason::AsFarAsAllowed);
  EXPECT_NEAR(recommended(advice), 0.75, 1e-9);
}

TEST(PackAdvice, AWithinPackStays) {
  PackQuestion asked = question();
  asked.measured = {pulls(1.0, {8, 8, 8}), pulls(0.9, {12, 12, 12}), pulls(0.8, {17, 17, 17})};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.reason, PackReason::Stay);
  EXPECT_FALSE(advice.direction);
}

TEST(PackAdvice, PacksEndIsSaid) {
  PackQuestion asked = question();
  asked.measured = {pulls(0.05, {6, 6, 6})};
  EXPECT_EQ(advisePack(asked)->reason, PackReason::PacksEnd);
}

TEST(PackAdvice, FloatThatIsLeftIsNoticed) {
  PackQuestion asked = question();
  asked.history = shopHistory();
  asked.measured = {pulls(1.0, {5, 5.1, 4.9, 5, 5}), pulls(0.95, {5, 5.1, 4.9, 5, 5})};
  const auto advice = advisePack(asked).value();
  EXPECT_TRUE(advice.floatLikely);
  EXPECT_EQ(advice.reason, PackReason::OneStep);
  EXPECT_NEAR(recommended(advice), 0.9, 1e-9);
}

TEST(PackAdvice, OfEquallyGoodPacksTheOneLikeTheOtherSideWins) {
  PackQuestion asked = question();
  asked.limit = {10.0, 30.0};
  asked.measured = {pulls(0.95, {8, 8, 8, 8, 8}), pulls(0.85, {12.1, 12, 11.9, 12, 12}),
                    pulls(0.65, {20, 20.1, 19.9, 20, 20})};
  const auto packFor = [&](double other) {
    asked.otherSide = newtons(other);
    return recommended(advisePack(asked).value());
  };
  EXPECT_GT(packFor(16), packFor(24));
}

TEST(PackAdvice, ASteepSlopePastAKneeIsNotJumpedOver) {
  // The third pull jumps; how steep it is stays open, so the nearest step is taken.
  PackQuestion asked = question();
  asked.limit = {18.0, 22.0};
  asked.measured = {pulls(1.0, {5, 5, 5, 5, 5}), pulls(0.95, {5, 5.2, 5, 5, 5}),
                    pulls(0.9, {12, 12.3, 12, 11.8, 12})};
  const auto advice = advisePack(asked).value();
  ASSERT_TRUE(advice.recommended);
  EXPECT_NEAR(recommended(advice), 0.85, 1e-9);
}

TEST(PackAdvice, ProbabilitiesAddUpAndIntervalsHoldTheExpectedForce) {
  PackQuestion asked = question();
  asked.measured = {pulls(1.0, {8, 8.5, 8}), pulls(0.9, {12, 12.5, 12})};
  asked.terms.film = SealantFilm{millimetres(0.01), millimetres(0.04)};
  const auto advice = advisePack(asked).value();
  for (const PackRow& row : advice.rows) {
    const auto& p = *row.prediction;
    EXPECT_NEAR(p.within + p.below + p.above, 1, 1e-9);
    EXPECT_LT(p.trueForce.low, p.expected);
    EXPECT_GT(p.trueForce.high, p.expected);
    EXPECT_LE(p.proved, p.within + 0.2);
  }
}

TEST(PackAdvice, StepsTooCoarseForTheLimitAreNamed) {
  // 100 N/mm and steps of 0.2 mm: 20 N a step, the band is 4 N wide.
  PackQuestion asked = question();
  asked.stock.sizes = {{millimetres(0.2), 8}};
  asked.limit = {14.0, 18.0};
  asked.measured = {pulls(1.2, {6, 6, 6, 6.1, 6}), pulls(1.0, {26, 26, 26.1, 26, 26}),
                    pulls(0.8, {46, 46, 46.1, 46, 46})};
  const auto advice = advisePack(asked).value();
  EXPECT_EQ(advice.reason, PackReason::NoneLikely);
  EXPECT_FALSE(advice.recommended);
  ASSERT_TRUE(advice.wanted);
  EXPECT_NEAR(inMillimetres(*advice.wanted), 1.1, 0.05);
}

TEST(PackAdvice, RefusesWhatItCannotJudge) {
  PackQuestion asked = question();
  asked.limit = {};
  EXPECT_EQ(advisePack(asked).error().key, "shims.no_limit");
  asked.limit = {20.0, 14.0};
  EXPECT_EQ(advisePack(asked).error().key, "measure.empty_limit");
  asked = question();
  asked.measured = {pulls(1.0, {})};
  EXPECT_EQ(advisePack(asked).error().key, "measure.no_readings");
  asked.measured = {pulls(1.0, {-1})};
  EXPECT_EQ(advisePack(asked).error().key, "measure.not_positive");
  asked = question();
  asked.stock.maxPack = millimetres(0.01);
  EXPECT_EQ(advisePack(asked).error().key, "shims.no_pack");
}

}  // namespace
}  // namespace sw::mechanics
