// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/instantiate.h"

#include <map>

#include "sample.h"

namespace sw::procedures {
namespace {

using model::Side;
using Words = std::map<std::string, std::string>;

const std::vector<Side> kBothSides{Side::Left, Side::Right};

Facts known(Words words) {
  return [words](const std::string& fact, std::optional<Side> side) -> std::optional<std::string> {
    const auto ofSide = words.find(fact + (side == Side::Right ? "@right" : "@left"));
    if (side && ofSide != words.end()) return ofSide->second;
    const auto found = words.find(fact);
    return found == words.end() ? std::nullopt : std::optional(found->second);
  };
}

std::string step(const std::string& id, const std::string& side, const std::string& more = {}) {
  return doStep(id, R"("side": ")" + side + "\"" + (more.empty() ? "" : ", " + more));
}

std::string nameOf(const StepInstance& instance) {
  if (!instance.side) return instance.step->id;
  return instance.step->id + (*instance.side == Side::Left ? ".l" : ".r");
}

/// "a.l; b.r<a.l,a.r": the instances in order, each with whom it waits for.
std::string run(const std::string& steps, const std::vector<Side>& sides, const Words& words) {
  const auto procedure = read(steps);
  if (!procedure) return procedure.error().key;
  const auto instances = instantiate(*procedure, sides, known(words));
  std::string text;
  for (const StepInstance& instance : instances) {
    text += (text.empty() ? "" : "; ") + nameOf(instance);
    for (std::size_t i = 0; i < instance.needs.size(); ++i) {
      text += (i == 0 ? "<" : ",") + nameOf(instances.at(instance.needs[i]));
    }
  }
  return text;
}

TEST(Instantiate, SidesFollowEachOtherStepByStep) {
  EXPECT_EQ(run(step("a", "each") + "," + step("b", "each"), kBothSides, {}),
            "a.l; a.r; b.l<a.l; b.r<a.r");
}

TEST(Instantiate, ARunOfOneSideHasOnlyThatSide) {
  const std::string steps = step("a", "once") + "," + step("b", "each") + "," + step("c", "once");
  EXPECT_EQ(run(steps, {Side::Right}, {}), "a; b.r<a; c<b.r");
  EXPECT_EQ(run(steps, {Side::Right, Side::Left, Side::Right}, {}), "a; b.l<a; b.r<a; c<b.l,b.r");
}

TEST(Instantiate, AOnceStepJoinsBothSides) {
  EXPECT_EQ(
      run(step("a", "each") + "," + step("b", "once") + "," + step("c", "each"), kBothSides, {}),
      "a.l; a.r; b<a.l,a.r; c.l<b; c.r<b");
}

TEST(Instantiate, NeedsReachPastTheStepBefore) {
  EXPECT_EQ(run(step("a", "each") + "," + step("b", "each") + "," +
                    step("c", "each", R"("needs": ["a"])") + "," +
                    step("d", "once", R"("needs": ["b", "c"])"),
                kBothSides, {}),
            "a.l; a.r; b.l<a.l; b.r<a.r; c.l<a.l; c.r<a.r; d<b.l,b.r,c.l,c.r");
}

const std::string kDragLink =
    step("a", "each") + "," + step("b", "drag_link_side") + "," + step("c", "each");

TEST(Instantiate, DragLinkSideKnown) {
  EXPECT_EQ(run(kDragLink, kBothSides, {{"drag_link_side", "right"}}),
            "a.l; a.r; b.r<a.r; c.l<a.l; c.r<b.r");
}

TEST(Instantiate, DragLinkSideNotInThisRun) {
  EXPECT_EQ(run(kDragLink, {Side::Left}, {{"drag_link_side", "right"}}), "a.l; c.l<a.l");
}

TEST(Instantiate, DragLinkSideUnknownAsksOnEverySide) {
  EXPECT_EQ(run(kDragLink, kBothSides, {}), "a.l; a.r; b.l<a.l; b.r<a.r; c.l<b.l; c.r<b.r");
  EXPECT_EQ(run(kDragLink, {Side::Right}, {{"drag_link_side", "unknown"}}),
            "a.r; b.r<a.r; c.r<b.r");
}

TEST(Instantiate, OtherSideIsAcrossFromTheDragLink) {
  const std::string steps = step("a", "other_side") + "," + step("b", "once");
  EXPECT_EQ(run(steps, kBothSides, {{"drag_link_side", "right"}}), "a.l; b<a.l");
  EXPECT_EQ(run(steps, kBothSides, {{"drag_link_side", "left"}}), "a.r; b<a.r");
  EXPECT_EQ(run(steps, kBothSides, {}), "a.l; a.r; b<a.l,a.r");
}

TEST(Instantiate, MirroredDragLinkGivesTheMirroredRun) {
  std::string left = run(kDragLink, kBothSides, {{"drag_link_side", "left"}});
  EXPECT_EQ(left, "a.l; a.r; b.l<a.l; c.l<b.l; c.r<a.r");
}

TEST(Instantiate, NeedsPassThroughALeftOutStep) {
  const std::string steps = step("a", "each") + "," +
                            step("drain", "each", R"("when": {"lubricant": ["oil"]})") + "," +
                            step("c", "each");
  EXPECT_EQ(run(steps, kBothSides, {{"lubricant", "grease"}}), "a.l; a.r; c.l<a.l; c.r<a.r");
  EXPECT_EQ(run(steps, {Side::Left}, {{"lubricant", "oil"}}), "a.l; drain.l<a.l; c.l<drain.l");
  EXPECT_EQ(run(steps, {Side::Left}, {}), "a.l; drain.l<a.l; c.l<drain.l");
}

TEST(Instantiate, PassingThroughALeftOutJoinStillWaitsForBothSides) {
  const std::string steps = step("a", "each") + "," +
                            step("b", "once", R"("when": {"lubricant": ["oil"]})") + "," +
                            step("c", "each");
  EXPECT_EQ(run(steps, kBothSides, {{"lubricant", "grease"}}),
            "a.l; a.r; c.l<a.l,a.r; c.r<a.l,a.r");
}

TEST(Instantiate, PassingThroughALongChain) {
  std::string steps = step("first", "each");
  for (int i = 0; i < 200; ++i) {
    steps += "," + step("s" + std::to_string(i), "each", R"("when": {"lubricant": ["oil"]})");
  }
  steps += "," + step("last", "once");
  EXPECT_EQ(run(steps, kBothSides, {{"lubricant", "grease"}}),
            "first.l; first.r; last<first.l,first.r");
}

TEST(Instantiate, ObservedOnOneSideMakesTheStepThere) {
  const std::string steps = step("feel", "each") + "," +
                            step("renew", "each", R"("when": {"observed.feel": ["gritty"]})") +
                            "," + step("close", "once");
  EXPECT_EQ(run(steps, kBothSides, {}), "feel.l; feel.r; close<feel.l,feel.r");
  EXPECT_EQ(run(steps, kBothSides, {{"observed.feel@right", "gritty"}}),
            "feel.l; feel.r; renew.r<feel.r; close<feel.l,renew.r");
}

TEST(Instantiate, TheSupportDecides) {
  const std::string steps =
      step("a", "once") + "," + step("stands", "once", R"("when": {"support": ["stands"]})") + "," +
      step("lift", "once", R"("needs": ["a"], "when": {"support": ["two_post", "four_post"]})") +
      "," + step("b", "each", R"("needs": ["stands", "lift"])");
  EXPECT_EQ(run(steps, {Side::Left}, {{"support", "stands"}}), "a; stands<a; b.l<a,stands");
  EXPECT_EQ(run(steps, {Side::Left}, {{"support", "four_post"}}), "a; lift<a; b.l<a,lift");
  EXPECT_EQ(run(steps, {Side::Left}, {{"support", "pit"}}), "a; b.l<a");
}

TEST(Instantiate, ARunWithoutSidesKeepsItsOnceSteps) {
  EXPECT_EQ(run(step("a", "once") + "," + step("b", "each") + "," + step("c", "once"), {}, {}),
            "a; c<a");
}

TEST(Instantiate, StepsPointIntoTheProcedure) {
  const auto procedure = read(step("a", "each"));
  ASSERT_TRUE(procedure.has_value());
  const auto instances = instantiate(*procedure, kBothSides, known({}));
  ASSERT_EQ(instances.size(), 2U);
  EXPECT_EQ(instances[0].step, &procedure->steps[0]);
  EXPECT_EQ(instances[1].step, &procedure->steps[0]);
}

// However steps, needs, conditions and sides are mixed, a need points backwards in the list and
// never across to the other side but through a once step.
TEST(Instantiate, NeedsAlwaysPointBackwards) {
  const std::vector<std::string> sides{"once", "each", "drag_link_side", "other_side"};
  unsigned seed = 7;
  const auto next = [&seed](unsigned below) {
    seed = seed * 1664525U + 1013904223U;  // Numerical Recipes' generator (from memory)
    return (seed >> 16U) % below;
  };
  for (int round = 0; round < 200; ++round) {
    std::string steps = step("s0", sides[next(4)]);
    for (unsigned i = 1; i < 12; ++i) {
      const std::string needs = R"("needs": ["s)" + std::to_string(next(i)) + R"(", "s)" +
                                std::to_string(next(i)) + R"("])";
      const std::string when = next(3) == 0 ? R"(, "when": {"lubricant": ["oil"]})" : "";
      steps += "," + step("s" + std::to_string(i), sides[next(4)], needs + when);
    }
    const auto procedure = read(steps);
    ASSERT_TRUE(procedure.has_value());
    const auto list = instantiate(*procedure, kBothSides,
                                  known({{"lubricant", "grease"}, {"drag_link_side", "left"}}));
    for (std::size_t i = 0; i < list.size(); ++i) {
      for (const std::size_t need : list[i].needs) ASSERT_LT(need, i) << steps;
    }
  }
}

}  // namespace
}  // namespace sw::procedures
