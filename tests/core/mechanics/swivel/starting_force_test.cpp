// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/starting_force.h"

#include <cmath>
#include <limits>

#include "measure/type_b.h"

namespace sw {
namespace {

StartingPull pullOf(Force force, Length arm) {
  StartingPull pull;
  pull.force = force;
  pull.arm = arm;
  return pull;
}

struct TorqueRow {
  const char* id;
  Force force;
  Length arm;
  Angle offSquare;
  double expected;  ///< N m
  const char* source;
};

TEST(StartingForce, TorqueOfAPull) {
  // Exact factors: 1 kgf = 9.80665 N (CGPM 1901), 1 lbf = 0.45359237 kg x 9.80665 m/s2, 1 in = 25.4
  // mm.
  const TorqueRow rows[]{
      {"15 N at 150 mm, square", newtons(15), millimetres(150), {}, 2.25, "statics"},
      {"1.5 kgf at 160 mm", newtons(1.5 * 9.80665), millimetres(160), {}, 2.354, "statics"},
      {"3 lbf at 6 in",
       newtons(3 * 0.45359237 * 9.80665),
       millimetres(6 * 25.4),
       {},
       2.034,
       "statics"},
      {"20 N at 150 mm, 15 deg off", newtons(20), millimetres(150), degrees(15), 2.898,
       "statics: 3.000 cos 15"},
      {"the same to the other side", newtons(20), millimetres(150), degrees(-15), 2.898,
       "symmetry"}};
  for (const TorqueRow& row : rows) {
    StartingPull pull = pullOf(row.force, row.arm);
    pull.offSquare = row.offSquare;
    EXPECT_NEAR(inNewtonMetres(swivelTorque(pull).value().torque), row.expected, 0.001)
        << row.id << ", " << row.source;
  }
}

TEST(StartingForce, UncertaintyOfAPull) {
  // Scale resolution 0.5 N, calibration 1 % as u, arm u 1 mm; U (k = 2) 0.069 N m (hand
  // calculation).
  StartingPull pull = pullOf(newtons(15), millimetres(150));
  pull.forceUncertainty = newtons(std::hypot(0.5 / std::sqrt(12.0), 0.15));
  pull.armUncertainty = millimetres(1);
  const auto got = swivelTorque(pull).value();
  EXPECT_NEAR(2 * got.standardUncertainty.si(), 0.069, 0.002);
  EXPECT_EQ(got.degreesOfFreedom, std::nullopt);
  EXPECT_NEAR(got.expandedUncertainty.si(), 1.959964 * got.standardUncertainty.si(), 1e-7);
}

TEST(StartingForce, ForceTimesArm) {
  // 18.9 N (u 0.40), 0.180 m within +/-1 mm: 3.402 N m, u 0.0728222 (NumPy).
  StartingPull pull = pullOf(newtons(18.9), metres(0.180));
  pull.forceUncertainty = newtons(0.40);
  pull.armUncertainty = metres(measure::rectangular(0.001));
  const auto got = swivelTorque(pull).value();
  EXPECT_NEAR(got.torque.si(), 3.402, 1e-6);
  EXPECT_NEAR(got.standardUncertainty.si(), 0.0728222, 1e-6);
}

TEST(StartingForce, PullOffSquareOverReads) {
  // Share by which the scale reads high: 1 / cos - 1, table of plane statics.
  struct Row {
    double degreesOff, overRead;
  };
  for (const Row& row :
       {Row{5, 0.004}, Row{10, 0.015}, Row{15, 0.035}, Row{20, 0.064}, Row{30, 0.155}}) {
    StartingPull pull = pullOf(newtons(10), millimetres(150));
    pull.offSquare = degrees(row.degreesOff);
    const auto got = swivelTorque(pull).value();
    EXPECT_NEAR(pull.force / got.squareForce - 1, row.overRead, 5e-4) << row.degreesOff;
  }
}

TEST(StartingForce, MeasuredAngleAddsItsUncertainty) {
  // F 25 N at a measured 20 deg, +/-3 deg rectangular: useful 23.4923 N, u 0.258482 N (NumPy).
  StartingPull pull = pullOf(newtons(25), metres(1));
  pull.offSquare = degrees(20);
  pull.offSquareUncertainty = degrees(measure::rectangular(3));
  const auto got = swivelTorque(pull).value();
  EXPECT_NEAR(inNewtons(got.squareForce), 23.4923, 1e-4);
  EXPECT_NEAR(got.standardUncertainty.si(), 0.258482, 1e-5);
}

TEST(StartingForce, UnknownAngleCorrectsTheMean) {
  // Anywhere within +/-10 deg: mean of cos 0.9949308, spread 0.0045311 (SciPy 1.10.1).
  StartingPull pull = pullOf(newtons(20), metres(0.5));
  pull.offSquareWithin = degrees(10);
  const auto got = swivelTorque(pull).value();
  EXPECT_NEAR(got.torque.si(), 10 * 0.9949308, 1e-5);
  EXPECT_NEAR(got.standardUncertainty.si(), 10 * 0.0045311, 1e-6);
}

TEST(StartingForce, FewReadingsWidenTheInterval) {
  StartingPull pull = pullOf(newtons(20), metres(0.5));
  pull.forceUncertainty = newtons(0.5);
  pull.degreesOfFreedom = 4;
  const auto got = swivelTorque(pull).value();
  ASSERT_TRUE(got.degreesOfFreedom);
  EXPECT_NEAR(*got.degreesOfFreedom, 4, 1e-9);
  EXPECT_NEAR(got.coverageFactor, 2.7764, 5e-5);  // JCGM 100 table G.2
}

TEST(StartingForce, ForceForATorqueIsTheInverse) {
  const auto force = forceForTorque(newtonMetres(2.898), millimetres(150), degrees(15)).value();
  EXPECT_NEAR(inNewtons(force), 20, 0.005);
  StartingPull pull = pullOf(force, millimetres(150));
  pull.offSquare = degrees(15);
  EXPECT_NEAR(swivelTorque(pull).value().torque.si(), 2.898, 1e-12);
}

TEST(StartingForce, RefusesImpossibleInputs) {
  const auto keyOf = [](auto change) {
    StartingPull pull = pullOf(newtons(15), millimetres(150));
    change(pull);
    const auto got = swivelTorque(pull);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf([](StartingPull& p) { p.force = newtons(-1); }), "measure.not_positive force");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.arm = metres(0); }), "measure.not_positive arm");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.arm = metres(std::nan("")); }), "measure.not_finite arm");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.offSquare = degrees(90); }),
            "starting_force.not_square off_square");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.offSquareWithin = degrees(95); }),
            "starting_force.not_square off_square_within");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.armUncertainty = millimetres(-1); }),
            "measure.not_positive arm_uncertainty");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.degreesOfFreedom = 0; }),
            "measure.not_positive degrees_of_freedom");
  EXPECT_EQ(keyOf([](StartingPull&) {}), "accepted");
  EXPECT_EQ(keyOf([](StartingPull& p) { p.force = newtons(0); }), "accepted");
  EXPECT_EQ(swivelTorque(pullOf(newtons(15), metres(1)), 1.0).error().key,
            "measure.bad_confidence");
  EXPECT_EQ(forceForTorque(newtonMetres(2), metres(0), {}).error().field, "arm");
}

}  // namespace
}  // namespace sw
