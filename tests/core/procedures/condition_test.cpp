// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <map>

#include "procedures/fact_words.h"
#include "procedures/instantiate.h"
#include "procedures/shim_effect.h"
#include "sample.h"

namespace sw::procedures {
namespace {

using model::Side;

Facts known(std::map<std::string, std::string> words) {
  return [words](const std::string& fact, std::optional<Side>) -> std::optional<std::string> {
    const auto found = words.find(fact);
    return found == words.end() ? std::nullopt : std::optional(found->second);
  };
}

TEST(Condition, NothingAskedAlwaysHolds) {
  EXPECT_TRUE(holds({}, known({}), std::nullopt));
}

TEST(Condition, EveryFactMustHaveOneOfItsWords) {
  const Condition condition{{"lubricant", {"oil"}}, {"swivel_bearing", {"taper", "bush"}}};
  EXPECT_TRUE(holds(condition, known({{"lubricant", "oil"}, {"swivel_bearing", "bush"}}), {}));
  EXPECT_FALSE(holds(condition, known({{"lubricant", "grease"}, {"swivel_bearing", "bush"}}), {}));
  EXPECT_FALSE(
      holds(condition, known({{"lubricant", "oil"}, {"swivel_bearing", "sprung_pin"}}), {}));
}

TEST(Condition, AFactNotKnownYetHolds) {
  const Condition condition{{"lubricant", {"oil"}}};
  EXPECT_TRUE(holds(condition, known({}), std::nullopt));
}

TEST(Condition, AnObservationNotMadeDoesNotHold) {
  const Condition condition{{"observed.feel", {"gritty", "notchy"}}};
  EXPECT_FALSE(holds(condition, known({}), Side::Left));
  EXPECT_FALSE(holds(condition, known({{"observed.feel", "smooth"}}), Side::Left));
  EXPECT_TRUE(holds(condition, known({{"observed.feel", "notchy"}}), Side::Left));
}

TEST(Condition, ObservationsAreAskedForTheSideOfTheStep) {
  const Facts onLeftOnly = [](const std::string& fact, std::optional<Side> side) {
    const bool seen = fact == "observed.feel" && side == Side::Left;
    return seen ? std::optional<std::string>("gritty") : std::nullopt;
  };
  const Condition condition{{"observed.feel", {"gritty"}}};
  EXPECT_TRUE(holds(condition, onLeftOnly, Side::Left));
  EXPECT_FALSE(holds(condition, onLeftOnly, Side::Right));
}

TEST(Condition, TheSideIsItself) {
  const Condition condition{{"side", {"right"}}};
  EXPECT_TRUE(holds(condition, known({}), Side::Right));
  EXPECT_FALSE(holds(condition, known({}), Side::Left));
  EXPECT_TRUE(holds(condition, known({}), std::nullopt));
}

TEST(Arrangement, WordsByStoredName) {
  model::AxleArrangement arrangement;
  EXPECT_EQ(arrangementWord(arrangement, "lubricant"), std::nullopt);
  arrangement.lubricant = model::Lubricant::Oil;
  arrangement.dragLinkSide = Side::Right;
  arrangement.steeringArmOnCap = model::YesNo::No;
  EXPECT_EQ(arrangementWord(arrangement, "lubricant"), "oil");
  EXPECT_EQ(arrangementWord(arrangement, "drag_link_side"), "right");
  EXPECT_EQ(arrangementWord(arrangement, "steering_arm_on_cap"), "no");
  EXPECT_EQ(arrangementWord(arrangement, "colour"), std::nullopt);
}

TEST(Arrangement, RecordedAsUnknownIsNotKnown) {
  model::AxleArrangement arrangement;
  arrangement.absLead = model::YesNo::Unknown;
  EXPECT_EQ(arrangementWord(arrangement, "abs_lead"), std::nullopt);
}

TEST(FactWords, EveryArrangementFieldHasWords) {
  int fields = 0;
  const model::AxleArrangement any;
  model::AxleArrangement::fields(any, [&](std::string_view name, const auto&) {
    const auto words = wordsOfFact(name);
    ASSERT_TRUE(words.has_value()) << name;
    EXPECT_GE(words->size(), 2U) << name;
    ++fields;
  });
  EXPECT_EQ(fields, 12);
  EXPECT_THAT(wordsOfFact("abs_lead").value(), testing::ElementsAre("yes", "no"));
  EXPECT_THAT(wordsOfFact("round").value(), testing::ElementsAre("first", "later"));
  EXPECT_FALSE(wordsOfFact("observed.feel").has_value());
  EXPECT_TRUE(isObserved("observed.feel"));
  EXPECT_FALSE(isObserved("observed."));
}

// The dimension chain: shims under the cap flange hold the bearings apart, shims between pin and
// cap press them together.
TEST(ShimEffect, MirroredLayoutGivesMirroredDirection) {
  const std::vector<mechanics::AllowedPack> packs{{{millimetres(0.3)}, millimetres(0.3)},
                                                  {{millimetres(0.5)}, millimetres(0.5)},
                                                  {{millimetres(0.8)}, millimetres(0.8)}};
  mechanics::PackStep step;
  step.current = millimetres(0.5);
  step.direction = mechanics::ForceDirection::RaiseForce;
  step.effect = shimEffect(model::ShimLayout::CapFlange);
  EXPECT_DOUBLE_EQ(inMillimetres(mechanics::nextPack(packs, step).value().total), 0.3);
  step.effect = shimEffect(model::ShimLayout::Inner);
  EXPECT_DOUBLE_EQ(inMillimetres(mechanics::nextPack(packs, step).value().total), 0.8);
}

}  // namespace
}  // namespace sw::procedures
