// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/torque_plausibility.h"

#include <gmock/gmock.h>

#include "joints.h"
#include "units/parse.h"

namespace sw::mechanics {
namespace {

using C = StrengthClass;
using V = TorqueVerdict;

TorqueClaim claimOf(std::string_view torque, const char* thread = "M8",
                    C strengthClass = C::Iso8x8) {
  TorqueClaim claim;
  claim.torque = parseQuantity(torque, {"torque", QuantityKind::Torque, {}}).value().value;
  claim.thread = parseThread(thread).value();
  claim.strengthClass = strengthClass;
  return claim;
}
TorquePlausibility judged(std::string_view torque) {
  return judgeTorque(claimOf(torque)).value();
}

struct Row {
  const char* torque;
  double mu;
  double expected;
  double tolerance;
};

// M8 8.8 under a standard head, worked with Python from VDI 2230-1.
TEST(TorquePlausibility, UtilisationTable) {
  for (const Row& row : {Row{"25 N m", 0.08, 1.220, 0.004},
                         {"25 N m", 0.10, 1.043, 0.004},
                         {"25 N m", 0.12, 0.918, 0.004},
                         {"25 N m", 0.14, 0.826, 0.004},
                         {"25 N m", 0.20, 0.658, 0.004},
                         {"25 N m", 0.24, 0.593, 0.004},
                         {"250 N m", 0.08, 12.20, 0.04},
                         {"250 N m", 0.12, 9.18, 0.04},
                         {"250 N m", 0.24, 5.93, 0.04},
                         {"2.5 N m", 0.08, 0.122, 0.001},
                         {"2.5 N m", 0.14, 0.083, 0.001},
                         {"2.5 N m", 0.24, 0.059, 0.001},
                         {"33.895 N m", 0.08, 1.654, 0.005},
                         {"33.895 N m", 0.14, 1.120, 0.005},
                         {"25 lbf ft", 0.20, 0.892, 0.005},
                         {"25 lbf ft", 0.24, 0.804, 0.005}}) {
    TorqueClaim claim = claimOf(row.torque);
    claim.friction = {row.mu, row.mu};
    EXPECT_NEAR(judgeTorque(claim)->atLeastFriction, row.expected, row.tolerance)
        << row.torque << " at " << row.mu;
  }
}

// Bounds: common practice, no source.
TEST(TorquePlausibility, Verdicts) {
  EXPECT_EQ(judged("250 N m").verdict, V::Impossible);
  EXPECT_EQ(judged("2.5 N m").verdict, V::SuspiciouslyLow);
  EXPECT_EQ(judged("33.895 N m").verdict, V::Check) << "lbf ft taken for N m is not impossible";
  EXPECT_EQ(judged("25 N m").verdict, V::Note);
  EXPECT_EQ(judged("18 N m").verdict, V::Plausible);
  EXPECT_EQ(judged("45 N m").verdict, V::Impossible);
}

std::vector<std::string> textsOf(const TorquePlausibility& judged) {
  std::vector<std::string> texts;
  for (const auto& each : judged.readings) texts.push_back(each.torque.text());
  return texts;
}

// 250 kgf cm is 24.5 N m and 250 lbf in 28.2 N m by definition of the units.
TEST(TorquePlausibility, ProposesReadingsAndCorrectsNothing) {
  EXPECT_THAT(textsOf(judged("250 N m")),
              testing::UnorderedElementsAre("25 N m", "250 lbf in", "250 kgf cm"));
  EXPECT_THAT(textsOf(judged("2.5 N m")),
              testing::UnorderedElementsAre("25 N m", "2.5 kgf m", "2.5 daN m"));
  EXPECT_THAT(textsOf(judged("25 lbf ft")), testing::Contains("25 N m"));
  EXPECT_THAT(textsOf(judged("18 N m")), testing::IsEmpty());
  const auto got = judged("250 N m");
  for (const auto& each : got.readings) {
    EXPECT_GE(each.utilisation, 0.4);
    EXPECT_LE(each.utilisation, 1.0);
    EXPECT_EQ(each.as == Rereading::DecimalSlip, each.torque.unit == "N m") << each.torque.text();
  }
  EXPECT_NEAR(got.atMiddleFriction, 8.26, 0.04) << "the figure itself is judged as typed";
}

// Every torque whose tenfold must be found is found: u > 0.1 at 0.24; and u < 2 at 0.08 for a
// tenth.
TEST(TorquePlausibility, SlipsOfTenAreFound) {
  for (const char* thread : {"M6", "M8x1", "M12x1.25", "7/16-20"}) {
    const auto at = [&](double newtonMetres) {
      TorqueClaim claim = claimOf("1 N m", thread, C::Iso10x9);
      claim.torque.si = newtonMetres;
      return judgeTorque(claim).value();
    };
    const auto one = at(1);
    const double smallestTrue = 0.1001 / one.atGreatestFriction;
    const double largestTrue = 1.999 / one.atLeastFriction;
    EXPECT_EQ(at(10 * smallestTrue).verdict, V::Impossible) << thread;
    EXPECT_EQ(at(largestTrue / 10).verdict, V::SuspiciouslyLow) << thread;
    for (const double share : {0.3, 0.6, 0.9}) {
      const double right = share / one.atMiddleFriction;
      EXPECT_EQ(at(10 * right).verdict, V::Impossible) << thread << " " << share;
      EXPECT_EQ(at(right / 10).verdict, V::SuspiciouslyLow) << thread << " " << share;
    }
  }
}

V verdictFor(std::string_view torque, FastenerDuty duty) {
  TorqueClaim claim = claimOf(torque);
  claim.duty = duty;
  return judgeTorque(claim)->verdict;
}

TEST(TorquePlausibility, DutiesThatMeanItAreExempt) {
  for (const FastenerDuty duty :
       {FastenerDuty::AngleTightened, FastenerDuty::Bearing, FastenerDuty::TaperJoint}) {
    EXPECT_EQ(verdictFor("2.5 N m", duty), V::Exempt) << wordOf(duty);
    EXPECT_EQ(verdictFor("250 N m", duty), V::Impossible) << "no duty makes a slip right";
    EXPECT_EQ(verdictFor("18 N m", duty), V::Plausible) << wordOf(duty);
  }
  EXPECT_EQ(verdictFor("33.895 N m", FastenerDuty::AngleTightened), V::Exempt);
  EXPECT_EQ(verdictFor("33.895 N m", FastenerDuty::Bearing), V::Check);
  TorqueClaim claim = claimOf("2.5 N m");
  claim.duty = FastenerDuty::Bearing;
  EXPECT_EQ(judgeTorque(claim)->exemptFrom, V::SuspiciouslyLow);
}

TEST(TorquePlausibility, KnownFrictionMovesTheBounds) {
  TorqueClaim claim = claimOf("25 N m");
  claim.friction = {0.08, 0.10};
  EXPECT_EQ(judgeTorque(claim)->verdict, V::Check) << "greased it would yield";
  EXPECT_NEAR(judgeTorque(claim)->middleFriction, 0.10, 1e-15);
  claim.friction = {0.12, 0.16};
  EXPECT_EQ(judgeTorque(claim)->verdict, V::Plausible);
  claim = claimOf("45 N m");
  claim.friction = {0.20, 0.35};
  EXPECT_EQ(judgeTorque(claim)->verdict, V::Check) << "dry zinc takes more torque";
}

TEST(TorquePlausibility, RefusesWhatCannotBeJudged) {
  TorqueClaim claim = claimOf("25 N m");
  claim.torque.si = 0;
  EXPECT_EQ(judgeTorque(claim).error().field, "torque");
  claim = claimOf("25 N m");
  claim.friction = {0.2, 0.1};
  EXPECT_EQ(judgeTorque(claim).error().field, "friction");
  EXPECT_EQ(judgeTorque(claimOf("25 N m", "M20", C::Iso9x8)).error().key,
            "bolts.class_not_in_size");
}

}  // namespace
}  // namespace sw::mechanics
