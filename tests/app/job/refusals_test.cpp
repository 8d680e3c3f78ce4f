// SPDX-License-Identifier: GPL-3.0-or-later
// Generated from the procedure files: a complete job without one hold answer, one ledger end, one
// single-use part or one safety reading is refused by name; with all of them it is accepted.
#include "complete_job.h"
#include "finished_job.h"

namespace sw::test {
namespace {

class Refusals : public testing::TestWithParam<const char*> {
 protected:
  void SetUp() override {
    shop.setUp(GetParam());
    app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 3);
    workWholePlan(shop, mechanic, situation(), "swivel-preload");
  }

  Shop shop;
};

TEST_P(Refusals, EveryStatementOfEveryHold) {
  // Support, wheel nuts twice, brakes and steering, walk-round, go / no-go: three statements each.
  EXPECT_GE(FinishedJob(shop).missEveryStatement(), 5U * 3U);
}

TEST_P(Refusals, EveryLedgerItem) {
  EXPECT_GE(FinishedJob(shop).missEveryLedgerItem(), 15U);
}

TEST_P(Refusals, EverySingleUsePart) {
  // Both track-rod pins and the drag-link pin.
  EXPECT_GE(FinishedJob(shop).missEverySingleUsePart(), 3U);
}

TEST_P(Refusals, EverySafetyReading) {
  EXPECT_GE(FinishedJob(shop).missEverySafetyReading(), 2U);  // the pull of each side
}

TEST_P(Refusals, EveryStepThatIsNotOptional) {
  EXPECT_GE(FinishedJob(shop).missEveryStep(), 60U);
}

TEST_P(Refusals, TheCommandItselfRefusesAndThenAccepts) {
  const auto complete = shop.state();
  const auto& answer = complete.holds.back().statements.back();
  shop.ok(R"({"do":"withdraw","entry":)" + std::to_string(answer.entry->value) + "}");
  const auto error = shop.refused(R"({"do":"sign_off"})", "workshop.sign_off_refused");
  EXPECT_TRUE(error.detail("refusal").starts_with("hold_open|"));
  const auto state = shop.state();
  const auto& step = state.steps[state.holds.back().step];
  shop.ok(R"({"do":"answer","step":")" + state.runs[step.run].fact.procedure + "/" + step.step->id +
          R"(","statement":")" + answer.statement->key + R"(","answer":")" + answer.answer->answer +
          "\"}");
  shop.ok(R"({"do":"sign_off"})");
}

INSTANTIATE_TEST_SUITE_P(Axles, Refusals,
                         testing::Values("", R"(,"shim_layout":"inner","lubricant":"oil",)"
                                             R"("steering_arm_on_cap":"yes")"));

TEST(RefusalsByVerdict, UndecidedNeverPassesAndAnOverrideIsPrintedAsNotProved) {
  Shop shop;
  shop.setUp();
  auto what = situation();
  what.left.interferenceMillimetres = 0.402;  // close to the lower limit: undecided
  what.scatterNewtons = 0.45;
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 21);
  workWholePlan(shop, mechanic, what, "swivel-preload");
  auto state = shop.state();
  const auto run = state.newestRun("fit-shims-and-pull", model::Side::Left);
  ASSERT_TRUE(run);
  const auto step = state.findStep(*run, "pull", model::Side::Left);
  ASSERT_TRUE(step);
  const auto refusals = workshop::againstSignOff(state);
  ASSERT_TRUE(names(refusals, "not_proved", state.stepName(*step), "undecided"))
      << listed(refusals);
  shop.ok(R"({"do":"override","rule":"not_proved","step":"fit-shims-and-pull/pull","side":"left",)"
          R"("why":"the scale is too coarse, owner informed"})");
  shop.ok(R"({"do":"sign_off"})");
}

}  // namespace
}  // namespace sw::test
