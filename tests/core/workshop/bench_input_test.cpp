// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/bench_input.h"

#include <map>
#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "shop_fixture.h"
#include "units/parse.h"

namespace sw::test {
namespace {

using model::Json;
using model::Side;

/// A job in which packs and pulls are recorded and nothing else is in the way.
double millimetresOf(const Json& text) {
  const auto quantity =
      parseQuantity(text.get<std::string>(), {"length", QuantityKind::Length, {}});
  return quantity ? inMillimetres(quantity->value.as<Length>()) : 0;
}

class BenchInput : public testing::Test {
 protected:
  void SetUp() override {
    shop.setUp();
    shop.ok(R"({"do":"set_vehicle","registration":"AB 12","shim_layout":"cap_flange"})");
    shop.spec(R"("key":"swivel.starting_force","type":"limit","min":"15 N","max":"26 N")");
    shop.spec(R"("key":"shims.sizes","type":"text","text":"0.10 0.25 0.50")");
    shop.spec(R"("key":"shims.max_pack","type":"value","value":"1.4 mm")");
    shop.ok(R"({"do":"start_procedure","procedure":"fit-shims-and-pull"})");
  }
  void at(const std::string& step, const std::string& side, int round, const std::string& rest) {
    shop.ok(R"({"do":"override","rule":"order","why":"only pack and pull matter here","step":)" +
            ("\"fit-shims-and-pull/" + step) + R"(","side":")" + side + R"(","round":)" +
            std::to_string(round) + "}");
    shop.ok("{" + rest + R"(,"step":"fit-shims-and-pull/)" + step + R"(","side":")" + side +
            R"(","round":)" + std::to_string(round) + "}");
  }
  void fit(const std::string& side, const std::string& shims, int round = 1) {
    at("fit_pack", side, round, R"("do":"shim_pack","role":"fitted","shims":")" + shims + "\"");
  }
  void pull(const std::string& side, const std::string& readings, int round = 1) {
    at("pull", side, round,
       R"("do":"take_readings","instrument":"scale","readings":")" + readings + "\"");
  }
  Json input(const std::string& calculation, Side side) {
    const auto state = shop.state();
    return workshop::benchInput(state, *shop.workshop->shop().value(), calculation,
                                {std::nullopt, side});
  }

  Shop shop;
};

TEST_F(BenchInput, TheShimAdvisorGetsWhatTheJobKnows) {
  fit("left", "0.50 + 0.50 + 0.10");
  pull("left", "9 10 10.5 10 N");
  const Json left = input("shim-pack", Side::Left);
  EXPECT_EQ(left.at("layout"), "cap_flange");
  EXPECT_EQ(left.at("limit"), (Json{{"min", "15 N"}, {"max", "26 N"}}));
  EXPECT_EQ(left.at("shims").size(), 3U);
  EXPECT_EQ(left.at("max_pack"), "1.4 mm");
  ASSERT_EQ(left.at("measured").size(), 1U);
  const Json& pack = left.at("measured").at(0);
  EXPECT_EQ(pack.at("pack"), "1.1 mm");
  // The first pull settles the bearing and is not used.
  EXPECT_EQ(pack.at("pulls"), (Json{"10 N", "10.5 N", "10 N"}));
  EXPECT_TRUE(left.at("instrument").contains("graduation"));
  EXPECT_FALSE(left.contains("other_side"));
  // One pack without history: a step, and no prediction.
  const auto answer = compute::evaluate(compute::findCalculation("shim-pack").value(), left);
  ASSERT_TRUE(answer) << answer.error().key << " " << answer.error().field;
  EXPECT_EQ(answer->at("result").at("reason"), "one_step");
}

TEST_F(BenchInput, TheOtherSideIsHeldAgainstIt) {
  fit("left", "0.50 + 0.50");
  pull("left", "17 18 18 18 N");
  fit("right", "0.50 + 0.50 + 0.10");
  pull("right", "9 10 10 10 N");
  EXPECT_EQ(input("shim-pack", Side::Right).at("other_side"), "18 N");
}

TEST_F(BenchInput, EachPackKeepsThePullsThatWereMadeWithIt) {
  fit("left", "0.50 + 0.50 + 0.10");
  pull("left", "9 10 10 10 N");
  fit("left", "0.50 + 0.50", 2);
  pull("left", "13 14 14 14 N", 2);
  const Json measured = input("shim-pack", Side::Left).at("measured");
  ASSERT_EQ(measured.size(), 2U);
  EXPECT_EQ(measured.at(0).at("pack"), "1.1 mm");
  EXPECT_EQ(measured.at(1).at("pack"), "1 mm");
  EXPECT_EQ(measured.at(1).at("pulls").at(0), "14 N");
}

TEST_F(BenchInput, AMeasuredGapOrFloatSaysWhereTheKneeLies) {
  EXPECT_FALSE(input("shim-pack", Side::Left).contains("measured_float"));
  at("gap_for_pack", "left", 1,
     R"("do":"take_readings","instrument":"feeler","readings":"0.95 0.95 0.95 0.95 mm")");
  const Json taken = input("shim-pack", Side::Left).at("measured_float");
  // Nipped to a drag: the float is gone somewhere in the next tenth.
  EXPECT_EQ(taken.at("pack"), "1 mm");
  EXPECT_GE(millimetresOf(taken.at("standard_uncertainty")), 0.03);
  EXPECT_FALSE(input("shim-pack", Side::Right).contains("measured_float"));
}

TEST_F(BenchInput, AFloatMeasuredWithAPackInPlaceCountsFromThatPack) {
  shop.ok(R"({"do":"set_vehicle","registration":"AB 12","shim_layout":"inner"})");
  fit("left", "0.25 + 0.10");
  at("float_for_pack", "left", 1,
     R"("do":"take_readings","instrument":"dial","readings":"0.20 0.20 0.20 mm")");
  // Between pin and cap more shims take the float up: 0.35 mm and 0.20 mm.
  EXPECT_NEAR(millimetresOf(input("shim-pack", Side::Left).at("measured_float").at("pack")), 0.55,
              1e-9);
}

TEST_F(BenchInput, NoFloatToBeToldFromNoneSaysNothing) {
  shop.ok(R"({"do":"set_vehicle","registration":"AB 12","shim_layout":"inner"})");
  fit("left", "0.25 + 0.10");
  at("float_for_pack", "left", 1,
     R"("do":"take_readings","instrument":"dial","readings":"0 0 0 mm")");
  EXPECT_FALSE(input("shim-pack", Side::Left).contains("measured_float"));
}

TEST_F(BenchInput, PullsAtAnotherArmAreTurnedIntoThoseAtTheNewest) {
  fit("left", "0.50 + 0.50 + 0.10");
  pull("left", R"(9 10 10 10 N","arm":"200 mm)");
  fit("left", "0.50 + 0.50", 2);
  pull("left", R"(9 10 10 10 N","arm":"160 mm)", 2);
  const Json left = input("shim-pack", Side::Left);
  EXPECT_EQ(left.at("arm"), "160 mm");
  // The same torque about the swivel axis: 10 N at 0.2 m is 2 N m, which is 12.5 N at 0.16 m.
  EXPECT_EQ(left.at("measured").at(0).at("pulls"), (Json{"12.5 N", "12.5 N", "12.5 N"}));
  EXPECT_EQ(left.at("measured").at(1).at("pulls").at(0), "10 N");
  // A later job that pulls at 250 mm: 2 N m is 8 N there.
  const auto state = shop.state();
  const auto later = parseQuantity("250 mm", {"arm", QuantityKind::Length, {}});
  ASSERT_TRUE(later);
  const Json packs = workshop::pulledPacks(state, Side::Left, later->value);
  EXPECT_EQ(packs.at(0).at("pulls").at(0), "8 N");
}

TEST_F(BenchInput, TheKindOfAWheelBearingIsTheVehiclesOrAsked) {
  auto unsaid = shop.state();
  unsaid.vehicle.fact.arrangement.wheelBearing.reset();
  EXPECT_FALSE(workshop::benchInput(unsaid, *shop.workshop->shop().value(), "wheel-bearing",
                                    {std::nullopt, Side::Left})
                   .contains("kind"));
  for (const auto& [word, kind] :
       std::map<std::string, std::string>{{"end_float", "end_float"},
                                          {"preload", "preload_pull"},
                                          {"unit", "unit_without_setting"}}) {
    shop.ok(R"({"do":"set_vehicle","registration":"AB 12","wheel_bearing":")" + word + "\"}");
    EXPECT_EQ(input("wheel-bearing", Side::Left).at("kind"), kind);
  }
}

TEST_F(BenchInput, WhatTheJobDoesNotKnowIsLeftOut) {
  const Json left = input("shim-pack", Side::Left);
  EXPECT_FALSE(left.contains("measured"));
  EXPECT_TRUE(input("toe", Side::Left).empty());
  EXPECT_TRUE(input("nothing of that name", Side::Left).empty());
}

TEST_F(BenchInput, StepsNameTheCalculationsThatServeThem) {
  std::map<std::string, std::vector<std::string>> names;
  for (const auto& step : shop.state().steps) {
    names[step.step->id] = workshop::benchFor(step);
    for (const auto& name : names[step.step->id]) {
      EXPECT_TRUE(compute::findCalculation(name)) << name;
    }
  }
  EXPECT_EQ(names["fit_pack"].front(), "shim-pack");
  EXPECT_EQ(names["pull"].front(), "shim-pack");
  EXPECT_EQ(names["cap_torque_bolts"].front(), "wrench-setting");
  EXPECT_TRUE(names["scrape"].empty());
}

TEST_F(BenchInput, ACalculationIsPutIntoTheJobWithItsAnswer) {
  const auto outcome =
      shop.ok(R"({"do":"calculate","calculation":"starting-force","remark":"left",)"
              R"("input":{"force":"10 N","arm":"200 mm"}})");
  ASSERT_FALSE(outcome.events.empty());
  const auto state = shop.state();
  const auto* fact = model::as<model::Calculated>(*state.valid.back());
  ASSERT_NE(fact, nullptr);
  const auto answer = model::parseJson(fact->answer).value();
  EXPECT_EQ(answer.at("result").at("torque"), "2 N m");  // 10 N at 0.2 m
  EXPECT_EQ(fact->remark, "left");
}

TEST_F(BenchInput, ACalculationThatCannotBeIsRefusedByTheNameOfItsField) {
  EXPECT_EQ(shop.refused(R"({"do":"calculate","calculation":"alchemy","input":{}})",
                         "compute.unknown_name")
                .field,
            "calculation");
  EXPECT_EQ(shop.refused(R"({"do":"calculate","calculation":"starting-force",)"
                         R"("input":{"force":"10 N"}})",
                         "json.missing")
                .field,
            "input/arm");
}

}  // namespace
}  // namespace sw::test
