// SPDX-License-Identifier: GPL-3.0-or-later
// The same job by other hands: other units, a decimal comma, sides swapped, a restart after every
// entry. The facts in SI and the verdicts must be the same.
#include <cmath>
#include <functional>
#include <nlohmann/json.hpp>

#include "job_scripts.h"
#include "model/entry_json.h"
#include "shop_fixture.h"
#include "units/format.h"
#include "units/parse.h"

namespace sw::test {
namespace {

using model::Json;

/// SI values agree to 12 digits; what is computed from them (the degrees of freedom are a quotient
/// of fourth powers) to 9.
std::string significant(double value, int digits) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.*g", digits, value);
  return text.data();
}

/// Leaves what does not depend on who typed it how: SI values, words, sides.
Json plain(const Json& json) {
  if (json.is_object() && json.contains("si") && json.contains("unit")) {
    return significant(json["si"].get<double>(), 12);
  }
  if (json.is_number_float()) return significant(json.get<double>(), 9);
  if (!json.is_object()) return json;
  Json result = Json::object();
  for (const auto& [key, value] : json.items()) {
    const bool pointer = key == "series" || key == "limit" || key == "instrument" ||
                         key == "instrument_check" || key == "spec" || key == "wrench" ||
                         key == "placed_after" || key == "vehicle" || key == "text" ||
                         key == "angle_within";
    if (!pointer) result[key] = plain(value);
  }
  return result;
}

Json factsOf(const workshop::JobState& state, bool mirrored) {
  Json facts = Json::array();
  for (const auto* entry : state.valid) {
    Json fact = plain(model::payloadJson(entry->payload));
    fact["kind"] = std::string(model::kindOf(entry->payload));
    fact["step"] = entry->step;
    if (entry->side) {
      const auto side = mirrored ? model::otherSide(*entry->side) : *entry->side;
      fact["side"] = std::string(wordOf(side));
    }
    if (mirrored && model::as<model::RunStarted>(*entry) != nullptr) {
      std::swap(fact["left"], fact["right"]);
    }
    facts.push_back(std::move(fact));
  }
  return facts;
}

using Change = std::function<void(Json&)>;

struct Hands {
  Change change = [](Json&) {};
  bool restart = false;
  bool mirrored = false;
};

/// Feeds set-up and job to a fresh book.
void play(Shop& shop, const Hands& hands) {
  shop.clock.set(*parseTimestamp("2031-03-03T08:00+01:00"));
  for (const char* file : {"resources/demo/shop.jsonl", "tests/data/jobs/complete.jsonl"}) {
    for (const auto& line : linesOf(file)) {
      auto json = model::parseJson(line);
      ASSERT_TRUE(json) << line;
      hands.change(*json);
      const auto outcome = shop.say(json->dump());
      ASSERT_TRUE(outcome) << json->dump() << "\n" << Shop::describe(outcome);
      if (!hands.restart || shop.job == 0) continue;
      shop.workshop.reset();
      shop.book.reset();
      auto opened = store::Book::open(shop.path, store::OpenMode::ReadWrite, shop.clock);
      ASSERT_TRUE(opened) << opened.error().key;
      shop.book = std::move(*opened);
      shop.reopen();
    }
  }
}

/// Readings of forces in another unit, with all the digits that SI needs.
Change inUnit(const std::string& symbol) {
  return [symbol](Json& json) {
    if (!json.contains("readings") || json["instrument"] != "Spring scale 50 N") return;
    const auto series =
        parseSeries(json["readings"].get<std::string>(), {"readings", QuantityKind::Force, "N"});
    ASSERT_TRUE(series);
    const auto unit = findUnit(QuantityKind::Force, symbol);
    ASSERT_TRUE(unit);
    std::string text;
    for (const auto& one : *series) text += exactText(one.value.si, *unit) + " ";
    json["readings"] = text;
  };
}

void withComma(Json& json) {
  for (const char* key : {"readings", "shims", "set", "odometer"}) {
    if (!json.contains(key)) continue;
    std::string text = json[key].get<std::string>();
    for (char& c : text) {
      if (c == '.') c = ',';
    }
    json[key] = text;
  }
}

void torqueInPoundFeet(Json& json) {
  if (!json.contains("set") || json["do"] != "torque") return;
  const auto value =
      parseQuantity(json["set"].get<std::string>(), {"set", QuantityKind::Torque, "N m"});
  ASSERT_TRUE(value);
  json["set"] = exactText(value->value.si, *findUnit(QuantityKind::Torque, "lbf ft"));
}

void otherSides(Json& json) {
  for (const char* key : {"side", "drag_link_side"}) {
    if (!json.contains(key)) continue;
    json[key] = json[key] == "left" ? "right" : "left";
  }
}

class OtherHands : public testing::Test {
 protected:
  Json facts(const Hands& hands) {
    Shop shop;
    play(shop, hands);
    return factsOf(shop.state(), hands.mirrored);
  }
};

void expectSame(const Json& a, const Json& b) {
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    ASSERT_EQ(a[i].dump(), b[i].dump()) << "fact " << i;
  }
}

TEST_F(OtherHands, TheJobAsWrittenIsSignedOff) {
  Shop shop;
  play(shop, {});
  ASSERT_TRUE(shop.state().closed);
  EXPECT_EQ(shop.state().closed->outcome, model::JobOutcome::SignedOff);
}

TEST_F(OtherHands, InKilogramForce) {
  expectSame(facts({}), facts({inUnit("kgf")}));
}
TEST_F(OtherHands, InPoundForce) {
  expectSame(facts({}), facts({inUnit("lbf")}));
}
TEST_F(OtherHands, TorquesInPoundFeet) {
  expectSame(facts({}), facts({torqueInPoundFeet}));
}

TEST_F(OtherHands, WithADecimalComma) {
  Hands hands;
  hands.change = withComma;
  Json there = facts({});
  Json here = facts(hands);
  // The stack of shims is kept as typed; its total is what counts.
  for (Json* list : {&there, &here}) {
    for (auto& fact : *list) fact.erase("shims");
  }
  expectSame(there, here);
}

TEST_F(OtherHands, WithARestartAfterEveryEntry) {
  Hands hands;
  hands.restart = true;
  expectSame(facts({}), facts(hands));
}

TEST_F(OtherHands, SidesSwapped) {
  Hands hands;
  hands.change = otherSides;
  hands.mirrored = true;
  expectSame(facts({}), facts(hands));
}

}  // namespace
}  // namespace sw::test
