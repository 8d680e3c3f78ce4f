// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/own_numbers.h"

#include <gtest/gtest.h>

#include <numeric>

#include "diagnosis/shipped_causes.h"

namespace sw::diagnosis {
namespace {

TEST(OwnNumbers, StandInThePlaceOfTheShippedOnes) {
  const auto own = withOwnNumbers(shippedCauses(), R"({
    "fallback_minutes": 300,
    "causes": {"disc": {"weight": 30, "answers": {"steady": {"yes": 0.3}}}},
    "checks": {"balance": {"minutes": 25, "finds": {"wheel_unbalance": 0.8}}},
    "setups": {"lifted": {"stands": {"open": 22, "close": 9}}}})");
  ASSERT_TRUE(own) << own.error().key << " " << own.error().field;
  const auto& table = own->table;
  const auto disc = *table.cause("disc");
  EXPECT_EQ(own->fallbackMinutes, 300);
  EXPECT_EQ(table.causes[disc].weight, 30);
  EXPECT_EQ(table.causes[disc].answers[*table.feature("steady")], (std::vector<double>{.3, .7}));
  EXPECT_EQ(own->checks[*own->check("balance")].minutes, 25);
  EXPECT_EQ(own->checks[*own->check("balance")].finds.front().chance, .8);
  EXPECT_EQ(own->setups[*own->setup("lifted")].minutes[0].open, 22);
  // All others stay.
  EXPECT_EQ(own->setups[*own->setup("lifted")].minutes[1].open,
            shippedCauses().setups[*own->setup("lifted")].minutes[1].open);
}

TEST(OwnNumbers, AnswersThatAreNotNamedShareWhatIsLeftAsBefore) {
  const auto& before = shippedCauses().table;
  const auto own = withOwnNumbers(
      shippedCauses(), R"({"causes": {"disc": {"answers": {"braking": {"only": 0.5}}}}})");
  ASSERT_TRUE(own);
  const auto disc = *before.cause("disc");
  const auto& row = own->table.causes[disc].answers[*before.feature("braking")];
  const auto& old = before.causes[disc].answers[*before.feature("braking")];
  EXPECT_NEAR(std::accumulate(row.begin(), row.end(), 0.0), 1, 1e-12);
  EXPECT_EQ(row[0], .5);
  EXPECT_NEAR(row[1] / row[3], old[1] / old[3], 1e-9);
}

TEST(OwnNumbers, WithoutAnyTheShippedOnesStay) {
  const auto own = withOwnNumbers(shippedCauses(), "");
  ASSERT_TRUE(own);
  EXPECT_EQ(own->table.causes.front().weight, shippedCauses().table.causes.front().weight);
}

TEST(OwnNumbers, WhatIsWrongIsNamed) {
  const std::vector<std::array<const char*, 3>> rows{
      {R"({"causes":{"moon":{"weight":1}}})", "causes.unknown_key", "/causes/moon"},
      {R"({"causes":{"disc":{"weight":-1}}})", "causes.bad_weight", "/causes/disc/weight"},
      {R"({"checks":{"balance":{"finds":{"disc":0.5}}}})", "causes.unknown_key",
       "/checks/balance/finds/disc"},
      {R"({"checks":{"balance":{"minutes":-2}}})", "causes.bad_minutes", "/checks/balance/minutes"},
      {R"({"causes":{"disc":{"answers":{"braking":{"only":0.7,"also":0.6}}}}})",
       "causes.bad_chance", "/causes/disc/answers/braking"},
      {R"({"colour":"red"})", "json.unknown_field", "/colour"}};
  for (const auto& [text, key, field] : rows) {
    const auto own = withOwnNumbers(shippedCauses(), text);
    ASSERT_FALSE(own) << text;
    EXPECT_EQ(own.error().key, key) << text;
    EXPECT_EQ(own.error().field, field) << text;
  }
}

TEST(OwnNumbers, WeightsThatAreAllNoughtAreRefused) {
  std::string text;
  for (const Cause& cause : shippedCauses().table.causes) {
    text += (text.empty() ? "" : ",") + ("\"" + cause.key + "\":{\"weight\":0}");
  }
  const auto own = withOwnNumbers(shippedCauses(), "{\"causes\":{" + text + "}}");
  ASSERT_FALSE(own);
  EXPECT_EQ(own.error().key, "causes.bad_weight");
  EXPECT_EQ(own.error().field, "/causes");
}

TEST(NumberPlaces, EveryNumberIsTakenAndGivenBackWhereItStands) {
  const auto& shipped = shippedCauses();
  const auto places = numbersOf(shipped);
  EXPECT_GT(places.size(), 700U);  // 22 causes with 33 numbers each, and the checks
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto& place = places[i];
    const double other = place.kind == NumberKind::Chance ? .125 : place.value + 3;
    const auto text = withChanges(shipped, "", {{place.path, other}});
    ASSERT_TRUE(text) << text.error().key << " " << text.error().field;
    EXPECT_TRUE(isOwn(*text, place.path));
    const auto file = withOwnNumbers(shipped, *text);
    ASSERT_TRUE(file);
    EXPECT_NEAR(numbersOf(*file)[i].value, other, 1e-12) << *text;
    EXPECT_EQ(withoutNumber(*text, place.path), "");
  }
}

TEST(NumberPlaces, OneIsTakenBackAndTheOthersStay) {
  const auto& shipped = shippedCauses();
  const auto text = withChanges(shipped, "",
                                {{{"checks", "balance", "minutes"}, 20},
                                 {{"checks", "balance", "false_alarm"}, .25},
                                 {{"comeback_days"}, 60}});
  ASSERT_TRUE(text);
  EXPECT_TRUE(isOwn(*text, {"checks"}));
  EXPECT_FALSE(isOwn(*text, {"checks", "balance", "finds"}));
  const auto less = withChanges(shipped, *text, {{{"checks", "balance", "minutes"}, {}}});
  ASSERT_TRUE(less);
  EXPECT_EQ(*less, R"({"checks":{"balance":{"false_alarm":0.25}},"comeback_days":60.0})");
  EXPECT_EQ(withoutNumber(*text, {"checks"}), R"({"comeback_days":60.0})");
  EXPECT_EQ(withoutNumber(*text, {}), "");
  EXPECT_EQ(withoutNumber(*less, {"causes", "disc"}), *less);
}

TEST(NumberPlaces, WhatCannotBeIsRefusedAndNamed) {
  const auto& shipped = shippedCauses();
  const auto error = [&](const std::vector<NumberChange>& changes, const std::string& text = {}) {
    const auto changed = withChanges(shipped, text, changes);
    return changed ? std::string("taken") : changed.error().key + " " + changed.error().field;
  };
  const auto braking = [](const char* word) {
    return std::vector<std::string>{"causes", "disc", "answers", "braking", word};
  };
  EXPECT_EQ(error({{{"causes", "disc", "answers", "steady", "yes"}, 1.5}}),
            "causes.bad_chance /causes/disc/answers/steady/yes");
  EXPECT_EQ(error({{{"comeback_days"}, -1}}), "causes.bad_days /comeback_days");
  EXPECT_EQ(error({{{"moon"}, 1}}), "json.unknown_field /moon");
  EXPECT_EQ(error({{braking("only"), .7}, {braking("also"), .6}}),
            "causes.bad_chance /causes/disc/answers/braking");
  // What is above 1 only on the way is taken: all changes count together.
  const auto before = withChanges(shipped, "", {{braking("only"), .9}});
  EXPECT_EQ(error({{braking("also"), .8}, {braking("only"), .1}}, *before), "taken");
}

}  // namespace
}  // namespace sw::diagnosis
