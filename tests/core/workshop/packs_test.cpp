// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop_fixture.h"
#include "units/format.h"
#include "workshop/rules.h"
#include "workshop/runs.h"

namespace sw::test {
namespace {

/// A job with packs and pulls on both sides and nothing else in the way.
class Packs : public testing::Test {
 protected:
  void start(const std::string& layout,
             const std::string& limits = R"("min":"15 N","max":"26 N")") {
    shop.setUp();
    shop.ok(R"({"do":"set_vehicle","registration":"AB 12","shim_layout":")" + layout + "\"}");
    if (limits.find("min") == std::string::npos) {
      shop.ok(R"({"do":"set_spec","registration":"AB 12","key":"swivel.starting_force",)"
              R"("type":"limit","withdrawn":true,"max":"26 N"})");
      // A line once withdrawn starts afresh: only an upper figure.
    }
    shop.spec(R"("key":"swivel.starting_force","type":"limit",)" + limits);
    shop.ok(R"({"do":"start_procedure","procedure":"fit-shims-and-pull"})");
  }

  void allow(const std::string& step, const std::string& side, int round = 1) {
    shop.ok(R"({"do":"override","rule":"order","step":"fit-shims-and-pull/)" + step +
            R"(","side":")" + side + R"(","round":)" + std::to_string(round) +
            R"(,"why":"only pack and pull matter here"})");
  }

  workshop::Outcome fit(const std::string& side, const std::string& shims, int round = 1) {
    allow("fit_pack", side, round);
    return shop.ok(R"({"do":"shim_pack","role":"fitted","step":"fit-shims-and-pull/fit_pack",)"
                   R"("side":")" +
                   side + R"(","round":)" + std::to_string(round) + R"(,"shims":")" + shims +
                   "\"}");
  }

  workshop::Outcome pull(const std::string& side, const std::string& readings, int round = 1) {
    allow("pull", side, round);
    return shop.ok(R"({"do":"take_readings","step":"fit-shims-and-pull/pull","side":")" + side +
                   R"(","round":)" + std::to_string(round) + R"(,"readings":")" + readings +
                   R"(","instrument":"scale"})");
  }

  workshop::Outcome observe(const std::string& side, const std::string& key,
                            const std::string& value, int round = 1) {
    allow("stays", side, round);
    return shop.ok(R"({"do":"observe","step":"fit-shims-and-pull/stays","side":")" + side +
                   R"(","round":)" + std::to_string(round) + R"(,"key":")" + key +
                   R"(","value":")" + value + "\"}");
  }

  model::ShimPack newestPack() { return shop.state().packs.back().fact; }
  std::string correction(const std::string& field, const std::string& value) {
    return R"({"do":"correct","reason":"typing_slip","entry":)" +
           std::to_string(shop.state().packs.back().entry.value) + R"(,"field":")" + field +
           R"(","value":")" + value + "\"}";
  }
  void correct(const std::string& field, const std::string& value) {
    shop.ok(correction(field, value));
  }
  Error refusedCorrection(const std::string& field, const std::string& value,
                          const std::string& key) {
    return shop.refused(correction(field, value), key);
  }

  std::int64_t newestRound(model::Side side) {
    const auto state = shop.state();
    const auto run = state.newestRun("fit-shims-and-pull", side);
    return run ? state.runs[*run].fact.round : 0;
  }

  Shop shop;
};

TEST_F(Packs, AShortPullAsksForTheNextPackAtOnce) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  const auto outcome = pull("left", "11 10.0 10.2 10.0");
  // Under the cap flange a thinner pack raises the force: 0.75 -> 0.70 (0.50 + 0.10 + 0.10).
  EXPECT_EQ(Shop::value(outcome, "next_pack", "total"), "0.70 mm");
  EXPECT_EQ(newestRound(model::Side::Left), 2);
  EXPECT_EQ(newestRound(model::Side::Right), 1);
}

TEST_F(Packs, TheMirroredLayoutGivesTheMirroredDirection) {
  start("inner");
  fit("left", "0.50 + 0.25");
  const auto outcome = pull("left", "11 10.0 10.2 10.0");
  // Between pin and cap a thicker pack raises it: 0.75 -> 0.80 (0.50 + 0.15 + 0.15).
  EXPECT_EQ(Shop::value(outcome, "next_pack", "total"), "0.80 mm");
}

TEST_F(Packs, APullOverTheLimitGoesTheOtherWay) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  const auto outcome = pull("left", "41 40.0 40.2 40.0");
  EXPECT_EQ(Shop::value(outcome, "next_pack", "total"), "0.80 mm");
  const auto state = shop.state();
  const auto run = state.newestRun("fit-shims-and-pull", model::Side::Left);
  ASSERT_TRUE(run);
  EXPECT_EQ(state.runs[*run].fact.why, "over_the_limit");
}

TEST_F(Packs, APullWithinAsksForNothing) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  const auto outcome = pull("left", "21 20.0 20.2 20.0");
  EXPECT_FALSE(Shop::told(outcome, "next_pack"));
  EXPECT_EQ(newestRound(model::Side::Left), 1);
}

TEST_F(Packs, AnUndecidedPullAsksForMorePullsNotForAPack) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  const auto outcome = pull("left", "15 14.8 15.6 15.2");
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "undecided");
  EXPECT_FALSE(Shop::told(outcome, "next_pack"));
}

TEST_F(Packs, TheEndOfThePacksLeadsToWhatElse) {
  start("cap_flange");
  fit("left", "0.10");  // the thinnest pack there is
  const auto outcome = pull("left", "11 10.0 10.2 10.0");
  EXPECT_TRUE(Shop::told(outcome, "packs_exhausted"));
  EXPECT_TRUE(shop.state().newestRun("what-else-to-suspect", model::Side::Left).has_value());
  EXPECT_EQ(newestRound(model::Side::Left), 1);
}

TEST_F(Packs, UnknownLayoutIsSaidNotGuessed) {
  shop.setUp();
  shop.ok(R"({"do":"set_vehicle","registration":"XY 99","front_axle_load":"700 kg"})");
  shop.ok(R"({"do":"copy_spec","from":"AB 12","to":"XY 99"})");
  shop.ok(R"({"do":"open_job","registration":"XY 99"})");
  shop.ok(R"({"do":"start_procedure","procedure":"fit-shims-and-pull"})");
  fit("left", "0.50 + 0.25");
  const auto outcome = pull("left", "11 10.0 10.2 10.0");
  EXPECT_EQ(Shop::value(outcome, "next_pack_unknown", "why"), "layout");
}

TEST_F(Packs, ALooseHubIsNotWithinEvenIfTheNumberIs) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  observe("left", "stays_put", "swings");
  observe("left", "end_float_felt", "none");
  const auto outcome = pull("left", "21 20.0 20.2 20.0");
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "within");
  EXPECT_TRUE(Shop::told(outcome, "within_but_loose"));
  EXPECT_TRUE(Shop::told(outcome, "next_pack"));
  bool refused = false;
  const auto state = shop.state();
  for (const auto& refusal : workshop::againstSignOff(state)) {
    refused = refused ||
              (refusal.key == "not_proved" && refusal.step.find("(left)") != std::string::npos);
  }
  EXPECT_TRUE(refused);
}

TEST_F(Packs, NobodyDrivesOnAPackThatWasNotPulled) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  pull("left", "21 20.0 20.2 20.0");
  EXPECT_TRUE(workshop::againstDrive(shop.state()).empty());
  fit("right", "0.50 + 0.25");
  const auto refusals = workshop::againstDrive(shop.state());
  ASSERT_EQ(refusals.size(), 1U);
  EXPECT_EQ(refusals.front().key, "no_pull_since_pack");
  EXPECT_EQ(refusals.front().what, "right");
}

TEST_F(Packs, EveryRoundKeepsItsPackAndItsPull) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  pull("left", "11 10.0 10.2 10.0");
  fit("left", "0.50 + 0.10 + 0.10", 2);
  const auto outcome = pull("left", "19 18.0 18.2 18.0", 2);
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "within");
  const auto state = shop.state();
  EXPECT_EQ(state.packs.size(), 2U);
  ASSERT_EQ(state.series.size(), 2U);
  EXPECT_EQ(state.series[0].verdict->verdict, "outside");
  EXPECT_EQ(state.series[1].verdict->verdict, "within");
  EXPECT_NEAR(inMillimetres(*state.packTotal(model::Side::Left)), 0.70, 1e-9);
}

TEST_F(Packs, GritMeansRenewalWithTheNumberWithin) {
  start("cap_flange");
  allow("swing", "left");
  const auto outcome = shop.ok(R"({"do":"observe","step":"fit-shims-and-pull/swing","side":"left",)"
                               R"("key":"feel","value":"gritty"})");
  EXPECT_TRUE(Shop::told(outcome, "renew_not_shim"));
  const auto state = shop.state();
  EXPECT_TRUE(state.newestRun("renew-swivel-bearings", model::Side::Left).has_value());
  EXPECT_FALSE(state.newestRun("renew-swivel-bearings", model::Side::Right).has_value());
  // After the renewal the pack is fitted and pulled afresh.
  EXPECT_EQ(newestRound(model::Side::Left), 2);
}

// 0.50 + 0.10 + 0.10 = 0.70; 0.5 in = 12.7 mm by the definition of the inch.
TEST_F(Packs, ACorrectedStackCarriesTotalAndCount) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  correct("shims", "0.50 + 0.10 + 0.10");
  const auto pack = newestPack();
  EXPECT_EQ(pack.shims, "0.50 + 0.10 + 0.10");
  EXPECT_EQ(pack.count, 3);
  EXPECT_EQ(pack.total.text(), "0.7 mm");
  EXPECT_NEAR(pack.total.si, 0.7e-3, 1e-12);
  EXPECT_NEAR(inMillimetres(*shop.state().packTotal(model::Side::Left)), 0.70, 1e-9);
  correct("shims", "0.5 in");
  EXPECT_EQ(newestPack().count, 1);
  EXPECT_NEAR(newestPack().total.si, 12.7e-3, 1e-12);
}

TEST_F(Packs, TheNextPackIsReckonedFromTheCorrectedStack) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  correct("shims", "0.50 + 0.10");
  const auto outcome = pull("left", "11 10.0 10.2 10.0");
  // From 0.60 down: 0.55 = 0.15 + 0.15 + 0.25 is the nearest thinner pack of the sheet's sizes.
  EXPECT_EQ(Shop::value(outcome, "next_pack", "total"), "0.55 mm");
}

TEST_F(Packs, ASumIsNotTypedOver) {
  start("cap_flange");
  fit("left", "0.50 + 0.25");
  for (const char* field : {"total", "count"}) {
    const auto error = refusedCorrection(field, "2", "workshop.pack_is_a_sum");
    EXPECT_EQ(error.detail("text"), "0.50 + 0.25");
  }
  refusedCorrection("shims", "0.50 + ", "shims.empty_place");
  refusedCorrection("shims", "0.50 N", "units.wrong_kind");
  EXPECT_NEAR(newestPack().total.si, 0.75e-3, 1e-12);
}

TEST_F(Packs, APackThatWasOnlyMeasuredFollowsItsMeasure) {
  start("cap_flange");
  allow("fit_pack", "left");
  shop.ok(R"({"do":"shim_pack","role":"fitted","step":"fit-shims-and-pull/fit_pack",)"
          R"("side":"left","measured":"0.74 mm","instrument":"micrometer"})");
  correct("measured", "0.84");
  EXPECT_EQ(newestPack().total.text(), "0.84 mm");
  correct("total", "0.94");
  EXPECT_EQ(newestPack().measured->text(), "0.94 mm");
  EXPECT_EQ(newestPack().total.text(), "0.94 mm");
}

TEST_F(Packs, AMeasureBesideAStackLeavesItsSum) {
  start("cap_flange");
  allow("fit_pack", "left");
  shop.ok(R"({"do":"shim_pack","role":"fitted","step":"fit-shims-and-pull/fit_pack",)"
          R"("side":"left","shims":"0.50 + 0.25","measured":"0.74 mm","instrument":"micrometer"})");
  correct("measured", "0.76");
  EXPECT_EQ(newestPack().measured->text(), "0.76 mm");
  EXPECT_EQ(newestPack().total.text(), "0.75 mm");
}

}  // namespace
}  // namespace sw::test
