// SPDX-License-Identifier: GPL-3.0-or-later
// What was done before recording began: marked at once up to a step, holds never.
#include "shop_fixture.h"
#include "workshop/step_status.h"

namespace sw::test {
namespace {

class MarkBefore : public ::testing::Test {
 protected:
  MarkBefore() {
    shop.setUp();
    shop.ok(R"({"do":"start_plan","plan":"swivel-preload"})");
    shop.clock.advanceMilliseconds(60'000);
  }
  static std::string before(const std::string& step, const std::string& side) {
    return R"({"do":"done_before","step":")" + step + R"(","side":")" + side + "\"}";
  }
  Shop shop;
};

TEST_F(MarkBefore, StopsAtTheFirstOpenHoldAndSaysWhich) {
  const auto outcome = shop.ok(before("fit-shims-and-pull/fit_pack", "left"));
  EXPECT_EQ(Shop::value(outcome, "marked_before", "hold"), "support");
  const auto state = shop.state();
  bool behindTheHold = false;
  for (std::size_t i = 0; i < state.steps.size(); ++i) {
    const auto& view = state.steps[i];
    // What carries the vehicle is chosen first: it decides which steps there are.
    if (view.step->id == "choose_support") behindTheHold = true;
    if (behindTheHold) {
      EXPECT_FALSE(view.done()) << state.stepName(i);
    } else if (view.side == model::Side::Right) {
      EXPECT_FALSE(view.done()) << state.stepName(i);  // the other side is not meant
    } else if (!view.step->optional) {
      EXPECT_EQ(view.action, model::StepAction::DoneBeforeRecording) << state.stepName(i);
    }
  }
  EXPECT_TRUE(behindTheHold);
  // Nothing more before the hold: refused, the hold named.
  const auto error =
      shop.refused(before("fit-shims-and-pull/fit_pack", "left"), "workshop.nothing_before");
  EXPECT_EQ(error.detail("hold"), "support");
}

TEST_F(MarkBefore, OneUndoTakesAllOfItBack) {
  const auto open = shop.state().valid.size();
  shop.ok(before("fit-shims-and-pull/fit_pack", "left"));
  EXPECT_GT(shop.state().valid.size(), open);
  shop.clock.advanceMilliseconds(60'000);
  shop.ok(R"({"do":"undo"})");
  for (const auto& view : shop.state().steps) EXPECT_FALSE(view.done()) << view.step->id;
  EXPECT_TRUE(shop.state().ledger.empty());
}

TEST_F(MarkBefore, NeedsAStep) {
  shop.refused(R"({"do":"done_before"})", "workshop.step_needed");
}

}  // namespace
}  // namespace sw::test
