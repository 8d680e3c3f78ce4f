// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/balance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace sw::mechanics {
namespace {

Polar at(double amount, double angle) {
  return {amount, degrees(angle)};
}
WeightVector weight(double grams, double angle) {
  return {kilograms(grams / 1000), degrees(angle)};
}
double inGrams(const WeightVector& vector) {
  return inKilograms(vector.amount) * 1000;
}

void expectWeight(const WeightVector& got, double grams, double angle, double tolerance,
                  double angleTolerance) {
  EXPECT_NEAR(inGrams(got), grams, tolerance);
  EXPECT_NEAR(inDegrees(got.angle), angle, angleTolerance);
}

// A two-plane turbine rotor, Rao, Mechanical Vibrations (from memory of the data); "left" is inner.
TwoPlaneRuns rotor() {
  TwoPlaneRuns runs;
  runs.initial = {at(8.5, 60), at(6.5, 205)};
  runs.trialWeights = {weight(10, 270), weight(12, 180)};
  runs.withTrial[0] = {at(6.0, 125), at(4.5, 230)};
  runs.withTrial[1] = {at(6.0, 35), at(10.5, 160)};
  return runs;
}

TEST(BalanceTwoPlanes, PublishedRotor) {
  const auto got = balanceTwoPlanes(rotor()).value();
  // The unbalance as printed; the correction stands opposite.
  expectWeight(got.unbalance[0], 10.0561, 145.5548, 1e-3, 0.01);
  expectWeight(got.unbalance[1], 5.8774, 248.2559, 1e-3, 0.01);
  expectWeight(got.correction[0], 10.0561, 325.555, 1e-3, 0.01);
  expectWeight(got.correction[1], 5.8774, 68.256, 1e-3, 0.01);
  EXPECT_NEAR(got.influence[0][0].amount / 1000, 0.80711, 1e-4);  // for one gram
  EXPECT_NEAR(inDegrees(got.influence[0][0].angle), 287.644, 1e-3);
}

TEST(BalanceTwoPlanes, CorrectionBySubstitutionAndTheTrapOfTheUnbalance) {
  const auto runs = rotor();
  const auto got = balanceTwoPlanes(runs).value();
  const PlanePair left = residual(runs.initial, got.influence, got.correction);
  const PlanePair trap = residual(runs.initial, got.influence, got.unbalance);
  for (const std::size_t plane : {0U, 1U}) {
    EXPECT_NEAR(left[plane].amount, 0, 1e-12);
    EXPECT_NEAR(trap[plane].amount, 2 * runs.initial[plane].amount, 1e-9) << "doubled";
  }
}

TEST(BalanceTwoPlanes, ResidualWithATrialWeightIsThatRun) {
  const auto runs = rotor();
  const auto got = balanceTwoPlanes(runs).value();
  const PlanePair first =
      residual(runs.initial, got.influence, {runs.trialWeights[0], WeightVector{}});
  const PlanePair second =
      residual(runs.initial, got.influence, {WeightVector{}, runs.trialWeights[1]});
  for (const std::size_t plane : {0U, 1U}) {
    EXPECT_NEAR(first[plane].amount, runs.withTrial[0][plane].amount, 1e-12);
    EXPECT_NEAR(inDegrees(first[plane].angle), inDegrees(runs.withTrial[0][plane].angle), 1e-9);
    EXPECT_NEAR(second[plane].amount, runs.withTrial[1][plane].amount, 1e-12);
    EXPECT_NEAR(inDegrees(second[plane].angle), inDegrees(runs.withTrial[1][plane].angle), 1e-9);
  }
}

TEST(BalanceTwoPlanes, FindsTheWeightsThatMadeTheVibration) {
  // Forward simulation: readings made from known weights and any linear wheel.
  std::mt19937 random(99);
  std::uniform_real_distribution<double> size(0.2, 2), turn(0, 360);
  for (int round = 0; round < 200; ++round) {
    std::array<PlanePair, 2> influence{};
    for (auto& row : influence)
      row = {at(size(random) * 90, turn(random)), at(size(random) * 40, turn(random))};
    influence[1] = {at(size(random) * 40, turn(random)), at(size(random) * 90, turn(random))};
    const WeightPair made{weight(20 * size(random), turn(random)),
                          weight(20 * size(random), turn(random))};
    TwoPlaneRuns runs;
    runs.initial = residual(PlanePair{}, influence, made);
    runs.trialWeights = {weight(15, turn(random)), weight(25, turn(random))};
    runs.withTrial[0] = residual(runs.initial, influence, {runs.trialWeights[0], {}});
    runs.withTrial[1] = residual(runs.initial, influence, {WeightVector{}, runs.trialWeights[1]});
    const auto got = balanceTwoPlanes(runs);
    ASSERT_TRUE(got);
    if (got->condition > 1e4) continue;
    for (const std::size_t plane : {0U, 1U}) {
      EXPECT_NEAR(inGrams(got->unbalance[plane]), inGrams(made[plane]), 1e-6);
      EXPECT_NEAR(std::cos(got->unbalance[plane].angle.si() - made[plane].angle.si()), 1, 1e-9);
    }
  }
}

TEST(BalanceTwoPlanes, ConditionOfKnownMatrices) {
  // Readings that answer each plane alone: singular values are the amounts themselves.
  TwoPlaneRuns runs;
  runs.initial = {at(1, 0), at(1, 0)};
  runs.trialWeights = {weight(10, 0), weight(10, 0)};
  runs.withTrial[0] = {at(1 + 4, 0), at(1, 0)};
  runs.withTrial[1] = {at(1, 0), at(1 + 1, 0)};
  EXPECT_NEAR(balanceTwoPlanes(runs).value().condition, 4, 1e-9);
  runs.withTrial[1] = {at(1, 0), at(1 + 4, 0)};
  EXPECT_NEAR(balanceTwoPlanes(runs).value().condition, 1, 1e-6);
}

TEST(BalanceTwoPlanes, RefusesWhatHasNoAnswer) {
  auto runs = rotor();
  runs.withTrial[0] = runs.initial;
  EXPECT_EQ(balanceTwoPlanes(runs).error().key, "balance.no_effect");
  EXPECT_EQ(balanceTwoPlanes(runs).error().field, "trial_inner");
  runs = rotor();
  runs.withTrial[1] = runs.withTrial[0];
  runs.trialWeights[1] = runs.trialWeights[0];
  EXPECT_EQ(balanceTwoPlanes(runs).error().key, "balance.planes_alike");
  EXPECT_EQ(balanceTwoPlanes(runs).error().code, ErrorCode::Degenerate);
  runs = rotor();
  runs.trialWeights[1].amount = {};
  EXPECT_EQ(balanceTwoPlanes(runs).error().field, "trial_outer/weight/amount");
  runs = rotor();
  runs.withTrial[1][0].amount = -1;
  EXPECT_EQ(balanceTwoPlanes(runs).error().field, "trial_outer/inner/amount");
  runs = rotor();
  runs.initial[1].angle = radians(std::nan(""));
  EXPECT_EQ(balanceTwoPlanes(runs).error().field, "initial/outer/angle");
}

TEST(BalanceOnePlane, WorkedRow) {
  // V0 3.00 at 245; 20 g at 0 make 1.51 at 297: 25.13 g at 29.9, B = -V0 / a.
  const OnePlaneRuns runs{at(3.00, 245), weight(20, 0), at(1.51, 297)};
  const auto got = balanceOnePlane(runs).value();
  expectWeight(got.correction, 25.13, 29.9, 0.05, 0.2);
  EXPECT_NEAR(residual(runs.initial, got.influence, got.correction).amount, 0, 1e-12);
  EXPECT_NEAR(residual(runs.initial, got.influence, got.unbalance).amount, 6.00, 1e-9);
  EXPECT_FALSE(got.trialTooSmall);
}

TEST(BalanceOnePlane, ATrialWeightOnTheHeavySpotAndOppositeIt) {
  // The trial doubles the vibration: it sits on the heavy spot and is as much as it.
  const auto on = balanceOnePlane({at(2, 30), weight(15, 100), at(4, 30)}).value();
  expectWeight(on.unbalance, 15, 100, 1e-9, 1e-9);
  expectWeight(on.correction, 15, 280, 1e-9, 1e-9);
  // It takes all vibration away: it is the correction.
  const auto off = balanceOnePlane({at(2, 30), weight(15, 100), at(0, 0)}).value();
  expectWeight(off.correction, 15, 100, 1e-9, 1e-9);
}

TEST(BalanceOnePlane, SaysWhereTheTrialWeightChangesLittle) {
  // Common practice, no source: less than 30 % and less than 30 degrees.
  EXPECT_TRUE(balanceOnePlane({at(2, 10), weight(5, 0), at(2.2, 355)}).value().trialTooSmall);
  EXPECT_FALSE(balanceOnePlane({at(2, 10), weight(5, 0), at(2.2, 325)}).value().trialTooSmall);
  EXPECT_FALSE(balanceOnePlane({at(2, 10), weight(5, 0), at(2.8, 10)}).value().trialTooSmall);
}

TEST(BalanceOnePlane, RefusesWhatHasNoAnswer) {
  EXPECT_EQ(balanceOnePlane({at(2, 10), weight(5, 0), at(2, 370)}).error().key,
            "balance.no_effect");
  EXPECT_EQ(balanceOnePlane({at(2, 10), weight(0, 0), at(1, 0)}).error().field,
            "trial_weight/amount");
  EXPECT_EQ(balanceOnePlane({at(-2, 10), weight(5, 0), at(1, 0)}).error().field, "initial/amount");
}

TEST(Polar, AnglesStayWithinATurn) {
  EXPECT_NEAR(inDegrees(withinATurn(degrees(-30))), 330, 1e-12);
  EXPECT_NEAR(inDegrees(withinATurn(degrees(750))), 30, 1e-9);
  EXPECT_EQ(withinATurn(degrees(0)).si(), 0);
  EXPECT_LT(inDegrees(withinATurn(radians(-1e-20))), 360);
  const Polar back = toPolar(toComplex({2.5, degrees(200)}));
  EXPECT_NEAR(back.amount, 2.5, 1e-12);
  EXPECT_NEAR(inDegrees(back.angle), 200, 1e-9);
}

}  // namespace
}  // namespace sw::mechanics
