// SPDX-License-Identifier: GPL-3.0-or-later
#include "scenarios.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "check_heuristics.h"
#include "diagnosis/ranking.h"
#include "diagnosis/shipped_causes.h"

namespace sw::diagnosis {
namespace {

using testing::Scenario;

const CauseFile& file() {
  return shippedCauses();
}
const CauseTable& table() {
  return shippedCauses().table;
}

Evidence told(const std::string& feature, const std::string& word) {
  const auto at = table().feature(feature);
  EXPECT_TRUE(at) << feature;
  const auto answer = table().features.at(at.value()).answer(word);
  EXPECT_TRUE(answer) << feature << " " << word;
  return answered(table(), at.value(), answer.value());
}

PlannedCheck asMade(const Check& check) {
  PlannedCheck made;
  made.finds = check.finds;
  made.falseAlarm = check.falseAlarm;
  return made;
}

std::vector<Evidence> evidenceOf(const Scenario& scenario) {
  std::vector<Evidence> evidence;
  for (const auto& [feature, word] : scenario.answers) evidence.push_back(told(feature, word));
  for (const auto& key : scenario.nothing) {
    evidence.push_back(nothingFound(table(), key, asMade(file().checks.at(*file().check(key)))));
  }
  for (const auto& key : scenario.repaired) {
    evidence.push_back(repaired(table(), table().cause(key).value()));
  }
  return evidence;
}

PlanProblem problemOf(const Scenario& scenario) {
  const auto preset = std::find_if(file().presets.begin(), file().presets.end(),
                                   [&](const Preset& one) { return one.key == scenario.preset; });
  Circumstances here;
  here.support = preset->support;
  here.equipment = preset->equipment;
  here.discMount = scenario.discMount;
  here.setup = file().setup(scenario.setup).value();
  here.fallbackMinutes = file().fallbackMinutes;
  for (const auto* list : {&scenario.leftOut, &scenario.nothing}) {
    for (const auto& key : *list) here.leftOut.push_back(file().check(key).value());
  }
  auto problem = problemFor(file(), here);
  problem.causes = probabilities(table(), evidenceOf(scenario));
  return problem;
}

/// Keys of the planned checks, without the forced walk-round.
std::vector<std::string> keysOf(const PlanProblem& problem, const CheckPlan& plan) {
  std::vector<std::string> keys;
  for (const PlanStep& step : plan.steps) keys.push_back(file().checks[step.check].key);
  keys.erase(keys.begin(), keys.begin() + static_cast<std::ptrdiff_t>(problem.first.size()));
  return keys;
}

/// From 1; far behind where it is not planned.
std::size_t placeOf(const std::vector<std::string>& keys, const std::string& key) {
  const auto found = std::find(keys.begin(), keys.end(), key);
  return found == keys.end() ? 1000U : static_cast<std::size_t>(found - keys.begin()) + 1;
}

bool isIn(const std::vector<std::string>& list, const std::string& key) {
  return std::find(list.begin(), list.end(), key) != list.end();
}

std::string line(const std::vector<std::string>& keys) {
  return std::accumulate(keys.begin(), keys.end(), std::string(),
                         [](const std::string& a, const std::string& b) { return a + b + " "; });
}

class Scenarios : public ::testing::TestWithParam<Scenario> {};

TEST_P(Scenarios, RankTheirCauses) {
  const Scenario& scenario = GetParam();
  const auto ranking = rank(table(), evidenceOf(scenario));
  std::vector<std::string> order;
  for (const RankedCause& one : ranking.causes) order.push_back(table().causes[one.cause].key);
  const auto share = [&](const std::string& key) {
    return ranking.causes.at(placeOf(order, key) - 1).probability;
  };
  for (const auto& [list, most] :
       {std::pair{&scenario.first, 1U}, {&scenario.amongTwo, 2U}, {&scenario.amongFour, 4U}}) {
    for (const auto& key : *list)
      EXPECT_LE(placeOf(order, key), most) << key << "\n" << line(order);
  }
  for (const auto& [key, least] : scenario.atLeast) EXPECT_GE(share(key), least) << key;
  for (const auto& [key, most] : scenario.atMost) EXPECT_LE(share(key), most) << key;
  EXPECT_GE(share("other"), .005);
  EXPECT_FALSE(ranking.surprising);
}

TEST_P(Scenarios, PlanTheirChecks) {
  const Scenario& scenario = GetParam();
  const auto problem = problemOf(scenario);
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan) << plan.error().key;
  const auto keys = keysOf(problem, *plan);
  SCOPED_TRACE(line(keys));
  ASSERT_FALSE(keys.empty());
  if (!isIn(scenario.nothing, "walk_round")) {
    EXPECT_EQ(file().checks[plan->steps.front().check].key, "walk_round");
  }
  if (!scenario.beginsWith.empty()) {
    EXPECT_TRUE(isIn(scenario.beginsWith, keys.front())) << keys.front();
  }
  for (const auto& [key, most] : scenario.within) EXPECT_LE(placeOf(keys, key), most) << key;
  for (const auto& key : scenario.planned) EXPECT_TRUE(isIn(keys, key)) << key;
  for (const auto& key : scenario.unplanned) EXPECT_FALSE(isIn(keys, key)) << key;
  auto before = scenario.before;
  // Never the numbers before the wear, never what hides play before the play.
  for (const char* late : {"swivel_pull", "damper", "caster"}) {
    before.emplace_back("rock_wheels", late);
    if (late == std::string("swivel_pull")) continue;
    for (const char* early : {"joints", "panhard", "arm_bushes"}) before.emplace_back(early, late);
  }
  for (const auto& [early, late] : before) {
    const bool out = isIn(scenario.leftOut, early) || isIn(scenario.nothing, early);
    if (out || !isIn(keys, late)) continue;
    EXPECT_LT(placeOf(keys, early), placeOf(keys, late)) << early << " before " << late;
  }
}

TEST_P(Scenarios, CostNoMoreThanSimpleOrders) {
  const auto problem = problemOf(GetParam());
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  for (const auto rule : testing::kAllRules) {
    const auto order = orderBy(problem, rule);
    EXPECT_LE(plan->minutes, testing::bestPrefix(problem, order).minutes + 1e-9)
        << static_cast<int>(rule);
  }
  const auto bulletin = testing::bestPrefix(problem, testing::bulletinOrder(file(), problem));
  EXPECT_LE(plan->minutes, GetParam().ofBulletin * bulletin.minutes + 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Shake, Scenarios, ::testing::ValuesIn(testing::scenarios()),
                         [](const auto& one) { return one.param.name; });

double shareOf(const std::vector<double>& shares, const std::string& cause) {
  return shares.at(table().cause(cause).value());
}

TEST(ScenarioPairs, ADiscBehindTheHubIsDearerAndWaits) {
  Scenario scenario{.name = "", .answers = {{"steady", "no"}, {"braking", "only"}}};
  scenario.discMount = model::DiscMount::Outside;
  const auto outside = bestPlan(problemOf(scenario));
  scenario.discMount = model::DiscMount::BehindHub;
  const auto problem = problemOf(scenario);
  const auto behind = bestPlan(problem);
  ASSERT_TRUE(outside && behind);
  const auto before = keysOf(problem, *outside), after = keysOf(problem, *behind);
  EXPECT_GT(placeOf(after, "discs"), placeOf(before, "discs")) << line(after);
  EXPECT_TRUE(isIn(after, "discs")) << line(after);  // it is still the likeliest by far
  EXPECT_GT(behind->minutes, outside->minutes + 20);
}

TEST(ScenarioPairs, WhereTheWheelsStandUpTheRockTestMovesForward) {
  Scenario scenario{.name = "", .nothing = {"walk_round"}, .preset = "no_balancer"};
  const auto onGround = problemOf(scenario);
  scenario.setup = "lifted";
  const auto lifted = problemOf(scenario);
  const auto down = bestPlan(onGround), up = bestPlan(lifted);
  ASSERT_TRUE(down && up);
  EXPECT_LT(placeOf(keysOf(lifted, *up), "rock_wheels"),
            placeOf(keysOf(onGround, *down), "rock_wheels"));
}

TEST(ScenarioPairs, TheWalkRoundComesFirstInEveryShopAndHoweverTheVehicleStands) {
  for (const Preset& preset : file().presets) {
    for (const char* setup : {"ground", "lifted"}) {
      Scenario scenario{.name = "", .answers = {{"after_bump", "yes"}, {"one_hot", "yes"}}};
      scenario.preset = preset.key;
      scenario.setup = setup;
      const auto plan = bestPlan(problemOf(scenario));
      ASSERT_TRUE(plan);
      EXPECT_EQ(file().checks[plan->steps.front().check].key, "walk_round") << preset.key << setup;
    }
  }
}

TEST(ScenarioPairs, WhereGivingUpCostsLittleOnlyTheWalkRoundIsMade) {
  auto problem = problemOf({.name = "", .answers = {{"after_bump", "yes"}}});
  problem.fallback = 5;
  const auto plan = bestPlan(problem);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->steps.size(), 1U);
}

TEST(ScenarioPairs, ACheckThatFoundNothingMovesItsCausesDownAndTheOthersUp) {
  const auto before = probabilities(table(), {});
  for (const Check& check : file().checks) {
    const auto after =
        probabilities(table(), std::vector{nothingFound(table(), check.key, asMade(check))});
    for (std::size_t cause = 0; cause < after.size(); ++cause) {
      const bool looked = std::any_of(check.finds.begin(), check.finds.end(),
                                      [&](const Detection& one) { return one.cause == cause; });
      const auto& key = table().causes[cause].key;
      const double way = looked ? -1 : 1;
      EXPECT_GT(way * (after[cause] - before[cause]), 0) << check.key << " " << key;
    }
  }
}

TEST(ScenarioPairs, ARepairedCauseFallsAndThePlanGoesOn) {
  for (const char* cause : {"wheel_unbalance", "damper", "rod_joints", "disc", "swivel_preload"}) {
    const Scenario scenario{.name = "", .repaired = {cause}};
    const auto problem = problemOf(scenario);
    const double before = shareOf(probabilities(table(), {}), cause);
    EXPECT_LT(shareOf(problem.causes, cause), .1 * before) << cause;
    const auto plan = bestPlan(problem);
    ASSERT_TRUE(plan);
    EXPECT_GE(keysOf(problem, *plan).size(), 5U) << cause;
  }
}

TEST(ScenarioPairs, NotKnownIsNotNo) {
  const auto nothing = probabilities(table(), {});
  const double all =
      std::accumulate(table().causes.begin(), table().causes.end(), 0.0,
                      [](double sum, const Cause& cause) { return sum + cause.weight; });
  for (std::size_t cause = 0; cause < nothing.size(); ++cause) {
    EXPECT_NEAR(nothing[cause], table().causes[cause].weight / all, 1e-12);
  }
  // What speaks for play when it is there speaks against it when it is not.
  const auto not_ = probabilities(table(), std::vector{told("wanders", "no")});
  const auto is = probabilities(table(), std::vector{told("wanders", "yes")});
  for (const char* cause : {"rod_joints", "panhard", "box_play", "box_mounting"}) {
    EXPECT_LT(shareOf(not_, cause), shareOf(nothing, cause)) << cause;
    EXPECT_GT(shareOf(is, cause), shareOf(nothing, cause)) << cause;
  }
}

TEST(ScenarioPairs, AnswersThatContradictEachOtherAreFlagged) {
  // Only under braking, and at a steady speed without it; at a beat of its own, and with the wheels
  // felt in the seat; one hot wheel, a bounce and no play, no pull.
  const std::vector<Evidence> evidence{
      told("braking", "only"),       told("steady", "yes"),  told("follows_speed", "no"),
      told("goes_on_slower", "yes"), told("one_hot", "yes"), told("bounces", "yes"),
      told("felt_in_seat", "yes"),   told("wanders", "no"),  told("recent_work", "steering")};
  const auto ranking = rank(table(), evidence);
  EXPECT_TRUE(ranking.surprising);
  double sum = 0;
  for (const RankedCause& one : ranking.causes) sum += one.probability;
  EXPECT_NEAR(sum, 1, 1e-12);
}

TEST(ScenarioPairs, AStoryThatFitsIsNotFlagged) {
  // All twelve questions answered as for a dragging brake, rare as it is.
  const std::vector<Evidence> evidence{
      told("steady", "no"),         told("braking", "also"),
      told("after_bump", "no"),     told("follows_speed", "yes"),
      told("goes_on_slower", "no"), told("felt_in_seat", "no"),
      told("pulls", "yes"),         told("wanders", "no"),
      told("knocks", "no"),         told("bounces", "no"),
      told("one_hot", "yes"),       told("recent_work", "brakes_or_hub")};
  const auto ranking = rank(table(), evidence);
  EXPECT_FALSE(ranking.surprising);
  EXPECT_EQ(table().causes[ranking.causes.front().cause].key, "caliper");
}

TEST(ScenarioPairs, SomethingElseStaysPossibleAfterEachAnswer) {
  for (std::size_t feature = 0; feature < table().features.size(); ++feature) {
    for (std::size_t word = 0; word < table().features[feature].answers.size(); ++word) {
      const auto after = probabilities(table(), std::vector{answered(table(), feature, word)});
      EXPECT_GT(after[table().other], .01) << table().features[feature].key << " " << word;
    }
  }
}

}  // namespace
}  // namespace sw::diagnosis
