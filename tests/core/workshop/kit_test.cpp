// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/kit.h"

#include <gmock/gmock.h>
#include <set>

#include "shop_fixture.h"

namespace sw::test {
namespace {

using workshop::KitLine;
using workshop::KitTick;
using Kind = workshop::KitLine::Kind;

const KitLine* find(const std::vector<KitLine>& kit, const std::string& key) {
  for (const KitLine& line : kit) {
    if (line.key == key) return &line;
  }
  return nullptr;
}

class Kit : public testing::Test {
 protected:
  void start(const std::string& procedure, const std::string& vehicle = "") {
    shop.setUp(vehicle);
    shop.ok(R"({"do":"start_procedure","procedure":")" + procedure + "\"}");
  }
  std::vector<KitLine> kit() { return workshop::kitOf(shop.state()); }
  std::string amount(const std::string& key) {
    const auto lines = kit();
    const KitLine* line = find(lines, key);
    return line == nullptr ? "not there" : line->amount;
  }

  Shop shop;
};

TEST_F(Kit, EveryToolOfThePlanStandsOnceWithItsSteps) {
  shop.setUp();
  shop.ok(R"({"do":"start_plan","plan":"swivel-preload"})");
  const auto state = shop.state();
  const auto lines = kit();
  std::set<std::string> keys;
  for (const KitLine& line : lines) EXPECT_TRUE(keys.insert(line.key).second) << line.key;
  // The other way round: from the steps to the list.
  std::size_t uses = 0;
  for (std::size_t i = 0; i < state.steps.size(); ++i) {
    for (const auto& tool : state.steps[i].step->tools) {
      const KitLine* line = find(lines, "tool/" + tool.name);
      ASSERT_NE(line, nullptr) << tool.name;
      EXPECT_THAT(line->steps, testing::Contains(i)) << tool.name;
      EXPECT_THAT(line->instead, testing::IsSupersetOf(tool.instead)) << tool.name;
      EXPECT_EQ(line->amount, "") << tool.name;
      ++uses;
    }
  }
  EXPECT_GT(uses, lines.size());  // many steps share a tool
  const KitLine* wrench = find(lines, "tool/Torque wrench");
  ASSERT_NE(wrench, nullptr);
  EXPECT_GT(wrench->steps.size(), 5U);
}

TEST_F(Kit, ToolsPartsAndConsumablesStandInThisOrder) {
  start("refit-swivel");
  const auto lines = kit();
  EXPECT_TRUE(std::is_sorted(lines.begin(), lines.end(),
                             [](const auto& a, const auto& b) { return a.kind < b.kind; }));
  EXPECT_EQ(lines.front().kind, Kind::Tool);
  EXPECT_EQ(lines.back().kind, Kind::Consumable);
}

// refit-swivel.json asks for one new split pin a track-rod end (both sides) and one for the drag
// link (one side), and two plug washers a side on an axle filled with oil.
TEST_F(Kit, APartCountsOnceASide) {
  start("refit-swivel", R"(,"lubricant":"oil")");
  EXPECT_EQ(amount("part/split pin, track rod"), "2");
  EXPECT_EQ(amount("part/split pin, drag link"), "1");
  EXPECT_EQ(amount("part/washers of drain and level plug"), "4");
  const auto lines = kit();
  EXPECT_TRUE(find(lines, "part/split pin, track rod")->singleUse);
}

TEST_F(Kit, WhatTheVehicleDoesNotHaveIsNotAskedFor) {
  start("refit-swivel");  // filled with grease
  EXPECT_EQ(amount("part/washers of drain and level plug"), "not there");
  EXPECT_EQ(amount("part/split pin, track rod"), "2");
}

TEST_F(Kit, ASideAloneNeedsHalfTheParts) {
  shop.setUp();
  shop.ok(R"({"do":"start_procedure","procedure":"refit-swivel","sides":"right"})");
  EXPECT_EQ(amount("part/split pin, track rod"), "1");
  EXPECT_EQ(amount("part/split pin, drag link"), "not there");  // the drag link is on the left
}

TEST_F(Kit, AStepThatIsDoneNeedsNothingAnyMore) {
  start("refit-swivel");
  for (const KitLine& line : kit()) EXPECT_TRUE(line.stillNeeded) << line.key;
  for (const char* side : {"left", "right"}) {
    shop.ok(std::string(R"({"do":"override","rule":"order","step":"refit-swivel/track_rod_pin",)"
                        R"("side":")") +
            side + R"(","why":"only the pins matter here"})");
    shop.ok(std::string(R"({"do":"do_step","step":"refit-swivel/track_rod_pin","side":")") + side +
            "\"}");
    const auto lines = kit();
    EXPECT_EQ(find(lines, "part/split pin, track rod")->stillNeeded, std::string(side) == "left");
  }
}

TEST_F(Kit, ASupersededRoundDoesNotCountTwice) {
  start("fit-shims-and-pull");
  EXPECT_EQ(amount("part/swivel shims, as the pack needs"), "2");
  shop.ok(R"({"do":"start_procedure","procedure":"fit-shims-and-pull","sides":"left"})");
  EXPECT_EQ(amount("part/swivel shims, as the pack needs"), "2");
}

TEST_F(Kit, TicksAreKeptAndTakenBackWithoutAFact) {
  start("refit-swivel");
  const auto facts = shop.book->nextEntryId();
  const model::JobId job{shop.job};
  const std::string key = "tool/Ball joint separator";
  ASSERT_TRUE(workshop::setKitTick(*shop.book, job, key, KitTick::Missing));
  ASSERT_TRUE(workshop::setKitTick(*shop.book, job, "part/split pin, track rod", KitTick::Have));
  ASSERT_TRUE(workshop::setKitTick(*shop.book, {job.value + 1}, key, KitTick::Have));
  ASSERT_TRUE(shop.book->setDraft({"job/1/run/3", "18."}));
  using testing::Pair;
  EXPECT_THAT(*workshop::kitTicks(*shop.book, job),
              testing::UnorderedElementsAre(Pair(key, KitTick::Missing),
                                            Pair("part/split pin, track rod", KitTick::Have)));
  ASSERT_TRUE(workshop::setKitTick(*shop.book, job, key, KitTick::Open));
  EXPECT_EQ(workshop::kitTicks(*shop.book, job)->size(), 1U);
  EXPECT_EQ(*shop.book->nextEntryId(), *facts);
  shop.reopenBook();
  EXPECT_EQ(workshop::kitTicks(*shop.book, job)->at("part/split pin, track rod"), KitTick::Have);
}

/// One step with consumables as text says, for amounts no shipped procedure has.
TEST(KitAmounts, CountsAddUpMeasuresMultiplyWordsStandOnce) {
  procedures::Procedure procedure;
  procedure.id = "oil";
  procedures::Step each, once;
  each.id = "each";
  each.consumables = {{"Oil", "0.5 l"}, {"Cloth", "2"}, {"Solvent", "a little"}};
  once.id = "once";
  once.optional = true;
  once.consumables = {{"Cloth", "1"}, {"Cloth", "as needed"}, {"Tape", ""}};
  procedure.steps = {each, once};
  workshop::JobState job;
  workshop::RunView run;
  run.procedure = std::make_shared<const procedures::Procedure>(procedure);
  job.runs.push_back(run);
  for (const auto side : {model::Side::Left, model::Side::Right}) {
    workshop::StepView view;
    view.step = job.runs[0].procedure->steps.data();
    view.side = side;
    job.steps.push_back(view);
  }
  workshop::StepView last;
  last.step = &job.runs[0].procedure->steps[1];
  job.steps.push_back(last);

  const auto lines = workshop::kitOf(job);
  ASSERT_EQ(lines.size(), 4U);
  EXPECT_EQ(find(lines, "consumable/Oil")->amount, "2 x 0.5 l");
  EXPECT_EQ(find(lines, "consumable/Cloth")->amount, "5; as needed");
  EXPECT_EQ(find(lines, "consumable/Solvent")->amount, "a little");
  EXPECT_EQ(find(lines, "consumable/Tape")->amount, "");
  EXPECT_TRUE(find(lines, "consumable/Tape")->optional);
  EXPECT_FALSE(find(lines, "consumable/Cloth")->optional);
  EXPECT_THAT(find(lines, "consumable/Cloth")->steps, testing::ElementsAre(0, 1, 2));

  job.steps[0].action = model::StepAction::NotApplicable;
  EXPECT_EQ(find(workshop::kitOf(job), "consumable/Oil")->amount, "0.5 l");
}

}  // namespace
}  // namespace sw::test
