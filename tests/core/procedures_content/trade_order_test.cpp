// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <functional>

#include "plan_walk.h"
#include "shipped.h"

// The order of the work (common practice, no source, except where a test names one).

namespace sw::test {
namespace {

using Walk = std::vector<WalkedStep>;
using Match = std::function<bool(const WalkedStep&)>;

const std::vector<model::Side> kBothSides{model::Side::Left, model::Side::Right};

FactWords usualAxle() {
  return {{"support", "stands"},
          {"drag_link_side", "right"},
          {"steering_arm_on_cap", "yes"},
          {"lubricant", "oil"},
          {"shim_ends", "top"},
          {"shim_layout", "cap_flange"},
          {"swivel_bearing", "taper"},
          {"drag_link_fixes_to", "steering_arm"},
          {"damper_fixes_to", "track_rod"},
          {"disc_mount", "behind_hub"},
          {"abs_lead", "no"},
          {"locking_hubs", "no"}};
}

Walk wholeJob() {
  return walk(runsOfPlan("swivel-preload"), usualAxle(), kBothSides);
}

std::ptrdiff_t first(const Walk& job, const Match& match) {
  const auto found = std::find_if(job.begin(), job.end(), match);
  EXPECT_NE(found, job.end());
  return found - job.begin();
}

std::ptrdiff_t last(const Walk& job, const Match& match) {
  const auto found = std::find_if(job.rbegin(), job.rend(), match);
  EXPECT_NE(found, job.rend());
  return job.rend() - found - 1;
}

Match moves(const std::string& item, model::LedgerState to) {
  return [=](const WalkedStep& walked) {
    const auto& effects = walked.step->ledger;
    return std::any_of(effects.begin(), effects.end(),
                       [&](const auto& effect) { return effect.item == item && effect.to == to; });
  };
}

Match holdOf(const std::string& key) {
  return
      [=](const WalkedStep& walked) { return walked.step->hold && walked.step->hold->key == key; };
}

Match torques(const std::string& item) {
  return [=](const WalkedStep& walked) {
    return walked.step->torque && walked.step->torque->item == item;
  };
}

Match stepOf(const std::string& procedure, const std::string& step) {
  return [=](const WalkedStep& walked) {
    return walked.procedure->id == procedure && walked.step->id == step;
  };
}

using model::LedgerState;

TEST(TradeOrder, SupportIsAnsweredBeforeAWheelComesOff) {
  const Walk job = wholeJob();
  const auto raised = first(job, [](const WalkedStep& w) { return w.step->raisesVehicle; });
  EXPECT_EQ(raised, first(job, holdOf("support")));
  EXPECT_LT(raised, first(job, moves("wheel", LedgerState::Off)));
}

TEST(TradeOrder, RockTestsComeWhileWheelAndCaliperAreOn) {
  const Walk job = wholeJob();
  const auto rocked =
      last(job, [](const WalkedStep& w) { return w.procedure->id == "rock-tests"; });
  EXPECT_LT(rocked, first(job, moves("wheel", LedgerState::Off)));
  EXPECT_LT(rocked, first(job, moves("caliper", LedgerState::Off)));
}

TEST(TradeOrder, TheAsFoundPullComesWithAllDragOffAndTheCapUntouched) {
  const Walk job = wholeJob();
  const auto pull = first(job, stepOf("as-found-pull", "pull_ahead"));
  for (const char* item : {"track_rod", "drag_link", "damper", "seal_retainer", "swivel_seal"}) {
    EXPECT_LT(last(job, moves(item, LedgerState::Off)), pull) << item;
  }
  EXPECT_LT(last(job, stepOf("prepare-to-measure", "swing")), pull);
  EXPECT_GT(first(job, moves("upper_cap", LedgerState::Off)), pull);
}

TEST(TradeOrder, TheDragLinkIsOffBeforeACapThatCarriesTheArm) {
  const Walk job = wholeJob();
  EXPECT_LT(first(job, moves("drag_link", LedgerState::Off)),
            first(job, stepOf("cap-off-and-pack", "free_collars")));
  EXPECT_LT(first(job, stepOf("cap-off-and-pack", "free_collars")),
            first(job, moves("upper_cap", LedgerState::Off)));
}

TEST(TradeOrder, ThePedalIsGuardedWhileACaliperIsOff) {
  const Walk job = wholeJob();
  EXPECT_LT(first(job, moves("brake_pedal_guard", LedgerState::On)),
            first(job, moves("caliper", LedgerState::Off)));
  EXPECT_GT(first(job, moves("brake_pedal_guard", LedgerState::TakenOff)),
            last(job, torques("caliper")));
}

TEST(TradeOrder, OilGoesInAfterTheLastSealing) {
  const Walk job = wholeJob();
  EXPECT_GT(first(job, moves("swivel_oil", LedgerState::Back)),
            last(job, stepOf("seal-the-cap", "bead")));
}

TEST(TradeOrder, TheSealantTimerWaitsOnlyOnOilFilledHubs) {
  auto axle = usualAxle();
  axle["observed.sealed_pull"] = "alike";
  const auto waits = [](const Walk& steps) {
    return std::count_if(steps.begin(), steps.end(),
                         [](const WalkedStep& w) { return w.step->waitMinutes.has_value(); });
  };
  EXPECT_EQ(waits(walk({{"refit-swivel"}}, axle, kBothSides)), 2);
  axle["lubricant"] = "grease";
  EXPECT_EQ(waits(walk({{"refit-swivel"}}, axle, kBothSides)), 0);
  EXPECT_EQ(waits(walk({{"refit-swivel"}}, usualAxle(), kBothSides)), 0);  // cap never opened
}

// Trade advice on wheel nuts: final tightening with the wheels on the ground (DVSA and tyre-trade
// leaflets).
TEST(TradeOrder, WheelNutsAreTightenedOnTheGround) {
  const Walk job = wholeJob();
  const auto down = first(job, [](const WalkedStep& w) { return w.step->lowersVehicle; });
  EXPECT_LT(first(job, moves("wheel", LedgerState::HandTight)), down);
  EXPECT_GT(first(job, torques("wheel")), down);
}

TEST(TradeOrder, PedalAndNutsAreAnsweredBeforeItMovesAndTheChocksGo) {
  const Walk job = wholeJob();
  const auto chocks = first(job, moves("wheel_chocks", LedgerState::TakenOff));
  EXPECT_LT(first(job, holdOf("brakes_and_steering")), chocks);
  EXPECT_LT(first(job, holdOf("wheel_nuts")), chocks);
  const auto drive = first(job, [](const WalkedStep& w) {
    return w.step->roadTest && w.step->roadTest->when == model::RoadTestWhen::After;
  });
  EXPECT_LT(chocks, drive);
}

TEST(TradeOrder, WhatDiffersBetweenTheSidesFollowsTheDragLink) {
  for (const std::string side : {"left", "right"}) {
    auto axle = usualAxle();
    axle["drag_link_side"] = side;
    for (const WalkedStep& walked : walk(runsOfPlan("swivel-preload"), axle, kBothSides)) {
      const bool linkWork = moves("drag_link", LedgerState::Off)(walked) ||
                            walked.step->id == "cap_torque_arm" ||
                            walked.step->id == "free_collars";
      if (!linkWork) continue;
      ASSERT_TRUE(walked.side.has_value());
      EXPECT_EQ(wordOf(*walked.side), side) << walked.step->id;
    }
  }
}

TEST(TradeOrder, TheCapIsTightenedOnceASideAndFitting) {
  for (const std::string arm : {"yes", "no"}) {
    auto axle = usualAxle();
    axle["steering_arm_on_cap"] = arm;
    const Walk fit = walk({{"fit-shims-and-pull"}}, axle, kBothSides);
    EXPECT_EQ(std::count_if(fit.begin(), fit.end(), torques("upper_cap")), 2) << arm;
  }
}

TEST(TradeOrder, DamperAndCasterAreSuspectedLast) {
  const auto* procedure = shippedLibrary().procedure("what-else-to-suspect");
  ASSERT_NE(procedure, nullptr);
  const auto& steps = procedure->steps;
  ASSERT_GE(steps.size(), 10U);
  EXPECT_EQ(steps[steps.size() - 2].id, "damper");
  EXPECT_EQ(steps[steps.size() - 3].id, "caster");
  EXPECT_EQ(steps[1].id, "balance");
}

}  // namespace
}  // namespace sw::test
