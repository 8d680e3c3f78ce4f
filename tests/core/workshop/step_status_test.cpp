// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/step_status.h"

#include <gmock/gmock.h>

#include "shop_fixture.h"

namespace sw::test {
namespace {

using model::Side;
using workshop::JobState;
using workshop::StepStatus;

class Steps : public testing::Test {
 protected:
  void begin(const std::vector<std::string>& procedures, const std::string& vehicle = {}) {
    shop.setUp(vehicle);
    for (const std::string& procedure : procedures) start(procedure);
  }
  void start(const std::string& procedure) {
    shop.ok(R"({"do":"start_procedure","procedure":")" + procedure + "\"}");
  }
  void allow(const std::string& step, const std::string& side = "left") {
    shop.ok(R"({"do":"override","rule":"order","step":")" + step + R"(","side":")" + side +
            R"(","why":"only this step matters here"})");
  }
  void mark(const std::string& step, const std::string& action = "done",
            const std::string& side = "left") {
    shop.ok(R"({"do":"do_step","step":")" + step + R"(","side":")" + side + R"(","action":")" +
            action + R"(","text":"said so"})");
  }
  void pull(const std::string& step, const std::string& readings, const std::string& side = "left",
            int round = 1) {
    shop.ok(R"({"do":"take_readings","step":")" + step + R"(","side":")" + side + R"(","round":)" +
            std::to_string(round) + R"(,"readings":")" + readings + R"(","instrument":"scale"})");
  }
  /// The line of a step by its full name: "procedure/step (left)", of the newest run.
  workshop::StepLine line(const std::string& name) {
    const JobState state = shop.state();
    const auto step = workshop::stepNamed(state, name);
    EXPECT_TRUE(step) << name;
    return step ? workshop::stepLines(state, shop.clock.now())[*step] : workshop::StepLine{};
  }
  std::string status(const std::string& name) { return std::string(wordOf(line(name).status)); }
  /// The name of the next step that can be worked on.
  std::string next(std::optional<Side> only = std::nullopt, const std::string& after = {}) {
    const JobState state = shop.state();
    const auto lines = workshop::stepLines(state, shop.clock.now());
    const auto here = after.empty() ? std::nullopt : workshop::stepNamed(state, after);
    const auto step = workshop::nextReadyStep(state, lines, only, here);
    return step ? state.stepName(*step) : "nothing";
  }

  Shop shop;
};

TEST_F(Steps, AStepWaitsForWhatComesFirstAndSaysForWhat) {
  begin({"wheels-off"});
  EXPECT_EQ(status("wheels-off/wheel_off (left)"), "ready");
  // The steps of a procedure follow each other where it does not say otherwise.
  const auto waits = line("wheels-off/hub_face (left)");
  EXPECT_EQ(waits.status, StepStatus::Waits);
  ASSERT_EQ(waits.against.size(), 1U);
  EXPECT_EQ(waits.against.front().step, "wheels-off/wheel_off (left)");
  mark("wheels-off/wheel_off");
  EXPECT_EQ(status("wheels-off/wheel_off (left)"), "done");
  EXPECT_EQ(status("wheels-off/hub_face (left)"), "ready");
  EXPECT_TRUE(line("wheels-off/hub_face (left)").against.empty());
  EXPECT_EQ(status("wheels-off/hub_face (right)"), "waits");
}

TEST_F(Steps, HowAStepEndedIsSaid) {
  begin({"wheels-off"});
  mark("wheels-off/wheel_off", "done_before_recording");
  EXPECT_EQ(status("wheels-off/wheel_off (left)"), "done_before_recording");
  mark("wheels-off/hub_face", "not_applicable");
  EXPECT_EQ(status("wheels-off/hub_face (left)"), "not_applicable");
  mark("wheels-off/hub_face", "reopened");
  EXPECT_EQ(status("wheels-off/hub_face (left)"), "ready");
}

// The sheet of the fixture: 15 to 26 N, scale to 0.2 N. Figures far from the limits and on both
// sides of them leave no doubt.
TEST_F(Steps, WhatWasMeasuredDecidesHowDoneAStepIs) {
  begin({"as-found-pull", "fit-shims-and-pull"});
  for (const char* side : {"left", "right"}) {
    allow("as-found-pull/pull_ahead", side);
    allow("fit-shims-and-pull/pull", side);
  }
  pull("as-found-pull/pull_ahead", "41 40.0 40.2 40.0");
  EXPECT_EQ(status("as-found-pull/pull_ahead (left)"), "out_of_limits");
  pull("as-found-pull/pull_ahead", "21 20.0 20.2 20.0", "right");
  EXPECT_EQ(status("as-found-pull/pull_ahead (right)"), "done");
  // At a limit a pull proves nothing; where safety rests on it that is not simply done.
  pull("fit-shims-and-pull/pull", "15 14.8 15.6 15.2");
  EXPECT_EQ(status("fit-shims-and-pull/pull (left)"), "not_proved");
  EXPECT_EQ(status("fit-shims-and-pull/pull (right)"), "ready");
  pull("fit-shims-and-pull/pull", "21 20.0 20.2 20.0", "right");
  EXPECT_EQ(status("fit-shims-and-pull/pull (right)"), "done");
}

TEST_F(Steps, ANewerRoundTakesThePlaceOfItsOwnSide) {
  begin({"fit-shims-and-pull"});
  allow("fit-shims-and-pull/fit_pack");
  allow("fit-shims-and-pull/pull");
  shop.ok(R"({"do":"shim_pack","role":"fitted","step":"fit-shims-and-pull/fit_pack",)"
          R"("side":"left","shims":"0.50 + 0.25"})");
  pull("fit-shims-and-pull/pull", "11 10.0 10.2 10.0");
  const JobState state = shop.state();
  ASSERT_EQ(state.runs.size(), 2U);
  const auto lines = workshop::stepLines(state, shop.clock.now());
  const auto first = state.findStep(0, "pull", Side::Left);
  const auto other = state.findStep(0, "pull", Side::Right);
  EXPECT_EQ(lines[*first].status, StepStatus::Superseded);
  EXPECT_NE(lines[*other].status, StepStatus::Superseded);
  EXPECT_FALSE(workshop::stillOpen(state, *first));
  EXPECT_TRUE(workshop::stillOpen(state, *other));
  // A name means the step that counts now.
  const auto named = workshop::stepNamed(state, "fit-shims-and-pull/pull (left)");
  ASSERT_TRUE(named);
  EXPECT_EQ(state.steps[*named].run, 1U);
  EXPECT_EQ(workshop::stepNamed(state, "fit-shims-and-pull/pull (right)"), other);
  EXPECT_FALSE(workshop::stepNamed(state, "fit-shims-and-pull/pull"));
  EXPECT_FALSE(workshop::stepNamed(state, "no-such/step (left)"));
}

TEST_F(Steps, ATimerRunsUntilItsTimeIsUp) {
  // An oil-filled hub is sealed and the bead cures before the oil goes in (refit-swivel.json).
  begin({"seal-the-cap", "refit-swivel"}, R"(,"lubricant":"oil")");
  allow("seal-the-cap/sealed_beside_dry");
  shop.ok(R"({"do":"observe","step":"seal-the-cap/sealed_beside_dry","side":"left",)"
          R"("key":"sealed_pull","value":"alike"})");
  const std::string cure = "refit-swivel/cure (left)";
  allow("refit-swivel/cure");
  EXPECT_EQ(status(cure), "ready");
  shop.ok(R"({"do":"start_timer","step":"refit-swivel/cure","side":"left","time":"12 h"})");
  EXPECT_EQ(status(cure), "running");
  constexpr std::int64_t kTwelveHours = 12LL * 3600 * 1000;
  shop.clock.advanceMilliseconds(kTwelveHours - 1);
  EXPECT_EQ(status(cure), "running");
  EXPECT_NE(next(), cure);
  shop.clock.advanceMilliseconds(1);
  EXPECT_EQ(status(cure), "ready");
  mark("refit-swivel/cure");
  EXPECT_EQ(status(cure), "done");
}

TEST_F(Steps, TheNextStepFollowsTheOneBeforeAndStartsOver) {
  begin({"wheels-off"});
  EXPECT_EQ(next(), "wheels-off/wheel_off (left)");
  EXPECT_EQ(next({}, "wheels-off/wheel_off (left)"), "wheels-off/wheel_off (right)");
  EXPECT_EQ(next({}, "wheels-off/wheel_off (right)"), "wheels-off/wheel_off (left)");
  EXPECT_EQ(next(Side::Right), "wheels-off/wheel_off (right)");
  EXPECT_EQ(next(Side::Right, "wheels-off/wheel_off (right)"), "nothing");
  mark("wheels-off/wheel_off");
  EXPECT_EQ(next({}, "wheels-off/wheel_off (right)"), "wheels-off/hub_face (left)");
  shop.ok(R"({"do":"observe","step":"wheels-off/hub_face","side":"left","key":"hub_face",)"
          R"("value":"clean"})");
  EXPECT_EQ(next(Side::Left), "nothing");
  EXPECT_EQ(next(), "wheels-off/wheel_off (right)");
}

TEST_F(Steps, AStepOfNoSideConcernsEitherSide) {
  begin({"make-safe-and-lift"});
  EXPECT_EQ(next(Side::Left), "make-safe-and-lift/defer");
  EXPECT_EQ(next(Side::Right), "make-safe-and-lift/defer");
}

TEST_F(Steps, OptionalStepsAreOfferedToNobody) {
  begin({"road-test-before"});  // every step of it may be skipped
  EXPECT_EQ(status("road-test-before/walk_round"), "ready");
  EXPECT_EQ(next(), "nothing");
  EXPECT_FALSE(workshop::stillOpen(shop.state(), 0));
}

TEST_F(Steps, AMovedSeriesOpensTheStepItEmptied) {
  begin({"as-found-pull"});
  for (const char* side : {"left", "right"}) allow("as-found-pull/pull_ahead", side);
  pull("as-found-pull/pull_ahead", "22 19.0 19.2 19.4");
  ASSERT_EQ(status("as-found-pull/pull_ahead (left)"), "done");
  ASSERT_EQ(status("as-found-pull/pull_ahead (right)"), "ready");
  const auto outcome = shop.ok(R"({"do":"move_series","series":)" +
                               std::to_string(shop.state().series.front().id.value) + "}");
  EXPECT_TRUE(Shop::told(outcome, "series_moved"));
  EXPECT_EQ(status("as-found-pull/pull_ahead (left)"), "ready");
  EXPECT_EQ(status("as-found-pull/pull_ahead (right)"), "done");
  EXPECT_EQ(next(Side::Left, "as-found-pull/arm (left)"), "as-found-pull/pull_ahead (left)");
}

TEST_F(Steps, AStepWithReadingsOfItsOwnStaysDoneWhenOthersMove) {
  begin({"as-found-pull"});
  for (const char* side : {"left", "right"}) allow("as-found-pull/pull_ahead", side);
  pull("as-found-pull/pull_ahead", "22 19.0 19.2 19.4");
  shop.ok(R"({"do":"take_readings","step":"as-found-pull/pull_ahead","side":"left",)"
          R"("readings":"23 20.0 20.2 20.0","instrument":"scale","new_series":true,"why":"seal"})");
  shop.ok(R"({"do":"move_series","series":)" +
          std::to_string(shop.state().series.front().id.value) + "}");
  EXPECT_EQ(status("as-found-pull/pull_ahead (left)"), "done");
  EXPECT_EQ(status("as-found-pull/pull_ahead (right)"), "done");
}

TEST_F(Steps, EveryStatusHasAWordOfItsOwn) {
  std::vector<std::string> words;
  for (const auto& [status, word] : Words<StepStatus>::table) words.emplace_back(word);
  EXPECT_THAT(words, testing::UnorderedElementsAre("ready", "waits", "running", "done",
                                                   "done_before_recording", "not_applicable",
                                                   "out_of_limits", "not_proved", "superseded"));
}

}  // namespace
}  // namespace sw::test
