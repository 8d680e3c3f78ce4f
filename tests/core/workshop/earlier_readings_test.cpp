// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/earlier_readings.h"

#include <gmock/gmock.h>

#include "shop_fixture.h"

namespace sw::test {
namespace {

using workshop::EarlierReading;

/// A vehicle that comes back: the same pulls and packs in several jobs.
class Earlier : public testing::Test {
 protected:
  void SetUp() override {
    shop.setUp();
    begin();
  }

  void begin() {
    for (const char* procedure : {"as-found-pull", "fit-shims-and-pull"}) {
      shop.ok(std::string(R"({"do":"start_procedure","procedure":")") + procedure + "\"}");
    }
  }
  /// The next visit, `days` later.
  void comeBack(std::int64_t days, const std::string& plate = "AB 12") {
    clock(days);
    shop.job = 0;
    shop.ok(R"({"do":"open_job","registration":")" + plate + R"(","odometer":"121000"})");
    begin();
  }
  void clock(std::int64_t days) {
    Timestamp now = shop.clock.now();
    now.utcMilliseconds += days * 24 * 3600 * 1000;
    shop.clock.set(now);
  }
  void allow(const std::string& step, const std::string& side, int round) {
    shop.ok(R"({"do":"override","rule":"order","step":")" + step + R"(","side":")" + side +
            R"(","round":)" + std::to_string(round) + R"(,"why":"only the readings matter here"})");
  }
  void pull(const std::string& side, const std::string& readings, int round = 1,
            const std::string& step = "fit-shims-and-pull/pull") {
    allow(step, side, round);
    shop.ok(R"({"do":"take_readings","step":")" + step + R"(","side":")" + side + R"(","round":)" +
            std::to_string(round) + R"(,"readings":")" + readings + R"(","instrument":"scale"})");
  }
  void fit(const std::string& side, const std::string& shims, int round = 1) {
    allow("fit-shims-and-pull/fit_pack", side, round);
    shop.ok(R"({"do":"shim_pack","role":"fitted","step":"fit-shims-and-pull/fit_pack","side":")" +
            side + R"(","round":)" + std::to_string(round) + R"(,"shims":")" + shims + "\"}");
  }
  /// What is told beside a step of the newest run of its procedure.
  std::vector<EarlierReading> at(const std::string& procedure, const std::string& step,
                                 model::Side side) {
    const auto state = shop.state();
    const auto run = state.newestRun(procedure, side);
    const auto index = state.findStep(*run, step, side);
    EXPECT_TRUE(index) << step;
    auto found = workshop::earlierReadings(*shop.book, workshop::earlierQuestionAt(state, *index));
    EXPECT_TRUE(found) << found.error().key << found.error().detail("text");
    return found ? *found : std::vector<EarlierReading>{};
  }
  std::vector<EarlierReading> atPull(model::Side side = model::Side::Left) {
    return at("fit-shims-and-pull", "pull", side);
  }
  static std::vector<std::string> verdicts(const std::vector<EarlierReading>& list) {
    std::vector<std::string> words;
    for (const auto& one : list) words.push_back(one.series.verdict);
    return words;
  }

  Shop shop;
};

using testing::ElementsAre;
constexpr auto kLeft = model::Side::Left;
constexpr auto kRight = model::Side::Right;

TEST_F(Earlier, RoundsOfThisJobAndOtherJobsOldestFirst) {
  fit("left", "0.50 + 0.25");
  pull("left", "11 10.0 10.2 10.0");  // outside: a round follows at once
  const auto firstDay = shop.clock.now();
  auto list = atPull();
  ASSERT_EQ(list.size(), 1U);
  EXPECT_TRUE(list[0].thisJob);
  EXPECT_EQ(list[0].series.verdict, "outside");
  EXPECT_EQ(list[0].series.round, 1);
  EXPECT_EQ(list[0].series.procedure, "fit-shims-and-pull");
  EXPECT_EQ(list[0].series.step, "pull");
  EXPECT_EQ(list[0].series.quantity, QuantityKind::Force);
  ASSERT_TRUE(list[0].series.state);
  EXPECT_EQ(list[0].series.state->seal, model::OnOff::Off);
  ASSERT_TRUE(list[0].packTotal);
  EXPECT_NEAR(inMillimetres(*list[0].packTotal), 0.75, 1e-9);

  fit("left", "0.50 + 0.10 + 0.10", 2);
  pull("left", "19 18.0 18.2 18.0", 2);
  comeBack(200);
  pull("left", "20 19.6 19.8 19.8");
  list = atPull();
  EXPECT_THAT(verdicts(list), ElementsAre("outside", "within"));  // not the pull being taken
  EXPECT_EQ(list[1].series.job, model::JobId{1});
  EXPECT_FALSE(list[1].thisJob);
  EXPECT_EQ(localDate(list[1].series.doneAt), localDate(firstDay));
  EXPECT_NEAR(inMillimetres(*list[1].packTotal), 0.70, 1e-9);
  // The verdict of the job itself is the independent witness.
  const auto first = shop.workshop->job({1});
  ASSERT_TRUE(first);
  const auto* series = first->findSeries(list[1].series.series);
  ASSERT_NE(series, nullptr);
  EXPECT_DOUBLE_EQ(list[1].series.value, series->verdict->value);
  EXPECT_DOUBLE_EQ(list[1].series.expandedUncertainty, series->verdict->expandedUncertainty);
}

TEST_F(Earlier, TheAsFoundPullOfTheSameLimitIsTold) {
  pull("left", "13 12.0 12.2 12.0", 1, "as-found-pull/pull_ahead");
  const auto list = atPull();
  ASSERT_EQ(list.size(), 1U);
  EXPECT_EQ(list[0].series.procedure, "as-found-pull");
  EXPECT_TRUE(list[0].thisJob);
  EXPECT_FALSE(list[0].packTotal);  // nobody has looked at the pack yet
  EXPECT_TRUE(at("as-found-pull", "pull_ahead", kLeft).empty());
}

TEST_F(Earlier, AStepWithoutALimitTellsOfItself) {
  pull("left", "17.0 17.2 17.0", 1, "as-found-pull/pull_left_15");
  pull("left", "17.2 17.2 17.0", 1, "as-found-pull/pull_right_15");
  comeBack(30);
  const auto list = at("as-found-pull", "pull_left_15", kLeft);
  ASSERT_EQ(list.size(), 1U);
  EXPECT_EQ(list[0].series.step, "pull_left_15");
  EXPECT_EQ(list[0].series.verdict, "no_limit");
}

TEST_F(Earlier, TheOtherSideAndOtherVehiclesAreNotTold) {
  pull("right", "19 18.0 18.2 18.0");
  shop.ok(R"({"do":"set_vehicle","registration":"XY 99","shim_ends":"top"})");
  shop.ok(R"({"do":"copy_spec","from":"AB 12","to":"XY 99"})");
  comeBack(1, "XY 99");
  EXPECT_TRUE(atPull(kRight).empty());
  pull("left", "21 20.0 20.2 20.0");
  comeBack(1);
  EXPECT_TRUE(atPull(kLeft).empty());
  EXPECT_THAT(verdicts(atPull(kRight)), ElementsAre("within"));
}

TEST_F(Earlier, CorrectedReadingsGiveTheNewestVerdict) {
  pull("left", "19 18.0 18.2 18.0");
  const auto state = shop.state();
  const auto reading = state.series[0].readings[1].entry;
  clock(3);
  shop.ok(R"({"do":"correct","entry":)" + std::to_string(reading.value) +
          R"(,"reason":"typing_slip","field":"value","value":"8.0 N"})");
  comeBack(10);
  const auto list = atPull();
  ASSERT_EQ(list.size(), 1U);
  const auto first = shop.workshop->job({1});
  EXPECT_EQ(list[0].series.verdict, first->series[0].verdict->verdict);
  EXPECT_DOUBLE_EQ(list[0].series.value, first->series[0].verdict->value);
  EXPECT_NE(list[0].series.verdict, "within");
}

TEST_F(Earlier, ASeriesMovedToTheOtherSideKeepsItsDay) {
  pull("left", "19 18.0 18.2 18.0");
  const auto day = shop.clock.now();
  const auto series = shop.state().series[0].id;
  clock(4);
  shop.ok(R"({"do":"move_series","series":)" + std::to_string(series.value) + "}");
  comeBack(10);
  EXPECT_TRUE(atPull(kLeft).empty());
  const auto list = atPull(kRight);
  ASSERT_EQ(list.size(), 1U);
  EXPECT_EQ(localDate(list[0].series.doneAt), localDate(day));
  EXPECT_EQ(list[0].series.first, series);
}

TEST_F(Earlier, AWithdrawnSeriesIsNotTold) {
  pull("left", "19 18.0 18.2 18.0");
  const auto state = shop.state();
  shop.ok(R"({"do":"withdraw","entry":)" + std::to_string(state.series[0].id.value) +
          R"(,"reason_text":"wrong vehicle"})");
  comeBack(10);
  EXPECT_TRUE(atPull().empty());
}

TEST_F(Earlier, ACorrectedPackCountsAsTheOneThatWasIn) {
  fit("left", "0.50 + 0.25");
  const auto pack = shop.state().packs[0].entry;
  pull("left", "19 18.0 18.2 18.0");
  shop.ok(R"({"do":"correct","entry":)" + std::to_string(pack.value) +
          R"(,"reason":"typing_slip","field":"shims","value":"0.50 + 0.15"})");
  comeBack(10);
  const auto list = atPull();
  ASSERT_EQ(list.size(), 1U);
  ASSERT_TRUE(list[0].packTotal);
  EXPECT_NEAR(inMillimetres(*list[0].packTotal), 0.65, 1e-9);
}

}  // namespace
}  // namespace sw::test
