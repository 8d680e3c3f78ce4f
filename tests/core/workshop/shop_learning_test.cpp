// SPDX-License-Identifier: GPL-3.0-or-later
// What ended jobs teach. The rules are those of lesson.h and shop_learning.h: common practice, no
// source; learning itself is checked in tests/core/diagnosis.
#include "workshop/shop_learning.h"

#include <gtest/gtest.h>

#include "shop_fixture.h"
#include "workshop/lesson.h"

namespace sw::test {
namespace {

using model::RoadTestWhen;
using model::ShakeResult;

class ShopLearning : public testing::Test {
 protected:
  void SetUp() override { shop.setUp(); }

  void tell(const std::string& feature, const std::string& answer) {
    shop.ok(R"({"do":"tell","feature":")" + feature + R"(","answer":")" + answer + "\"}");
  }
  void putRight(const std::string& cause) {
    shop.ok(R"({"do":"put_right","cause":")" + cause + R"(","how":"renewed"})");
  }
  void close() { shop.ok(R"({"do":"close","outcome":"closed_without_sign_off","reason":"test"})"); }
  void openNext() { shop.ok(R"({"do":"open_job","registration":"AB 12"})"); }
  void days(int count) { shop.clock.advanceMilliseconds(86'400'000LL * count); }

  std::vector<store::LessonRow> lessons() {
    auto rows = shop.book->lessons(std::nullopt, 100);
    EXPECT_TRUE(rows) << rows.error().key << rows.error().detail("text");
    return rows.value_or(std::vector<store::LessonRow>{});
  }
  workshop::ShopLearning learning() {
    auto result = workshop::shopLearning(*shop.workshop);
    EXPECT_TRUE(result) << result.error().key;
    return result.value_or(workshop::ShopLearning{});
  }
  /// A job that began with this answer and was cured by this repair.
  void solved(const std::string& feature, const std::string& answer, const std::string& cause) {
    tell(feature, answer);
    putRight(cause);
    shop.drive(ShakeResult::None);
    close();
  }

  Shop shop;
};

TEST_F(ShopLearning, ACauseThatWasPutRightBeforeADriveWithoutShakeIsConfirmed) {
  tell("braking", "only");
  tell("pulls", "unknown");
  putRight("disc");
  shop.drive(ShakeResult::None);
  EXPECT_TRUE(lessons().empty());  // not before the job ends
  close();
  const auto rows = lessons();
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].fact.causes, "disc");
  EXPECT_EQ(rows[0].fact.answers, "braking=only");
  EXPECT_EQ(rows[0].job.value, shop.job);
  EXPECT_TRUE(shop.state().closed);
  const auto taught = learning();
  ASSERT_EQ(taught.lessons().size(), 1U);
  EXPECT_EQ(taught.lessons()[0].causes.front(), *taught.start.table.cause("disc"));
}

TEST_F(ShopLearning, WhatWasPutRightBeforeADriveThatStillShookIsNot) {
  tell("steady", "yes");
  putRight("tyre");
  shop.drive(ShakeResult::Same);
  putRight("wheel_unbalance");
  shop.drive(ShakeResult::None);
  close();
  ASSERT_EQ(lessons().size(), 1U);
  EXPECT_EQ(lessons()[0].fact.causes, "wheel_unbalance");
}

TEST_F(ShopLearning, TwoThatWerePutRightTogetherCountBoth) {
  tell("steady", "yes");
  putRight("tyre");
  putRight("wheel_unbalance");
  shop.drive(ShakeResult::None);
  close();
  EXPECT_EQ(learning().lessons().at(0).causes.size(), 2U);
}

TEST_F(ShopLearning, ADamperIsNotLearnedWhileOtherPlayWasNotRuledOut) {
  tell("after_bump", "yes");
  putRight("damper");
  shop.drive(ShakeResult::None);
  close();
  EXPECT_TRUE(lessons().empty());
}

TEST_F(ShopLearning, WithoutADriveOrWithoutAShakeAJobTeachesNothing) {
  tell("braking", "only");
  putRight("disc");
  close();
  openNext();
  putRight("disc");  // worn, nothing ever shook
  shop.drive(ShakeResult::None);
  close();
  openNext();
  tell("braking", "only");
  shop.drive(ShakeResult::None);  // went away by itself
  close();
  EXPECT_TRUE(lessons().empty());
}

TEST_F(ShopLearning, AShakeOnTheFirstDriveIsAShake) {
  shop.drive(ShakeResult::Same, RoadTestWhen::Before);
  putRight("rod_joints");
  shop.drive(ShakeResult::None);
  close();
  ASSERT_EQ(lessons().size(), 1U);
  EXPECT_EQ(lessons()[0].fact.answers, "");
}

TEST_F(ShopLearning, NothingFoundAndStillShakingIsNoFaultFound) {
  tell("steady", "yes");
  shop.ok(R"({"do":"start_procedure","procedure":"panhard-check"})");
  for (const auto& [key, value] :
       {std::pair{"panhard_play", "rubber_only"}, std::pair{"panhard_bracket", "sound"}}) {
    bool seen = false;
    for (const auto& step : shop.state().steps) {
      for (const auto& asked : step.step->observe) {
        if (asked.key != key) continue;
        const std::string name = "panhard-check/" + step.step->id;
        shop.say(R"({"do":"override","rule":"order","why":"test","step":")" + name + "\"}");
        shop.ok(R"({"do":"observe","step":")" + name + R"(","key":")" + key + R"(","value":")" +
                value + "\"}");
        seen = true;
      }
    }
    ASSERT_TRUE(seen) << key;
  }
  shop.drive(ShakeResult::Same);
  close();
  ASSERT_EQ(lessons().size(), 1U);
  EXPECT_EQ(lessons()[0].fact.causes, "");
  const auto taught = learning();
  EXPECT_TRUE(taught.lessons().at(0).causes.empty());  // counts for "other"
}

TEST_F(ShopLearning, AJobIsLeftOutAndTakenInAgain) {
  solved("braking", "only", "disc");
  EXPECT_EQ(shop.refused(R"({"do":"take_into_learning"})", "workshop.not_left_out").field, "job");
  shop.ok(R"({"do":"leave_out_of_learning","why":"three parts changed at home"})");
  auto taught = learning();
  ASSERT_EQ(taught.jobs.size(), 1U);
  EXPECT_EQ(taught.jobs[0].row.leftOutWhy, "three parts changed at home");
  EXPECT_TRUE(taught.lessons().empty());
  shop.ok(R"({"do":"take_into_learning"})");
  EXPECT_EQ(learning().lessons().size(), 1U);
}

TEST_F(ShopLearning, AComebackTakesBackWhatWasConfirmed) {
  solved("braking", "only", "disc");
  const auto first = shop.job;
  days(30);
  openNext();
  EXPECT_EQ(learning().lessons().size(), 1U);  // nobody says that it shakes
  shop.ok(R"({"do":"complaint","braking":"also"})");
  EXPECT_TRUE(learning().lessons().empty());
  EXPECT_TRUE(learning().jobs.at(0).takenBack);
  const auto back = workshop::comebackOf(*shop.workshop, shop.state(), learning().start);
  ASSERT_TRUE(back);
  ASSERT_TRUE(*back);
  EXPECT_EQ((*back)->job.value, first);
  EXPECT_EQ((*back)->fact.causes, "disc");
}

TEST_F(ShopLearning, AfterTheTimeThatIsSetAShakeIsANewOne) {
  solved("braking", "only", "disc");
  days(static_cast<int>(learning().start.comebackDays) + 1);
  openNext();
  shop.ok(R"({"do":"complaint","braking":"also"})");
  EXPECT_EQ(learning().lessons().size(), 1U);
  EXPECT_FALSE(*workshop::comebackOf(*shop.workshop, shop.state(), learning().start));
  // The time is a number of the shop's own.
  shop.ok(R"({"do":"set_setting","key":"cause_numbers","value":"{\"comeback_days\":400}"})");
  EXPECT_TRUE(learning().lessons().empty());
}

TEST_F(ShopLearning, TheLearnedTableIsUsedOnceItForecastsBetter) {
  EXPECT_EQ(learning().inUse.table.causes[0].weight, learning().start.table.causes[0].weight);
  // A shop whose every shake comes from the steering box, which the starting table thinks rare.
  for (int i = 0; i < 6; ++i) {
    solved("wanders", "yes", "box_play");
    days(200);
    openNext();
  }
  const auto taught = learning();
  EXPECT_TRUE(taught.choice.report.useLearned());
  const auto box = *taught.start.table.cause("box_play");
  const auto share = [&](const diagnosis::CauseTable& table) {
    double sum = 0;
    for (const auto& cause : table.causes) sum += cause.weight;
    return table.causes[box].weight / sum;
  };
  // (20 w + 6) / (20 + 6), by hand.
  EXPECT_NEAR(share(taught.inUse.table), (20 * share(taught.start.table) + 6) / 26, 1e-12);
}

TEST(Lesson, KeysThatTheTableDoesNotKnowAreLeftOut) {
  diagnosis::CauseTable table;
  table.features.push_back({"braking", "", {{"only", ""}, {"no", ""}}});
  table.causes.push_back({"disc", "", 1, {{.5, .5}}});
  const auto job = workshop::closedJobOf({"disc moon", "braking=no colour=red braking"}, table);
  ASSERT_TRUE(job);
  EXPECT_EQ(job->causes, (std::vector<std::size_t>{0}));
  EXPECT_EQ(job->answers[0], 1U);
  EXPECT_FALSE(workshop::closedJobOf({"moon", ""}, table));
}

}  // namespace
}  // namespace sw::test
