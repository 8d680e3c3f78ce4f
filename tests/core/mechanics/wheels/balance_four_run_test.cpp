// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/balance_four_run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>
#include <random>
#include <string>

namespace sw::mechanics {
namespace {

Mass grams(double value) {
  return kilograms(value / 1000);
}

/// Readings of a linear wheel: |A0 + T exp(i (ti - heavy))|, written with the law of cosines.
FourRuns linearWheel(double a0, double effect, double heavySpot, double trialGrams = 20) {
  FourRuns runs;
  runs.initial = a0;
  runs.trialWeight = grams(trialGrams);
  for (std::size_t run = 0; run < 3; ++run) {
    const double apart = (120.0 * static_cast<double>(run) - heavySpot) * std::numbers::pi / 180;
    runs.withTrial[run] = std::sqrt(a0 * a0 + effect * effect + 2 * a0 * effect * std::cos(apart));
  }
  return runs;
}

TEST(BalanceFourRuns, WorkedRow) {
  // Textbook method: 30 g at 75 degrees made the readings, rounded to two decimals.
  const auto got = balanceFourRuns({3.00, {4.01, 4.64, 1.19}, grams(20), {}}).value();
  EXPECT_NEAR(got.unbalance.amount / grams(1), 29.97, 0.1);
  EXPECT_NEAR(inDegrees(got.unbalance.angle), 75.2, 0.3);
  EXPECT_NEAR(inDegrees(got.correction.angle), 255.2, 0.3);
  EXPECT_NEAR(got.agreement, 1, 0.01);
  EXPECT_FALSE(got.amountUncertainty);
}

TEST(BalanceFourRuns, FindsAnyHeavySpot) {
  for (int heavy = 0; heavy < 360; heavy += 17) {
    for (const double effect : {0.4, 1.0, 3.0}) {
      const auto got = balanceFourRuns(linearWheel(1.7, effect, heavy)).value();
      EXPECT_NEAR(got.unbalance.amount / grams(1), 20 * 1.7 / effect, 1e-9);
      EXPECT_NEAR(std::cos(got.unbalance.angle.si() - degrees(heavy).si()), 1, 1e-12);
      EXPECT_NEAR(std::cos(got.correction.angle.si() - degrees(heavy).si()), -1, 1e-12);
      EXPECT_NEAR(got.trialEffect, effect, 1e-12);
      EXPECT_NEAR(got.agreement, 1, 1e-12);
    }
  }
}

TEST(BalanceFourRuns, TheCorrectionLeavesNothing) {
  // Put on the wheel that made the readings: A0 exp(i heavy) + T / W * B = 0.
  const auto got = balanceFourRuns(linearWheel(2.5, 1.1, 200, 30)).value();
  const std::complex<double> vibration = std::polar(2.5, degrees(200).si());
  const std::complex<double> added =
      std::polar(1.1 * (got.correction.amount / grams(30)), got.correction.angle.si());
  EXPECT_NEAR(std::abs(vibration + added), 0, 1e-12);
}

TEST(BalanceFourRuns, RefusesAnImaginaryTrialEffect) {
  const auto got = balanceFourRuns({3.0, {2.9, 3.0, 2.8}, grams(20), {}});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().key, "balance.trial_imaginary");
  EXPECT_EQ(got.error().code, ErrorCode::Degenerate);
}

std::string keyOf(const FourRuns& runs) {
  const auto got = balanceFourRuns(runs);
  return got ? "accepted" : got.error().key;
}

TEST(BalanceFourRuns, RefusesRunsThatContradictEachOther) {
  // All three runs equally worse: no place for a heavy spot.
  EXPECT_EQ(keyOf({3.0, {4.0, 4.0, 4.0}, grams(20), {}}), "balance.runs_contradict");
  // A T too small for what differs between the three.
  EXPECT_EQ(keyOf({3.0, {5.0, 2.0, 1.2}, grams(20), {}}), "balance.runs_contradict");
  // A reading off by 0.3 is far beyond a stated 0.02, and within a stated 0.2.
  auto runs = linearWheel(3, 2, 75);
  runs.withTrial[2] += 0.3;
  runs.readingUncertainty = 0.02;
  EXPECT_EQ(keyOf(runs), "balance.runs_contradict");
  runs.readingUncertainty = 0.2;
  EXPECT_EQ(keyOf(runs), "accepted");
}

struct Spread {
  double amount = 0, angle = 0;
  int used = 0;
};

/// The spread of the answer when each reading is drawn anew.
Spread simulate(const FourRuns& exact, double u) {
  std::mt19937 random(12);
  std::normal_distribution<double> normal;
  const auto middle = balanceFourRuns(exact).value().unbalance;
  double amounts = 0, amountSquares = 0, angleSquares = 0;
  Spread spread;
  for (int draw = 0; draw < 20000; ++draw) {
    FourRuns runs = exact;
    runs.readingUncertainty = {};
    runs.initial += u * normal(random);
    for (double& reading : runs.withTrial) reading += u * normal(random);
    const auto got = balanceFourRuns(runs);
    if (!got) continue;
    const double grams1 = got->unbalance.amount / grams(1);
    amounts += grams1;
    amountSquares += grams1 * grams1;
    const double off =
        std::remainder(got->unbalance.angle.si() - middle.angle.si(), 2 * std::numbers::pi);
    angleSquares += off * off;
    ++spread.used;
  }
  const double mean = amounts / spread.used;
  spread.amount = std::sqrt(amountSquares / spread.used - mean * mean);
  spread.angle = std::sqrt(angleSquares / spread.used);
  return spread;
}

TEST(BalanceFourRuns, UncertaintyAgainstSimulation) {
  for (const double heavy : {10.0, 75.0, 230.0}) {
    FourRuns runs = linearWheel(3, 2, heavy);
    runs.readingUncertainty = 0.03;
    const auto claimed = balanceFourRuns(runs).value();
    const Spread spread = simulate(runs, 0.03);
    EXPECT_EQ(spread.used, 20000);
    ASSERT_TRUE(claimed.amountUncertainty && claimed.angleUncertainty);
    // 20000 draws know a spread to 0.5 %; the rest is for what is not linear.
    EXPECT_NEAR(*claimed.amountUncertainty / grams(1) / spread.amount, 1, 0.03) << heavy;
    EXPECT_NEAR(claimed.angleUncertainty->si() / spread.angle, 1, 0.03) << heavy;
  }
}

TEST(BalanceFourRuns, FewConsistentRunsAreCalledContradictory) {
  // Readings that differ only by their stated uncertainty pass three deviations 997 times in 1000.
  std::mt19937 random(5);
  std::normal_distribution<double> normal;
  int refused = 0;
  for (int draw = 0; draw < 4000; ++draw) {
    FourRuns runs = linearWheel(3, 2, 75);
    runs.readingUncertainty = 0.05;
    runs.initial += 0.05 * normal(random);
    for (double& reading : runs.withTrial) reading += 0.05 * normal(random);
    if (!balanceFourRuns(runs)) ++refused;
  }
  EXPECT_GT(refused, 1);
  EXPECT_LT(refused, 30);
}

TEST(BalanceFourRuns, UncertaintyScalesWithTheReadings) {
  FourRuns runs = linearWheel(3, 2, 75);
  runs.readingUncertainty = 0.02;
  const auto small = balanceFourRuns(runs).value();
  runs.readingUncertainty = 0.04;
  const auto large = balanceFourRuns(runs).value();
  EXPECT_NEAR(*large.amountUncertainty / *small.amountUncertainty, 2, 1e-9);
  EXPECT_NEAR(*large.angleUncertainty / *small.angleUncertainty, 2, 1e-9);
}

TEST(BalanceFourRuns, RefusesWhatCannotBe) {
  const auto fieldOf = [](auto change) {
    FourRuns runs = linearWheel(3, 2, 75);
    change(runs);
    return balanceFourRuns(runs).error().field;
  };
  EXPECT_EQ(fieldOf([](FourRuns& r) { r.initial = 0; }), "initial");
  EXPECT_EQ(fieldOf([](FourRuns& r) { r.withTrial[2] = -1; }), "with_trial/2");
  EXPECT_EQ(fieldOf([](FourRuns& r) { r.trialWeight = {}; }), "trial_weight");
  EXPECT_EQ(fieldOf([](FourRuns& r) { r.readingUncertainty = 0; }), "reading_uncertainty");
  EXPECT_EQ(fieldOf([](FourRuns& r) { r.withTrial[0] = std::nan(""); }), "with_trial/0");
}

}  // namespace
}  // namespace sw::mechanics
