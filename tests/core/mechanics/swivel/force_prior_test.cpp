// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/force_prior.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

// Own construction, no published values: it is held against simulated shops whose truth is known.

namespace sw::mechanics {
namespace {

constexpr ScatterWords kScatter{newtons(0.3), 4};

/// A closed side with three packs pulled, its slope as given (N/mm).
HistoricSide sideWith(double slope, double drag, double knee, std::mt19937_64& random) {
  std::normal_distribution<double> scatter(0, 0.3);
  HistoricSide side;
  for (const double way : {-0.05, 0.05, 0.15}) {
    PackPulls pulls{millimetres(knee - way), {}};
    for (int i = 0; i < 5; ++i) {
      pulls.pulls.push_back(newtons(drag + slope * std::max(0.0, way) + scatter(random)));
    }
    side.packs.push_back(std::move(pulls));
  }
  return side;
}

std::vector<HistoricSide> shopOf(int sides, double spread, std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  std::vector<HistoricSide> shop;
  for (int i = 0; i < sides; ++i) {
    const double slope = 60.0 * std::exp(spread * normal(random));
    shop.push_back(
        sideWith(slope, 4.0 + 0.3 * normal(random), 0.8 + 0.05 * normal(random), random));
  }
  return shop;
}

double sum(const std::vector<double>& weights) {
  return std::accumulate(weights.begin(), weights.end(), 0.0);
}

TEST(ShopHistory, FindsTheSlopeOfManyAxles) {
  std::mt19937_64 random(7);
  const auto history =
      learnedFrom(shopOf(30, 0.3, random), ShimEffect::ThinnerRaises, kScatter).value();
  EXPECT_EQ(history.sides, 30U);
  EXPECT_NEAR(history.slopeMiddle / 1000, 60, 9);
  // The next axle: 60 exp(+-1.96 x 0.3) is 33 to 108.
  EXPECT_NEAR(std::log(history.slopeLow / 1000), std::log(33), 0.3);
  EXPECT_NEAR(std::log(history.slopeHigh / 1000), std::log(108), 0.3);
  EXPECT_NEAR(history.drag.si(), 4.0, 0.3);
  ASSERT_TRUE(history.knee);
  EXPECT_NEAR(inMillimetres(history.knee->pack), 0.8, 0.04);
  EXPECT_NEAR(sum(history.slopeWeights), 1, 1e-12);
}

TEST(ShopHistory, FewJobsBelieveLessThanMany) {
  // On the average of twenty shops: one shop's six axles may happen to be alike.
  std::mt19937_64 random(8);
  double one = 0;
  double six = 0;
  double many = 0;
  for (int shop = 0; shop < 20; ++shop) {
    const auto all = shopOf(24, 0.25, random);
    const auto widthOf = [&](std::size_t sides) {
      const auto history =
          learnedFrom(std::span(all).first(sides), ShimEffect::ThinnerRaises, kScatter);
      return std::log(history->slopeHigh / history->slopeLow);
    };
    one += widthOf(1);
    six += widthOf(6);
    many += widthOf(24);
  }
  EXPECT_GT(one, 1.3 * six);
  EXPECT_GT(six, 1.05 * many);
}

TEST(ShopHistory, TheNextAxleFallsIntoItsRange) {
  // Shops of six axles each; the true slope of the seventh lies within the middle 95 %.
  std::mt19937_64 random(9);
  std::normal_distribution<double> normal;
  int inside = 0;
  constexpr int kShops = 300;
  for (int shop = 0; shop < kShops; ++shop) {
    const double centre = 30.0 * std::exp(0.5 * normal(random));
    std::vector<HistoricSide> sides;
    for (int i = 0; i < 6; ++i) {
      sides.push_back(sideWith(centre * std::exp(0.3 * normal(random)), 5, 0.9, random));
    }
    const double next = centre * std::exp(0.3 * normal(random)) * 1000;
    const auto history = learnedFrom(sides, ShimEffect::ThinnerRaises, kScatter).value();
    inside += next >= history.slopeLow && next <= history.slopeHigh ? 1 : 0;
  }
  EXPECT_GE(inside, kShops * 0.92);
  EXPECT_LE(inside, kShops * 0.99);
}

TEST(ShopHistory, OnePackTellsTheDragAlone) {
  HistoricSide side;
  side.packs.push_back({millimetres(1), {newtons(5), newtons(5.2)}});
  const auto history = learnedFrom(std::vector{side}, ShimEffect::ThinnerRaises, kScatter).value();
  EXPECT_EQ(history.sides, 0U);
  EXPECT_FALSE(history.knee);
  EXPECT_FALSE(learnedFrom({}, ShimEffect::ThinnerRaises, kScatter));
}

PriorKnowledge knowledge() {
  PriorKnowledge known;
  known.thinnest = millimetres(0.4);
  known.thickest = millimetres(1.2);
  known.scatter = kScatter;
  known.lowestPull = newtons(8);
  return known;
}

TEST(ForcePrior, WithoutHistoryNoSlopeIsPreferred) {
  const KneePrior prior = priorFrom(knowledge());
  for (const double weight : prior.slopeWeights) EXPECT_DOUBLE_EQ(weight, prior.slopeWeights[0]);
  // From 2 N/mm to beyond 1000 N/mm.
  EXPECT_DOUBLE_EQ(slopeOfCell(0).si(), 2000);
  EXPECT_GT(slopeOfCell(kSlopeCells - 1).si(), 1e6);
}

TEST(ForcePrior, AMeasuredKneeIsBelievedAlmostAlone) {
  PriorKnowledge known = knowledge();
  known.knee = MeasuredKnee{millimetres(0.7), millimetres(0.015)};
  double near = 0;
  double all = 0;
  for (const KneeCell& cell : priorFrom(known).knees) {
    all += cell.weight;
    if (std::abs(inMillimetres(cell.pack) - 0.7) < 0.04) near += cell.weight;
  }
  EXPECT_NEAR(near / all, 0.95, 0.03);
}

TEST(ForcePrior, KneesReachBeyondTheLoosestPackAndNotBeyondTheTightest) {
  for (const auto effect : {ShimEffect::ThinnerRaises, ShimEffect::ThickerRaises}) {
    PriorKnowledge known = knowledge();
    known.effect = effect;
    double thinnest = 1e9;
    double thickest = -1e9;
    for (const KneeCell& cell : priorFrom(known).knees) {
      thinnest = std::min(thinnest, inMillimetres(cell.pack));
      thickest = std::max(thickest, inMillimetres(cell.pack));
    }
    const bool thinner = effect == ShimEffect::ThinnerRaises;
    EXPECT_NEAR(thinner ? thinnest : thickest, thinner ? 0.4 : 1.2, 0.05);
    EXPECT_GE(thinnest, thinner ? 0.4 : -10);
    EXPECT_LE(thickest, thinner ? 10 : 1.2);
    EXPECT_GT(thinner ? thickest - 1.2 : 0.4 - thinnest, 0.5);
  }
}

}  // namespace
}  // namespace sw::mechanics
