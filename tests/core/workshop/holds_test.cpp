// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop_fixture.h"
#include "workshop/rules.h"

namespace sw::test {
namespace {

class Holds : public testing::Test {
 protected:
  void SetUp() override {
    shop.setUp();
    shop.ok(R"({"do":"start_procedure","procedure":"make-safe-and-lift"})");
    shop.ok(R"({"do":"start_procedure","procedure":"wheels-off"})");
  }

  void liftUntilHold() {
    for (const char* step : {"defer", "choose_support", "quiet", "chock", "lift_stands"}) {
      if (std::string(step) == "choose_support") {
        shop.ok(R"({"do":"choose_support","support":"stands",)"
                R"("step":"make-safe-and-lift/choose_support"})");
        continue;
      }
      shop.ok(R"({"do":"do_step","step":"make-safe-and-lift/)" + std::string(step) + "\"}");
    }
  }

  Result<workshop::Outcome> answer(const std::string& statement, const std::string& what) {
    return shop.say(R"({"do":"answer","step":"make-safe-and-lift/support","statement":")" +
                    statement + R"(","answer":")" + what + "\"}");
  }

  void passSupport() {
    EXPECT_TRUE(answer("stand_rating", "900 kg"));
    EXPECT_TRUE(answer("rear_chocks", "both_both_ways"));
    EXPECT_TRUE(answer("stand_push", "did_not_move"));
  }

  Shop shop;
};

const char* const kWheelOff = R"({"do":"do_step","step":"wheels-off/wheel_off","side":"left"})";

TEST_F(Holds, LaterWorkIsRefusedByTheHoldsName) {
  const auto error = shop.refused(kWheelOff, "workshop.not_yet");
  ASSERT_FALSE(error.details.empty());
  EXPECT_EQ(error.details.front().second, "hold_open|make-safe-and-lift/support|support");
}

TEST_F(Holds, EveryStatementIsAnsweredBeforeWorkGoesOn) {
  liftUntilHold();
  ASSERT_TRUE(answer("stand_rating", "900 kg"));
  ASSERT_TRUE(answer("rear_chocks", "both_both_ways"));
  shop.refused(kWheelOff, "workshop.not_yet");
  const auto last = answer("stand_push", "did_not_move");
  ASSERT_TRUE(last);
  EXPECT_TRUE(Shop::told(*last, "hold_passed"));
  shop.ok(kWheelOff);
}

TEST_F(Holds, AStandThatCarriesTooLittleIsRecordedAndDoesNotPass) {
  liftUntilHold();
  // Half of 880 kg is 440 kg: a stand marked 400 kg is not enough (weight split, common practice).
  const auto outcome = answer("stand_rating", "400 kg");
  ASSERT_TRUE(outcome);
  EXPECT_TRUE(Shop::told(*outcome, "hold_not_passed"));
  EXPECT_EQ(Shop::value(*outcome, "stand_load", "verdict"), "not_enough");
  ASSERT_TRUE(answer("rear_chocks", "both_both_ways"));
  ASSERT_TRUE(answer("stand_push", "did_not_move"));
  shop.refused(kWheelOff, "workshop.not_yet");
  ASSERT_TRUE(answer("stand_rating", "700 kg"));
  shop.ok(kWheelOff);
}

TEST_F(Holds, WithoutAxleLoadTheStandsCannotBeJudged) {
  shop.ok(R"({"do":"open_job","registration":"NO LOAD"})");
  shop.ok(R"({"do":"start_procedure","procedure":"make-safe-and-lift"})");
  liftUntilHold();
  const auto outcome = answer("stand_rating", "900 kg");
  ASSERT_FALSE(outcome);
  EXPECT_EQ(outcome.error().key, "workshop.axle_load_needed");
}

TEST_F(Holds, SupportIsChosenBeforeItIsAnswered) {
  shop.refused(R"({"do":"answer","step":"make-safe-and-lift/support","statement":"stand_push",)"
               R"("answer":"did_not_move"})",
               "workshop.not_yet");
}

TEST_F(Holds, NothingBypassesAHold) {
  liftUntilHold();
  shop.refused(R"({"do":"do_step","step":"make-safe-and-lift/support"})",
               "workshop.hold_is_answered");
  shop.refused(R"({"do":"do_step","step":"make-safe-and-lift/support","action":"not_applicable",)"
               R"("text":"we are in a hurry"})",
               "workshop.hold_is_answered");
  shop.refused(R"({"do":"override","rule":"support","step":"make-safe-and-lift/support",)"
               R"("why":"in a hurry"})",
               "workshop.no_such_override");
  shop.ok(R"({"do":"override","rule":"order","step":"wheels-off/wheel_off","side":"left",)"
          R"("why":"wheel is off already"})");
  shop.refused(kWheelOff, "workshop.not_yet");
}

TEST_F(Holds, AnotherDayAsksTheSupportAgain) {
  liftUntilHold();
  passSupport();
  shop.ok(kWheelOff);
  shop.clock.advanceMilliseconds(23LL * 3600 * 1000);
  const auto error = shop.refused(
      R"({"do":"do_step","step":"wheels-off/wheel_off","side":"right"})", "workshop.not_yet");
  EXPECT_EQ(error.details.front().second, "hold_open|make-safe-and-lift/support|support");
  const auto state = shop.state();
  EXPECT_EQ(workshop::resumePoint(state).holdsToAnswer.size(), 1U);
  passSupport();
  shop.ok(R"({"do":"do_step","step":"wheels-off/wheel_off","side":"right"})");
}

TEST_F(Holds, TheSameDayDoesNotAskAgain) {
  liftUntilHold();
  passSupport();
  shop.clock.advanceMilliseconds(8LL * 3600 * 1000);
  shop.ok(kWheelOff);
}

TEST_F(Holds, AnUnknownWordIsNoAnswer) {
  liftUntilHold();
  const auto outcome = answer("rear_chocks", "yes");
  ASSERT_FALSE(outcome);
  EXPECT_EQ(outcome.error().key, "json.not_one_of");
}

TEST_F(Holds, OnlyTheStatementsOfTheSupportInUseAreAsked) {
  liftUntilHold();
  shop.ok(R"({"do":"choose_support","support":"two_post"})");
  const auto state = shop.state();
  ASSERT_FALSE(state.holds.empty());
  EXPECT_LE(state.holds.front().statements.size(), 3U);
  for (const auto& view : state.holds.front().statements) {
    EXPECT_NE(view.statement->key, "stand_rating");
  }
}

TEST_F(Holds, WhoAndWhenStandBesideTheAnswer) {
  liftUntilHold();
  ASSERT_TRUE(answer("stand_push", "did_not_move"));
  const auto state = shop.state();
  for (const auto& view : state.holds.front().statements) {
    if (view.statement->key != "stand_push") continue;
    EXPECT_TRUE(view.by.has_value());
    EXPECT_EQ(view.answeredAt, shop.clock.now());
  }
}

}  // namespace
}  // namespace sw::test
