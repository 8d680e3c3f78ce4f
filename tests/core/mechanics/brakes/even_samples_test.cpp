// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/even_samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "mechanics/polar.h"

namespace sw::mechanics {
namespace {

constexpr double kPi = std::numbers::pi;

/// The least share over a fine search of phases.
double leastShare(int points, int order) {
  double least = 1;
  for (int step = 0; step < 7200; ++step) {
    const double phase = 2 * kPi * step / 7200;
    double low = 2, high = -2;
    for (int at = 0; at < points; ++at) {
      const double reading = std::cos(2 * kPi * order * at / points - phase);
      low = std::min(low, reading);
      high = std::max(high, reading);
    }
    least = std::min(least, (high - low) / 2);
  }
  return least;
}

TEST(EvenSamples, CapturedShareAsPrinted) {
  // Plane geometry (worst phase of a sampled wave), worked by hand to three decimals.
  struct Row {
    int points;
    double share[4];
  };
  const Row rows[]{{4, {0.707, 0, 0.707, 0}},          {6, {0.866, 0.750, 0, 0.750}},
                   {8, {0.924, 0.707, 0.924, 0}},      {9, {0.970, 0.970, 0.750, 0.970}},
                   {11, {0.980, 0.980, 0.980, 0.980}}, {12, {0.966, 0.866, 0.707, 0.750}},
                   {16, {0.981, 0.924, 0.981, 0.707}}};
  for (const Row& row : rows) {
    for (int order = 1; order <= 4; ++order) {
      EXPECT_NEAR(capturedShare(row.points, order), row.share[order - 1], 5e-4)
          << row.points << " points, order " << order;
    }
  }
}

TEST(EvenSamples, CapturedShareIsTheLeastOverAllPhases) {
  for (int points = 1; points <= 24; ++points) {
    for (int order = 1; order <= kHighestOrder; ++order) {
      EXPECT_NEAR(capturedShare(points, order), leastShare(points, order), 1e-6)
          << points << " points, order " << order;
    }
  }
}

TEST(EvenSamples, FourPointsDoNotSeeAnOvalDisc) {
  std::vector<Length> readings;
  for (int at = 0; at < 4; ++at) {
    readings.push_back(millimetres(12 + 0.02 * std::cos(2 * (at * kPi / 2) - kPi / 2)));
  }
  EXPECT_NEAR(inMillimetres(extentOf(readings).span()), 0, 1e-12);
  EXPECT_EQ(capturedShare(4, 2), 0);
}

TEST(EvenSamples, AnOddPrimeCountIsBlindToNoOrderBelowIt) {
  for (const int points : {5, 7, 11, 13}) {
    for (int order = 1; order <= kHighestOrder; ++order) {
      EXPECT_GT(capturedShare(points, order), 0.9) << points << " " << order;
    }
  }
}

TEST(EvenSamples, WavesPutInComeOut) {
  // Amounts and phases as built; N above twice the order.
  std::vector<Length> readings;
  constexpr int kPoints = 11;
  for (int at = 0; at < kPoints; ++at) {
    const double t = 2 * kPi * at / kPoints;
    readings.push_back(millimetres(20 + 0.03 * std::cos(t - degrees(350).si()) +
                                   0.02 * std::cos(2 * t - degrees(75).si()) +
                                   0.01 * std::cos(4 * t - degrees(200).si())));
  }
  const auto orders = ordersOf(readings);
  const double amounts[]{0.03, 0.02, 0, 0.01};
  const double angles[]{350, 75, 0, 200};
  for (std::size_t i = 0; i < 4; ++i) {
    ASSERT_TRUE(orders[i].wave);
    EXPECT_EQ(orders[i].order, static_cast<int>(i) + 1);
    EXPECT_NEAR(inMillimetres(orders[i].wave->amount), amounts[i], 1e-12);
    if (amounts[i] > 0) {
      EXPECT_NEAR(inDegrees(orders[i].wave->angle), angles[i], 1e-6);
    }
  }
  const auto rest = withoutFirstOrder(readings, *orders[0].wave);
  EXPECT_NEAR(inMillimetres(ordersOf(rest)[0].wave->amount), 0, 1e-12);
  EXPECT_NEAR(inMillimetres(ordersOf(rest)[1].wave->amount), 0.02, 1e-12);
}

TEST(EvenSamples, OrdersThePointsCannotTellStayEmpty) {
  const std::vector<Length> readings(8, millimetres(12));
  const auto orders = ordersOf(readings);
  EXPECT_TRUE(orders[2].wave);
  EXPECT_FALSE(orders[3].wave) << "order 4 with 8 points has no phase";
  EXPECT_EQ(orders[0].wave->amount, Length{});
  EXPECT_EQ(orders[0].wave->angle, Angle{});
}

TEST(EvenSamples, TurningTheMarkTurnsThePhase) {
  std::vector<Length> readings;
  for (const double r : {0.112, 0.140, 0.131, 0.095, 0.070, 0.088}) {
    readings.push_back(millimetres(r));
  }
  const VectorAmount before = *ordersOf(readings)[0].wave;
  std::rotate(readings.begin(), readings.begin() + 1, readings.end());
  const VectorAmount after = *ordersOf(readings)[0].wave;
  EXPECT_NEAR(after.amount.si(), before.amount.si(), 1e-15);
  EXPECT_NEAR(withinATurn(before.angle - after.angle).si(), degrees(60).si(), 1e-9);
}

TEST(EvenSamples, AnglesAreOnOneTurn) {
  EXPECT_NEAR(inDegrees(withinATurn(degrees(-90))), 270, 1e-9);
  EXPECT_NEAR(inDegrees(withinATurn(degrees(725))), 5, 1e-9);
  EXPECT_EQ(withinATurn(radians(-1e-20)).si(), 0) << "rounds to a whole turn, which is 0";
  EXPECT_FALSE(std::signbit(withinATurn(radians(-0.0)).si()));
}

}  // namespace
}  // namespace sw::mechanics
