// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop_fixture.h"
#include "workshop/rules.h"

namespace sw::test {
namespace {

/// A job in which pulls can be taken at once: as found, and the pull after fitting.
class Readings : public testing::Test {
 protected:
  void SetUp() override {
    shop.setUp();
    shop.ok(R"({"do":"start_procedure","procedure":"as-found-pull"})");
    shop.ok(R"({"do":"start_procedure","procedure":"fit-shims-and-pull"})");
    for (const char* step : {"as-found-pull/pull_ahead", "as-found-pull/pull_left_15",
                             "as-found-pull/pull_right_15", "fit-shims-and-pull/pull"}) {
      for (const char* side : {"left", "right"}) {
        shop.ok(std::string(R"({"do":"override","rule":"order","step":")") + step +
                R"(","side":")" + side + R"(","why":"only the readings matter here"})");
      }
    }
  }

  std::string take(const std::string& step, const std::string& readings,
                   const std::string& more = R"("instrument":"scale")") {
    return R"({"do":"take_readings","step":")" + step + R"(","side":"left","readings":")" +
           readings + "\"," + more + "}";
  }

  Shop shop;
};

const std::string kAhead = "as-found-pull/pull_ahead";
const std::string kFit = "fit-shims-and-pull/pull";

TEST_F(Readings, TheSettlingPullIsRecordedAndNotUsed) {
  shop.ok(take(kAhead, "22 19.0 19.2 19.4"));
  const auto state = shop.state();
  ASSERT_EQ(state.series.size(), 1U);
  ASSERT_EQ(state.series[0].readings.size(), 4U);
  EXPECT_EQ(state.series[0].readings[0].fact.use, model::ReadingUse::Settling);
  EXPECT_EQ(state.series[0].usedCount(), 3U);
  // Mean of the three used pulls, times the mean cosine of a pull within the step's angle.
  EXPECT_NEAR(state.series[0].verdict->value, 19.2, 0.15);
}

TEST_F(Readings, ProvisionalUntilThePlannedNumber) {
  const auto first = shop.ok(take(kAhead, "22 19.0 19.2"));
  EXPECT_EQ(Shop::value(first, "verdict", "verdict"), "provisional");
  const auto last = shop.ok(take(kAhead, "19.0"));
  EXPECT_EQ(Shop::value(last, "verdict", "verdict"), "within");
  EXPECT_EQ(shop.state().series.size(), 1U);
}

TEST_F(Readings, AnExtensionRaisesTheBar) {
  shop.ok(take(kAhead, "22 25.2 25.6 25.4"));
  shop.ok(take(kAhead, "25.4"));
  const auto state = shop.state();
  ASSERT_EQ(state.series.size(), 1U);
  // Looking after each pull would pass 13-15 % wrongly; up to five pulls the bar is 0.975.
  EXPECT_DOUBLE_EQ(state.series[0].verdict->bar, 0.975);
}

TEST_F(Readings, KilogramsOnAScaleAreKilogramForce) {
  const auto outcome = shop.ok(take(kAhead, "1,95 kg", R"("instrument":"fish scale","planned":1)"));
  EXPECT_EQ(Shop::value(outcome, "read_as", "how"), "mass_as_force");
  const auto state = shop.state();
  EXPECT_EQ(state.series[0].readings[0].fact.value.unit, "kgf");
  EXPECT_NEAR(state.series[0].readings[0].fact.value.si, 1.95 * 9.80665, 1e-9);
}

TEST_F(Readings, ABareNumberTakesTheInstrumentsUnitAndSaysSo) {
  const auto outcome = shop.ok(take(kAhead, "1.95", R"("instrument":"fish scale")"));
  EXPECT_EQ(Shop::value(outcome, "read_as", "how"), "bare_number");
  EXPECT_EQ(shop.state().series[0].readings[0].fact.value.unit, "kgf");
}

TEST_F(Readings, AnotherStateIsAnotherSeriesWithoutThisLimit) {
  shop.ok(take(kAhead, "22 19.0 19.2 19.4"));
  const auto outcome =
      shop.ok(take(kAhead, "34 33 33 33.4", R"("instrument":"scale","seal":"on")"));
  EXPECT_TRUE(Shop::told(outcome, "state_differs"));
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "no_limit");
  const auto state = shop.state();
  ASSERT_EQ(state.series.size(), 2U);
  EXPECT_EQ(state.series[0].readings.size(), 4U);
  EXPECT_EQ(state.series[1].readings.size(), 4U);
}

TEST_F(Readings, AnyDifferenceOfStateKeepsPullsApart) {
  shop.ok(take(kAhead, "22 19.0"));
  const char* const kDifferences[] = {R"("rods":"on")",         R"("damper":"on")",
                                      R"("sealant":"wet")",     R"("grease":"fresh")",
                                      R"("movement":"steady")", R"("position":"left_15")"};
  std::size_t count = 1;
  for (const char* difference : kDifferences) {
    shop.ok(take(kAhead, "19.0", std::string(R"("instrument":"scale",)") + difference));
    EXPECT_EQ(shop.state().series.size(), ++count) << difference;
  }
}

TEST_F(Readings, WetSealantIsNotJudgedByTheDryLimit) {
  const auto outcome =
      shop.ok(take(kFit, "20 19 19.2 19.2", R"("instrument":"scale","sealant":"wet")"));
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "no_limit");
}

TEST_F(Readings, AnotherInstrumentIsAnotherSeries) {
  shop.ok(take(kAhead, "22 19.0"));
  shop.ok(take(kAhead, "1.95", R"("instrument":"fish scale")"));
  EXPECT_EQ(shop.state().series.size(), 2U);
}

TEST_F(Readings, AScaleNobodyCheckedProvesNothing) {
  const auto outcome = shop.ok(take(kFit, "2.1 2.05 2.10 2.05", R"("instrument":"fish scale")"));
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "undecided");
  shop.ok(R"({"do":"check_instrument","instrument":"fish scale","against":"2 kg of sugar",)"
          R"("applied":"2.00 kg","shown":"2.00 kg","applied_uncertainty":"0.01 kg"})");
  const auto checked = shop.ok(
      take(kFit, "2.1 2.05 2.10 2.05",
           R"("instrument":"fish scale","new_series":true,"why":"scale checked against 2 kg")"));
  EXPECT_EQ(Shop::value(checked, "verdict", "verdict"), "within");
}

TEST_F(Readings, ReadingsOffTheScaleAreRefused) {
  const auto error = shop.refused(take(kAhead, "19 190"), "workshop.reading_off_scale");
  EXPECT_EQ(error.field, "readings");
  EXPECT_EQ(error.detail("max"), "60 N");
  EXPECT_TRUE(shop.state().series.empty());
}

TEST_F(Readings, BadTextLeavesTheLastGoodValues) {
  shop.ok(take(kAhead, "22 19.0"));
  for (const char* text : {"18 mm", "nan", "inf", "1e999", "", "1.234,5", "abc"}) {
    auto outcome = shop.say(take(kAhead, text));
    ASSERT_FALSE(outcome) << text;
    EXPECT_EQ(outcome.error().field, "readings") << text;
  }
  EXPECT_EQ(shop.state().series[0].readings.size(), 2U);
}

TEST_F(Readings, AFreshSeriesAfterAVerdictNeedsAReason) {
  shop.ok(take(kAhead, "22 12.0 12.2 12.4"));
  shop.refused(take(kAhead, "19", R"("instrument":"scale","new_series":true)"),
               "workshop.field_needed");
  shop.ok(take(kAhead, "20 19 19.2 19.2",
               R"("instrument":"scale","new_series":true,"why":"the seal was still touching")"));
  EXPECT_EQ(shop.state().series.size(), 2U);
}

TEST_F(Readings, APeakStraightAheadMeansRenewal) {
  shop.ok(take(kAhead, "22 21.0 21.2 21.0"));
  shop.ok(take("as-found-pull/pull_left_15", "17.0 17.2 17.0"));
  const auto outcome = shop.ok(take("as-found-pull/pull_right_15", "17.2 17.0 17.0"));
  EXPECT_TRUE(Shop::told(outcome, "renew_not_shim"));
  EXPECT_TRUE(shop.state().newestRun("renew-swivel-bearings", model::Side::Left).has_value());
  // The number is within, and still the pack is not pulled before the bearings are new.
  const auto error = shop.refused(take(kFit, "22 19.0 19.2 19.4"), "workshop.not_yet");
  EXPECT_TRUE(error.detail("refusal").starts_with("worn|"));
}

TEST_F(Readings, EvenPullsAreNoPeak) {
  shop.ok(take(kAhead, "22 17.2 17.4 17.2"));
  shop.ok(take("as-found-pull/pull_left_15", "17.0 17.2 17.0"));
  const auto outcome = shop.ok(take("as-found-pull/pull_right_15", "17.2 17.0 17.4"));
  EXPECT_FALSE(Shop::told(outcome, "renew_not_shim"));
}

TEST_F(Readings, AnInstrumentOfAnotherKindIsRefused) {
  shop.refused(take(kAhead, "19", R"("instrument":"micrometer")"),
               "workshop.instrument_wrong_kind");
  shop.refused(take(kAhead, "19", R"("instrument":"the other scale")"), "workshop.no_instrument");
}

}  // namespace
}  // namespace sw::test
