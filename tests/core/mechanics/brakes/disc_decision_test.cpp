// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_decision.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

// Rules: common practice, no source. Figures are invented; u = 0.003 mm, so that 1.645 u = 0.0049
// mm is what has to be kept from a limit (JCGM 106, one-sided 95 %).

namespace sw::mechanics {
namespace {

MeasuredLength measured(double value) {
  return {millimetres(value), millimetres(0.003)};
}

DiscFigures good() {
  DiscFigures disc;
  disc.minimum = measured(13.2);
  disc.variation = measured(0.005);
  disc.runout = measured(0.05);
  disc.residual = measured(0.02);
  disc.firstOrder = millimetres(0.018);
  disc.cutPerSide = millimetres(0.15);
  return disc;
}

DiscDecisionInput pairOf(const DiscFigures& left, const DiscFigures& right) {
  DiscDecisionInput input;
  input.discs = {left, right};
  input.limits.discard = millimetres(12.0);
  input.limits.machineTo = millimetres(12.4);
  input.limits.variation = millimetres(0.015);
  input.limits.runout = millimetres(0.10);
  return input;
}

/// The action where the left disc is changed, and the same where the right one is.
template <class Change>
DiscAction actionWith(Change change) {
  DiscFigures changed = good();
  change(changed);
  const auto left = discDecision(pairOf(changed, good())).value();
  const auto right = discDecision(pairOf(good(), changed)).value();
  EXPECT_EQ(left.action, right.action) << "one disc decides for the axle, whichever it is";
  return left.action;
}

std::vector<DiscReason> reasonsOf(const DiscDecision& decision) {
  std::vector<DiscReason> reasons;
  for (const auto& finding : decision.findings) reasons.push_back(finding.reason);
  return reasons;
}

TEST(DiscDecision, GoodDiscsAreKept) {
  const auto got = discDecision(pairOf(good(), good())).value();
  EXPECT_EQ(got.action, DiscAction::Keep);
  EXPECT_THAT(reasonsOf(got), testing::ElementsAre(DiscReason::AllWithin));
}

TEST(DiscDecision, EveryRuleOnEitherDisc) {
  EXPECT_EQ(actionWith([](auto& d) { d.condition = DiscCondition::Cracks; }), DiscAction::Replace);
  EXPECT_EQ(actionWith([](auto& d) { d.condition = DiscCondition::BlueSpots; }),
            DiscAction::Replace);
  EXPECT_EQ(actionWith([](auto& d) { d.condition = DiscCondition::HeavyCorrosion; }),
            DiscAction::Replace);
  EXPECT_EQ(actionWith([](auto& d) { d.minimum = measured(11.9); }), DiscAction::Replace);
  EXPECT_EQ(actionWith([](auto& d) { d.variation = measured(0.04); }), DiscAction::Resurface);
  EXPECT_EQ(actionWith([](auto& d) { d.residual = measured(0.12); }), DiscAction::Resurface);
  EXPECT_EQ(actionWith([](auto& d) { d.runout = measured(0.16); }), DiscAction::CleanAndIndex);
  EXPECT_EQ(actionWith([](auto& d) { d.variation = measured(0.013); }), DiscAction::NotDecided);
  EXPECT_EQ(actionWith([](auto& d) { d.runout = measured(0.101); }), DiscAction::NotDecided);
  EXPECT_EQ(actionWith([](auto& d) { d.residual = measured(0.101); }), DiscAction::NotDecided);
}

TEST(DiscDecision, AMinimumThatIsNotProvedIsNeverKept) {
  for (const double off : {-0.0048, -0.001, 0.0, 0.001, 0.0048}) {
    EXPECT_EQ(actionWith([off](auto& d) { d.minimum = measured(12.0 + off); }),
              DiscAction::NotDecided)
        << off;
  }
  EXPECT_EQ(actionWith([](auto& d) { d.minimum = measured(12.0 + 0.0051); }), DiscAction::Keep);
  EXPECT_EQ(actionWith([](auto& d) { d.minimum = measured(12.0 - 0.0051); }), DiscAction::Replace);
}

TEST(DiscDecision, DiscardAndMachineToAreTwoLimits) {
  // Between the two: usable as it is, and not to be machined.
  EXPECT_EQ(actionWith([](auto& d) { d.minimum = measured(12.2); }), DiscAction::Keep);
  EXPECT_EQ(actionWith([](auto& d) {
              d.minimum = measured(12.2);
              d.variation = measured(0.04);
            }),
            DiscAction::Replace);
}

TEST(DiscDecision, WhatIsLeftAfterMachining) {
  // 11.957 - 2 x 0.15 = 11.657, below 11.70 (arithmetic): not machinable, so replaced.
  DiscFigures thin = good();
  thin.minimum = measured(11.957);
  thin.variation = measured(0.023);
  DiscDecisionInput input = pairOf(thin, thin);
  input.limits.discard = millimetres(11.4);
  input.limits.machineTo = millimetres(11.70);
  const auto got = discDecision(input).value();
  ASSERT_TRUE(got.discs[0].afterMachining);
  EXPECT_NEAR(inMillimetres(got.discs[0].afterMachining->value), 11.657, 1e-3);
  EXPECT_EQ(got.discs[0].afterMachining->verdict, Verdict::Outside);
  EXPECT_EQ(got.action, DiscAction::Replace);
  EXPECT_THAT(reasonsOf(got), testing::Contains(DiscReason::NotMachinable));
  input.limits.machineTo = millimetres(11.65);
  EXPECT_EQ(discDecision(input)->action, DiscAction::Resurface);
  input.limits.machineTo = millimetres(11.655);
  EXPECT_EQ(discDecision(input)->action, DiscAction::NotDecided);
}

TEST(DiscDecision, TheOtherDiscMustBearTheCutToo) {
  DiscFigures faulty = good();
  faulty.variation = measured(0.04);
  DiscFigures thin = good();
  thin.minimum = measured(12.5);  // sound itself, but 12.2 after the cut
  EXPECT_EQ(discDecision(pairOf(faulty, thin))->action, DiscAction::Replace);
}

TEST(DiscDecision, WithoutAMachiningLimitNothingIsMachined) {
  DiscFigures faulty = good();
  faulty.variation = measured(0.04);
  DiscDecisionInput input = pairOf(faulty, good());
  input.limits.machineTo.reset();
  const auto got = discDecision(input).value();
  EXPECT_EQ(got.action, DiscAction::NotDecided);
  EXPECT_THAT(reasonsOf(got), testing::Contains(DiscReason::MachiningUnknown));
}

TEST(DiscDecision, LeftAndRightMustStayAlike) {
  DiscFigures faulty = good();
  faulty.variation = measured(0.04);
  DiscFigures thick = good();
  thick.minimum = measured(13.9);
  const auto got = discDecision(pairOf(faulty, thick)).value();
  EXPECT_EQ(got.action, DiscAction::NotDecided);
  ASSERT_TRUE(got.differenceAfter);
  EXPECT_NEAR(inMillimetres(got.differenceAfter->value), 0.7, 1e-9);
  EXPECT_NEAR(inMillimetres(got.differenceAfter->standardUncertainty), 0.003 * std::sqrt(2.0),
              1e-9);
  EXPECT_THAT(reasonsOf(got), testing::Contains(DiscReason::DifferenceTooLarge));
  thick.cutPerSide = millimetres(0.45);
  EXPECT_EQ(discDecision(pairOf(faulty, thick))->action, DiscAction::Resurface);
}

TEST(DiscDecision, WhatWasNotMeasuredIsNotWithin) {
  EXPECT_EQ(actionWith([](auto& d) { d.variation.reset(); }), DiscAction::NotDecided);
  EXPECT_EQ(actionWith([](auto& d) { d.residual.reset(); }), DiscAction::NotDecided);
  EXPECT_EQ(actionWith([](auto& d) { d.runout.reset(); }), DiscAction::NotDecided);
  DiscFigures bare = good();
  bare.runout.reset();
  bare.residual.reset();
  const auto got = discDecision(pairOf(bare, good())).value();
  EXPECT_THAT(reasonsOf(got), testing::ElementsAre(DiscReason::RunoutMissing)) << "said once";
  DiscDecisionInput noLimits = pairOf(bare, bare);
  noLimits.limits.runout.reset();
  EXPECT_EQ(discDecision(noLimits)->action, DiscAction::Keep) << "no limit, nothing to judge";
}

TEST(DiscDecision, WorseNeverGetsABetterAnswer) {
  const auto rank = [](DiscAction action) {
    return action == DiscAction::Keep ? 0 : action == DiscAction::NotDecided ? 1 : 2;
  };
  int before = 0;
  for (double minimum = 12.1; minimum > 11.9; minimum -= 0.001) {
    const int now = rank(actionWith([minimum](auto& d) { d.minimum = measured(minimum); }));
    EXPECT_GE(now, before) << minimum;
    before = now;
  }
  EXPECT_EQ(before, 2);
}

TEST(DiscDecision, TiltIsTwiceTheFirstOrder) {
  const auto got = discDecision(pairOf(good(), good())).value();
  EXPECT_NEAR(inMillimetres(*got.discs[0].tilt), 0.036, 1e-12);
}

TEST(DiscDecision, RefusesWhatCannotBe) {
  const auto keyOf = [](auto change) {
    DiscDecisionInput input = pairOf(good(), good());
    change(input);
    const auto got = discDecision(input);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf([](auto& i) { i.limits.machineTo = millimetres(11.9); }),
            "disc_decision.machine_to_below_discard machine_to");
  EXPECT_EQ(keyOf([](auto& i) { i.limits.machineTo = i.limits.discard; }), "accepted");
  EXPECT_EQ(keyOf([](auto& i) { i.discs[1].minimum.value = {}; }),
            "measure.not_positive discs/1/minimum");
  EXPECT_EQ(keyOf([](auto& i) { i.discs[0].minimum.standardUncertainty = {}; }),
            "measure.not_positive discs/0/minimum_uncertainty")
      << "without an uncertainty nothing is proved";
  EXPECT_EQ(keyOf([](auto& i) { i.discs[0].cutPerSide = millimetres(-0.1); }),
            "measure.not_positive discs/0/cut_per_side");
  EXPECT_EQ(keyOf([](auto& i) { i.discs[0].variation->standardUncertainty = metres(NAN); }),
            "measure.not_finite discs/0/variation_uncertainty");
  EXPECT_EQ(keyOf([](auto& i) { i.confidence = 0.5; }), "measure.bad_confidence confidence");
}

}  // namespace
}  // namespace sw::mechanics
