// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <functional>
#include <set>

#include "plan_walk.h"
#include "shipped.h"

// The order of the neighbouring jobs (common practice, no source, except where a test names one).

namespace sw::test {
namespace {

using model::LedgerState;
using Walk = std::vector<WalkedStep>;
using Match = std::function<bool(const WalkedStep&)>;

FactWords axle(const std::string& wheelBearing = "end_float") {
  return {{"support", "two_post"},
          {"drag_link_side", "left"},
          {"steering_arm_on_cap", "no"},
          {"lubricant", "oil"},
          {"shim_ends", "top"},
          {"shim_layout", "cap_flange"},
          {"swivel_bearing", "taper"},
          {"drag_link_fixes_to", "steering_arm"},
          {"damper_fixes_to", "track_rod"},
          {"disc_mount", "outside"},
          {"wheel_bearing", wheelBearing},
          {"abs_lead", "no"},
          {"locking_hubs", "no"}};
}

Walk job(const std::string& plan, const FactWords& words = axle()) {
  return walk(runsOfPlan(plan), words, {model::Side::Left, model::Side::Right});
}

Match at(const std::string& procedure, const std::string& step) {
  return [=](const WalkedStep& walked) {
    return walked.procedure->id == procedure && walked.step->id == step;
  };
}

Match moves(const std::string& item, LedgerState to) {
  return [=](const WalkedStep& walked) {
    const auto& effects = walked.step->ledger;
    return std::any_of(effects.begin(), effects.end(),
                       [&](const auto& effect) { return effect.item == item && effect.to == to; });
  };
}

Match torques(const std::string& item) {
  return [=](const WalkedStep& walked) {
    return walked.step->torque && walked.step->torque->item == item;
  };
}

Match holdOf(const std::string& key) {
  return
      [=](const WalkedStep& walked) { return walked.step->hold && walked.step->hold->key == key; };
}

bool drives(const WalkedStep& walked) {
  return walked.step->roadTest && walked.step->roadTest->when == model::RoadTestWhen::After;
}

bool lowers(const WalkedStep& walked) {
  return walked.step->lowersVehicle;
}

std::ptrdiff_t first(const Walk& steps, const Match& match) {
  const auto found = std::find_if(steps.begin(), steps.end(), match);
  EXPECT_NE(found, steps.end());
  return found - steps.begin();
}

std::ptrdiff_t last(const Walk& steps, const Match& match) {
  const auto found = std::find_if(steps.rbegin(), steps.rend(), match);
  EXPECT_NE(found, steps.rend());
  return steps.rend() - found - 1;
}

std::ptrdiff_t count(const Walk& steps, const Match& match) {
  return std::count_if(steps.begin(), steps.end(), match);
}

/// The steps stand in the job in this order, the last of each before the first of the next.
void expectInOrder(const Walk& steps, const std::vector<Match>& order) {
  for (std::size_t i = 0; i + 1 < order.size(); ++i) {
    EXPECT_LT(last(steps, order[i]), first(steps, order[i + 1])) << "row " << i;
  }
}

class Neighbours : public testing::TestWithParam<const char*> {};

TEST_P(Neighbours, LiftOnlyOnAnAnsweredSupportAndMoveOnlyOnAllFive) {
  const Walk steps = job(GetParam());
  expectInOrder(steps, {holdOf("support"), moves("wheel", LedgerState::Off), lowers,
                        holdOf("brakes_and_steering"), drives});
  EXPECT_LT(first(steps, holdOf("wheel_nuts")), first(steps, holdOf("brakes_and_steering")));
  EXPECT_LT(last(steps, holdOf("go_no_go")), first(steps, drives));
  EXPECT_GT(last(steps, holdOf("wheel_nuts")), first(steps, drives));
}

INSTANTIATE_TEST_SUITE_P(Plans, Neighbours,
                         testing::Values("wheel-bearing-adjust", "wheel-bearing-repack",
                                         "swivel-overhaul", "swivel-seals", "rod-ends-and-toe",
                                         "brake-disc-check", "brake-disc-renewal",
                                         "brake-disc-renewal-behind-hub", "arm-bush-renewal",
                                         "panhard-bush-renewal", "steering-damper-test"),
                         [](const testing::TestParamInfo<const char*>& row) {
                           std::string name = row.param;
                           std::erase(name, '-');
                           return name;
                         });

TEST(WheelBearings, AreSetByTheKindTheVehicleHas) {
  const std::vector<std::pair<std::string, std::string>> kinds{
      {"end_float", "float_proved"}, {"preload", "pull_proved"}, {"unit", "unit_play"}};
  for (const auto& [kind, proof] : kinds) {
    const Walk steps = job("wheel-bearing-repack", axle(kind));
    for (const auto& [other, otherProof] : kinds) {
      EXPECT_EQ(count(steps, at("wheel-bearing-set", otherProof)), other == kind ? 2 : 0)
          << kind << " " << otherProof;
    }
    EXPECT_EQ(count(steps, moves("hub_unit", LedgerState::Off)), kind == "unit" ? 2 : 0);
    EXPECT_EQ(count(steps, moves("hub_nuts", LedgerState::Off)), kind == "unit" ? 0 : 2);
  }
}

// Tightening the lock nut takes up play in the thread: only the reading after it counts.
TEST(WheelBearings, AreProvedAfterLocking) {
  for (const auto& [kind, proof] :
       {std::pair{"end_float", "float_proved"}, std::pair{"preload", "pull_proved"}}) {
    for (const char* plan : {"wheel-bearing-adjust", "wheel-bearing-repack"}) {
      const Walk steps = job(plan, axle(kind));
      expectInOrder(steps, {at("wheel-bearing-set", "seat"), torques("hub_nuts"),
                            at("wheel-bearing-set", proof), torques("drive_flange")});
      const auto* proved = findStep("wheel-bearing-set", proof);
      ASSERT_TRUE(proved != nullptr && proved->measure);
      EXPECT_TRUE(proved->measure->safety);
    }
  }
}

TEST(WheelBearings, AreAdjustedWithTheHubOnItsAxle) {
  const Walk steps = job("wheel-bearing-adjust");
  EXPECT_EQ(count(steps, moves("hub_body", LedgerState::Off)), 0);
  EXPECT_EQ(count(steps, moves("disc", LedgerState::Off)), 0);
}

TEST(SwivelOverhaul, StartsFromAZeroPackOnTheNewBearings) {
  const Walk steps = job("swivel-overhaul");
  expectInOrder(steps,
                {at("renew-swivel-bearings", "races_out"), at("renew-swivel-bearings", "pins"),
                 at("renew-swivel-bearings", "tube_seal"), at("renew-swivel-bearings", "races_in"),
                 at("zero-pack", "gaps"), at("fit-shims-and-pull", "fit_pack"),
                 at("fit-shims-and-pull", "pull"), at("seal-the-cap", "bead"),
                 moves("swivel_oil", LedgerState::Back)});
  auto inner = axle();
  inner["shim_layout"] = "inner";
  const Walk innerSteps = job("swivel-overhaul", inner);
  EXPECT_EQ(count(innerSteps, at("zero-pack", "gaps")), 0);
  EXPECT_EQ(count(innerSteps, at("zero-pack", "float")), 2);
}

TEST(SwivelSeals, AreRenewedWithoutTouchingCapOrPack) {
  for (const WalkedStep& walked : job("swivel-seals")) {
    EXPECT_FALSE(walked.step->shimPack) << walked.step->id;
    for (const auto& effect : walked.step->ledger) {
      EXPECT_NE(effect.item, "upper_cap") << walked.step->id;
      EXPECT_NE(effect.item, "lower_cap") << walked.step->id;
      EXPECT_NE(effect.item, "track_rod") << walked.step->id;
    }
  }
  expectInOrder(job("swivel-seals"),
                {at("renew-swivel-seal", "ball"), moves("swivel_seal", LedgerState::Back),
                 torques("seal_retainer"), moves("swivel_oil", LedgerState::Back)});
}

TEST(RodEnds, KeepTheLengthAndSetTheToeOnTheGround) {
  const Walk steps = job("rod-ends-and-toe");
  expectInOrder(steps, {at("rod-ends", "length_before"), at("rod-ends", "clamps_slack"),
                        moves("track_rod", LedgerState::Off), at("rod-ends", "ends_out"),
                        at("rod-ends", "length_after"), torques("track_rod")});
  expectInOrder(steps, {lowers, holdOf("brakes_and_steering"), at("set-toe", "diameter"),
                        at("set-toe", "toe_found"), at("set-toe", "clamps_torque"),
                        at("set-toe", "toe_left"), drives});
  EXPECT_LT(first(steps, torques("rod_clamps")), first(steps, holdOf("brakes_and_steering")));
}

// Roll half a turn between the readings: it cancels the run-out of the rims.
TEST(RodEnds, ToeIsReadWithHalfATurnBetween) {
  for (const char* id : {"toe_found", "toe_left"}) {
    const auto* step = findStep("set-toe", id);
    ASSERT_NE(step, nullptr);
    EXPECT_NE(step->text.find("half a turn"), std::string::npos);
    ASSERT_TRUE(step->measure);
    EXPECT_GE(step->measure->planned, 2);
  }
}

TEST(BrakeDiscs, AreMeasuredAtTwelvePointsAndJudgedAtTheThinnest) {
  const auto* round = findStep("disc-check", "thickness");
  const auto* thinnest = findStep("disc-proof", "thinnest");
  ASSERT_TRUE(round != nullptr && round->measure && thinnest != nullptr && thinnest->measure);
  EXPECT_EQ(round->measure->planned, 12);
  EXPECT_TRUE(round->measure->limit.empty()) << "a mean of twelve points proves nothing";
  EXPECT_EQ(thinnest->measure->limit, "disc.min_thickness");
  EXPECT_TRUE(thinnest->measure->safety);
}

TEST(BrakeDiscs, AreDecidedForTheAxleBeforeOneComesOff) {
  for (const auto& [plan, mount, item] :
       {std::tuple{"brake-disc-renewal", "outside", "disc"},
        std::tuple{"brake-disc-renewal-behind-hub", "behind_hub", "disc_bolts"}}) {
    auto words = axle();
    words["disc_mount"] = mount;
    const Walk steps = job(plan, words);
    expectInOrder(
        steps, {at("disc-check", "decide"), moves(item, LedgerState::Off), at("disc-renew", "pads"),
                at("disc-proof", "thinnest"), holdOf("brakes_and_steering"),
                at("pads-before-road", "pedal_again"), drives, at("pads-bedded-in", "bedding")});
  }
  const auto* decide = findStep("disc-check", "decide");
  ASSERT_NE(decide, nullptr);
  EXPECT_EQ(decide->side, procedures::StepSide::Once);
}

TEST(Bushes, AreClampedWithTheWeightOnTheWheels) {
  const Walk arms = job("arm-bush-renewal");
  for (const char* item : {"arm_axle_bolts", "arm_pivot"}) {
    expectInOrder(arms, {moves(item, LedgerState::HandTight), lowers, torques(item),
                         holdOf("brakes_and_steering")});
  }
  const Walk panhard = job("panhard-bush-renewal");
  expectInOrder(panhard, {moves("panhard_bolts", LedgerState::HandTight), lowers,
                          torques("panhard_bolts"), holdOf("brakes_and_steering")});
}

TEST(Bushes, TheAxleIsHeldWhileItsArmOrRodIsOut) {
  expectInOrder(job("arm-bush-renewal"),
                {moves("axle_hold", LedgerState::On), moves("arm", LedgerState::Off),
                 moves("arm", LedgerState::Back), moves("axle_hold", LedgerState::TakenOff)});
  expectInOrder(
      job("panhard-bush-renewal"),
      {moves("axle_hold", LedgerState::On), moves("panhard_rod", LedgerState::Off),
       moves("panhard_rod", LedgerState::Back), moves("axle_hold", LedgerState::TakenOff)});
}

TEST(Bushes, SidePlayIsWatchedWithTheWheelsOnTheGround) {
  const Walk steps = job("panhard-bush-renewal");
  EXPECT_LT(first(steps, at("panhard-check", "rock")), first(steps, holdOf("support")));
  EXPECT_GT(first(steps, at("panhard-bolts-at-ride-height", "rock_again")), last(steps, lowers));
  for (const auto& [procedure, id] : {std::pair{"panhard-check", "rock"},
                                      std::pair{"panhard-bolts-at-ride-height", "rock_again"}}) {
    const auto* step = findStep(procedure, id);
    ASSERT_NE(step, nullptr);
    EXPECT_TRUE(step->needsTwo);
  }
}

TEST(SteeringDamper, IsJudgedBeforeANewOneIsThoughtOf) {
  auto words = axle();
  words["observed.damper_goes_back"] = "new";
  const Walk renewed = job("steering-damper-test", words);
  expectInOrder(renewed, {at("steering-damper", "never_first"), at("steering-damper", "stroke"),
                          at("steering-damper", "goes_back"), at("steering-damper", "new_damper"),
                          torques("damper")});
  words["observed.damper_goes_back"] = "same";
  EXPECT_EQ(count(job("steering-damper-test", words), at("steering-damper", "new_damper")), 0);
}

TEST(PlanTitles, AreAllDifferentAndAPlanNamesAProcedureOnce) {
  std::set<std::string> titles;
  for (const auto& plan : shippedLibrary().plans()) {
    EXPECT_TRUE(titles.insert(plan.title).second) << plan.title;
    EXPECT_EQ(std::set<std::string>(plan.procedures.begin(), plan.procedures.end()).size(),
              plan.procedures.size())
        << plan.id;
  }
}

// What a procedure must come after stands before it in every plan that has both.
TEST(PlanTitles, NoPlanContradictsItsProcedures) {
  for (const auto& plan : shippedLibrary().plans()) {
    std::set<std::string> later(plan.procedures.begin(), plan.procedures.end());
    for (const std::string& id : plan.procedures) {
      later.erase(id);
      for (const std::string& before : shippedLibrary().procedure(id)->after) {
        EXPECT_FALSE(later.contains(before))
            << plan.id << ": " << id << " stands before " << before;
      }
    }
  }
}

}  // namespace
}  // namespace sw::test
