// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/clamp_force.h"

#include <cmath>
#include <numbers>

#include "joints.h"

namespace sw::mechanics {
namespace {

using bolts_testing::both;
using bolts_testing::joint;

struct FactorRow {
  const char* thread;
  double mu;
  double factor;
  double tolerance;
};

// K = [P/(2 pi) + 0.577 d2 mu + D_Km/2 mu] / d, worked with Python from the form of VDI 2230-1; the
// published band for mu 0.08 to 0.14 is 0.12 to 0.19.
TEST(NutFactor, IsNotTheCoefficientOfFriction) {
  for (const FactorRow& row :
       {FactorRow{"M10", 0.12, 0.1633, 0.0010}, FactorRow{"M8", 0.08, 0.118, 0.001},
        FactorRow{"M8", 0.14, 0.188, 0.001}, FactorRow{"M10", 0.08, 0.117, 0.001},
        FactorRow{"M10", 0.10, 0.140, 0.001}, FactorRow{"M10", 0.14, 0.187, 0.001},
        FactorRow{"M10", 0.16, 0.210, 0.001}, FactorRow{"M10", 0.24, 0.303, 0.001}}) {
    EXPECT_NEAR(nutFactor(joint(row.thread), both(row.mu)), row.factor, row.tolerance)
        << row.thread << " at " << row.mu;
  }
}

// Exact form with a collar of 1.25 d: about 0.20 at mu 0.15 (Shigley, from memory); 0.1967 worked
// with Python from F d2/2 tan(phi + rho') + mu F 0.625 d.
TEST(NutFactor, ExactFormOfTheScrew) {
  const auto collar =
      boltJoint(parseThread("M10").value(), millimetres(12.5), TorqueFormula::Exact);
  EXPECT_NEAR(nutFactor(*collar, both(0.15)), 0.1967, 0.001);
  EXPECT_NEAR(nutFactor(*collar, both(0.15)), 0.20, 0.005);
  const BoltJoint& m10 = *collar;
  const double phi = std::atan(1.5 / (std::numbers::pi * 9.0257));
  const double rho = std::atan(0.15 / std::cos(std::numbers::pi / 6));
  const double lever = 9.0257 / 2 * std::tan(phi + rho) + 0.15 * 12.5 / 2;  // mm
  EXPECT_NEAR(nutFactor(m10, both(0.15)), lever / 10, 1e-5);
}

TEST(ClampForce, TheLinearFormGivesSlightlyMoreForce) {
  for (const char* thread : {"M6", "M8", "M10", "M12", "M14"}) {
    const Force linear = clampForce(newtonMetres(20), joint(thread), both(0.12));
    const Force exact =
        clampForce(newtonMetres(20), joint(thread, TorqueFormula::Exact), both(0.12));
    EXPECT_GT(linear / exact - 1, 0.0025) << thread;
    EXPECT_LT(linear / exact - 1, 0.0055) << thread;
  }
}

// T = K d F: 70 % of proof on M12 8.8 is 34 226 N.
TEST(ShortForm, TorqueFromForceAndBack) {
  const auto torque = torqueByNutFactor(newtons(34226), 0.20, millimetres(12));
  EXPECT_NEAR(inNewtonMetres(*torque), 82.14, 0.01);
  EXPECT_NEAR(inNewtons(*clampForceByNutFactor(*torque, 0.20, millimetres(12))), 34226, 1e-6);
  EXPECT_NEAR(*nutFactorFrom(*torque, newtons(34226), millimetres(12)), 0.20, 1e-12);
}

// Published torques of aircraft bolts: 3/8 in, 5788 lbf, 28.9 lbf ft cadmium plated dry, 19.9 lbf
// ft with moly paste.
TEST(ShortForm, NutFactorsOfPublishedTorques) {
  const auto factor = [](double poundFeetTorque) {
    return *nutFactorFrom(poundFeet(poundFeetTorque), poundsForce(5788), inches(0.375));
  };
  EXPECT_NEAR(factor(28.9), 0.160, 0.0005);
  EXPECT_NEAR(factor(19.9), 0.110, 0.0005);
}

// SAE J429: 75 % of the proof load of 1/2-20 grade 5 with K 0.20. Their area is rounded: 0.1599
// in2.
TEST(ShortForm, HalfInchGradeFive) {
  const Thread thread = parseThread("1/2-20").value();
  const Strength strength = strengthOf(StrengthClass::SaeGrade5, thread.diameter).value();
  const Force force = 0.75 * loadAt(strength.proof, threadGeometry(thread).value().stressArea);
  EXPECT_NEAR(inPoundsForce(force), 10194, 0.0005 * 10194);
  const Torque torque = torqueByNutFactor(force, 0.20, thread.diameter).value();
  EXPECT_NEAR(inPoundFeet(torque), 84.95, 0.0005 * 84.95);
  EXPECT_NEAR(inNewtonMetres(torque), 115.17, 0.0005 * 115.17);
}

TEST(ShortForm, RefusesWhatIsNotPositive) {
  EXPECT_EQ(nutFactorFrom(newtonMetres(0), newtons(1), metres(1)).error().field, "torque");
  EXPECT_EQ(nutFactorFrom(newtonMetres(1), newtons(-1), metres(1)).error().field, "clamp_force");
  EXPECT_EQ(clampForceByNutFactor(newtonMetres(1), 0, metres(1)).error().field, "nut_factor");
  EXPECT_EQ(torqueByNutFactor(newtons(1), 0.2, metres(0)).error().field, "diameter");
  EXPECT_EQ(torqueByNutFactor(newtons(std::nan("")), 0.2, metres(1)).error().key,
            "measure.not_finite");
}

// 10 / 40 / 50 is the rule of thumb; M10 at mu 0.12 worked with Python.
TEST(TorqueShares, WhereTheTorqueGoes) {
  const TorqueShares shares = torqueShares(joint("M10"), both(0.12));
  EXPECT_NEAR(shares.stretch, 0.146, 0.001);
  EXPECT_NEAR(shares.thread, 0.383, 0.001);
  EXPECT_NEAR(shares.head, 0.471, 0.001);
  EXPECT_NEAR(shares.undoing, 0.708, 0.001);
}

TEST(TorqueShares, UndoingLacksTheStretchTwice) {
  // Linear: undoing = friction - stretch, tightening = friction + stretch.
  for (const double mu : {0.04, 0.12, 0.4}) {
    const TorqueShares shares = torqueShares(joint("M12x1.25"), both(mu));
    EXPECT_NEAR(shares.undoing, 1 - 2 * shares.stretch, 1e-12);
    EXPECT_NEAR(shares.stretch + shares.thread + shares.head, 1, 1e-12);
  }
  // Exact: F d2/2 tan(rho' - phi) + mu F D/2.
  const BoltJoint exact = joint("M10", TorqueFormula::Exact);
  const double phi = std::atan(1.5 / (std::numbers::pi * 9.0257));
  const double rho = std::atan(0.12 / std::cos(std::numbers::pi / 6));
  const double lever = 9.0257 / 2 * std::tan(rho - phi) + 0.12 * 12.815 / 2;  // mm
  EXPECT_NEAR(inNewtonMetres(undoingTorque(newtons(1e6), exact, both(0.12))), lever * 1000, 0.02);
}

// The same torque on M10: worked with Python.
TEST(ClampForce, LessFrictionIsMoreForce) {
  const auto force = [](double mu) { return clampForce(newtonMetres(45), joint("M10"), both(mu)); };
  EXPECT_NEAR(force(0.10) / force(0.14), 1.332, 0.003);
  EXPECT_NEAR(force(0.08) / force(0.14), 1.597, 0.003);
}

TEST(ClampForce, TorqueAndForceAreInverse) {
  for (const auto formula : {TorqueFormula::Linear, TorqueFormula::Exact}) {
    for (const char* thread : {"M5", "M14x1.5", "7/16-20", "1-8"}) {
      const BoltJoint each = joint(thread, formula);
      const Friction friction{0.11, 0.17};
      const Torque torque = tighteningTorque(newtons(12000), each, friction);
      EXPECT_NEAR(inNewtons(clampForce(torque, each, friction)), 12000, 1e-8) << thread;
      EXPECT_LT(undoingTorque(newtons(12000), each, friction), torque) << thread;
    }
  }
}

TEST(ClampForce, ImpliedFrictionMakesThatForce) {
  const BoltJoint each = joint("M10x1.25");
  const Torque torque = tighteningTorque(newtons(20000), each, both(0.137));
  EXPECT_NEAR(impliedFriction(torque, newtons(20000), each).value(), 0.137, 1e-12);
  // P / (2 pi) is 0.199 mm: less torque per force is not possible.
  EXPECT_FALSE(impliedFriction(newtonMetres(3.9), newtons(20000), each));
}

TEST(ClampForce, JointNeedsAFrictionDiameter) {
  const Thread thread = parseThread("M10").value();
  EXPECT_EQ(boltJoint(thread, millimetres(0)).error().field, "friction_diameter");
  EXPECT_EQ(boltJoint({}, millimetres(1)).error().field, "diameter");
}

// VDI 2230-1, friction classes.
TEST(JointFriction, Classes) {
  const auto range = [](FrictionClass each) { return frictionOf(each, {}, {}).value(); };
  EXPECT_EQ(range(FrictionClass::A).least, 0.04);
  EXPECT_EQ(range(FrictionClass::A).most, 0.10);
  EXPECT_EQ(range(FrictionClass::B).least, 0.08);
  EXPECT_EQ(range(FrictionClass::B).most, 0.16);
  EXPECT_EQ(range(FrictionClass::C).least, 0.14);
  EXPECT_EQ(range(FrictionClass::C).most, 0.24);
  EXPECT_EQ(range(FrictionClass::D).least, 0.20);
  EXPECT_EQ(range(FrictionClass::D).most, 0.35);
  EXPECT_EQ(frictionOf(FrictionClass::E, {}, {}).error().key, "bolts.open_friction_class");
  EXPECT_EQ(frictionOf(FrictionClass::E, {}, 0.5).value().least, 0.30);
  EXPECT_EQ(frictionOf(FrictionClass::B, 0.1, {}).value().least, 0.1);
  EXPECT_EQ(frictionOf(FrictionClass::B, 0.2, {}).error().key, "bolts.bad_friction");
}

TEST(JointFriction, RangesOutOfOrderAreRefused) {
  EXPECT_TRUE(checkFriction({0.1, 0.1}, "friction"));
  for (const FrictionRange& range :
       {FrictionRange{0, 0.1}, {0.2, 0.1}, {0.1, 1.01}, {std::nan(""), 0.1}, {0.1, std::nan("")}}) {
    EXPECT_EQ(checkFriction(range, "friction").error().key, "bolts.bad_friction");
  }
}

struct FaceRow {
  const char* thread;
  double diameter;  ///< mm
  FrictionDiameterFrom from;
};

// (d_w + d_h) / 2: ISO 4014 grade A, ISO 273 medium. Without a standard head 1.3 d.
TEST(JointFriction, FaceThatRubs) {
  for (const FaceRow& row : {FaceRow{"M5", 6.19, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M6", 7.74, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M8x1", 10.315, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M10x1.25", 12.815, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M12", 15.065, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M14", 17.435, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M16", 19.995, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M18", 22.67, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M20", 25.095, FrictionDiameterFrom::StandardHead},
                             FaceRow{"M7", 9.1, FrictionDiameterFrom::RuleOfThumb},
                             FaceRow{"1/2-20", 16.51, FrictionDiameterFrom::RuleOfThumb}}) {
    const auto got = frictionDiameter(parseThread(row.thread).value(), {}).value();
    EXPECT_NEAR(inMillimetres(got.diameter), row.diameter, 1e-9) << row.thread;
    EXPECT_EQ(got.from, row.from) << row.thread;
  }
}

TEST(JointFriction, AGivenFaceGoesFirst) {
  const Thread m10 = parseThread("M10").value();
  const Thread inch = parseThread("1/2-20").value();
  const auto given = frictionDiameter(m10, {millimetres(21), {}}).value();
  EXPECT_NEAR(inMillimetres(given.diameter), 16, 1e-9);
  EXPECT_EQ(given.from, FrictionDiameterFrom::Given);
  EXPECT_EQ(frictionDiameter(inch, {millimetres(20), {}}).error().field, "hole_diameter");
  EXPECT_EQ(frictionDiameter(inch, {{}, millimetres(13)}).error().field, "bearing_diameter");
  EXPECT_EQ(frictionDiameter(m10, {millimetres(11), {}}).error().key, "bolts.face_inside_hole");
  EXPECT_EQ(frictionDiameter(m10, {millimetres(-1), millimetres(-2)}).error().key,
            "measure.not_positive");
}

}  // namespace
}  // namespace sw::mechanics
