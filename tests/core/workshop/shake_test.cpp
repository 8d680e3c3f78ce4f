// SPDX-License-Identifier: GPL-3.0-or-later
// What is told, seen and put right in a job is evidence of its causes; common practice, no source.
#include <gtest/gtest.h>

#include <algorithm>

#include "diagnosis/shipped_causes.h"
#include "shop_fixture.h"
#include "workshop/checks_ahead.h"

namespace sw::test {
namespace {

using diagnosis::CauseFile;

class Shake : public testing::Test {
 protected:
  void SetUp() override { shop.setUp(); }

  void tell(const std::string& feature, const std::string& answer) {
    shop.ok(R"({"do":"tell","feature":")" + feature + R"(","answer":")" + answer + "\"}");
  }
  void start(const std::string& procedure) {
    shop.ok(R"({"do":"start_procedure","procedure":")" + procedure + "\"}");
  }
  void observe(const std::string& step, const std::string& key, const std::string& value,
               const std::string& side = {}) {
    const std::string sided = side.empty() ? "" : R"(,"side":")" + side + "\"";
    shop.say(R"({"do":"override","rule":"order","why":"only this matters here","step":")" + step +
             "\"" + sided + "}");
    shop.ok(R"({"do":"observe","step":")" + step + "\"" + sided + R"(,"key":")" + key +
            R"(","value":")" + value + "\"}");
  }
  workshop::ChecksAhead ahead(const workshop::CheckWishes& wishes = {"full_shop", {}, {}, {}}) {
    const auto result = workshop::checksAhead(shop.state(), file, wishes);
    EXPECT_TRUE(result) << result.error().key;
    return result.value_or(workshop::ChecksAhead{});
  }
  double probabilityOf(const std::string& cause) {
    const auto now = ahead();
    for (const auto& one : now.ranking.causes) {
      if (file.table.causes[one.cause].key == cause) return one.probability;
    }
    return -1;
  }
  std::string leader() { return file.table.causes[ahead().ranking.causes.front().cause].key; }
  bool planned(const std::string& check) {
    const auto now = ahead();
    return std::any_of(now.plan.steps.begin(), now.plan.steps.end(),
                       [&](const auto& step) { return file.checks[step.check].key == check; });
  }

  Shop shop;
  const CauseFile& file = diagnosis::shippedCauses();
};

TEST_F(Shake, AnswersCountTheNewestOfEach) {
  tell("braking", "no");
  const double before = probabilityOf("disc");
  tell("braking", "only");
  EXPECT_EQ(leader(), "disc");
  EXPECT_GT(probabilityOf("disc"), 10 * before);
  // Taken back, it is not known again: not no, and not only.
  tell("braking", "unknown");
  EXPECT_EQ(ahead().known.told.size(), 0U);
}

TEST_F(Shake, AnAnswerThatIsNoneIsRefusedByName) {
  EXPECT_EQ(
      shop.refused(R"({"do":"tell","feature":"colour","answer":"red"})", "json.not_one_of").field,
      "feature");
  EXPECT_EQ(
      shop.refused(R"({"do":"tell","feature":"braking","answer":"red"})", "json.not_one_of").field,
      "answer");
}

TEST_F(Shake, TheComplaintItselfIsEvidence) {
  shop.ok(R"({"do":"complaint","onset_rising":"70 km/h","release_falling":"50 km/h",)"
          R"("speed_source":"dial","braking":"no","after_bump":"yes","speed_band":"yes",)"
          R"("where_felt":"seat or floor"})");
  std::vector<std::string> told;
  for (const auto& one : ahead().known.told) {
    told.push_back(file.table.features[one.feature].key + "=" +
                   file.table.features[one.feature].answers[one.answer].word);
  }
  EXPECT_EQ(told, (std::vector<std::string>{"after_bump=yes", "braking=no", "felt_in_seat=yes",
                                            "goes_on_slower=yes", "steady=yes"}));
}

TEST_F(Shake, WhatAStepSawUnderTheSameKeyAnswersTheQuestion) {
  start("free-checks");
  observe("free-checks/recent_work", "recent_work", "brakes_or_hub");
  const auto told = ahead().known.told;
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(file.table.features[told[0].feature].key, "recent_work");
  EXPECT_EQ(file.table.features[told[0].feature].answers[told[0].answer].word, "brakes_or_hub");
  tell("recent_work", "steering");  // asked again, the newer answer counts
  EXPECT_EQ(file.table.features[told[0].feature].answers[ahead().known.told[0].answer].word,
            "steering");
}

TEST_F(Shake, ACheckIsPlacedBeforeTheFirstHoldThatIsNotPassed) {
  EXPECT_EQ(workshop::placeForCheck(shop.state()), std::nullopt);  // nothing hinders: at the end
  start("free-checks");
  EXPECT_EQ(workshop::placeForCheck(shop.state()), std::nullopt);
  start("make-safe-and-lift");  // holds until the support was looked at
  EXPECT_EQ(workshop::placeForCheck(shop.state()), "free-checks");
  shop.ok(R"({"do":"start_procedure","procedure":"panhard-check","after":"free-checks"})");
  const auto job = shop.state();
  const auto run = job.newestRun("panhard-check", std::nullopt);
  ASSERT_TRUE(run);
  EXPECT_EQ(*run, 1U);
  EXPECT_EQ(workshop::placeForCheck(job), "panhard-check");
}

TEST_F(Shake, ACheckThatFoundItsCauseMakesItLead) {
  start("panhard-check");
  observe("panhard-check/rock", "panhard_play", "bolt");
  EXPECT_EQ(leader(), "panhard");
  EXPECT_FALSE(planned("panhard"));  // it was made
}

TEST_F(Shake, ACheckThatFoundNothingMovesItsCauseDown) {
  const double before = probabilityOf("panhard");
  start("panhard-check");
  observe("panhard-check/rock", "panhard_play", "rubber_only");
  EXPECT_NEAR(probabilityOf("panhard"), before, 1e-12);  // half a check says nothing yet
  observe("panhard-check/bracket", "panhard_bracket", "sound");
  EXPECT_LT(probabilityOf("panhard"), before / 2);
  EXPECT_FALSE(planned("panhard"));
}

TEST_F(Shake, WhatCouldNotBeToldIsNoEvidenceAndStaysInThePlan) {
  const double before = probabilityOf("panhard");
  start("panhard-check");
  observe("panhard-check/rock", "panhard_play", "cannot_tell");
  EXPECT_NEAR(probabilityOf("panhard"), before, 1e-12);
  EXPECT_TRUE(planned("panhard"));
}

TEST_F(Shake, AWeakDamperProvesNothingWhilePlayWasNotLookedFor) {
  const double before = probabilityOf("damper");
  start("check-damper");
  const auto damper = std::find_if(file.checks.begin(), file.checks.end(),
                                   [](const auto& check) { return check.key == "damper"; });
  ASSERT_NE(damper, file.checks.end());
  const auto& finding = damper->findings.front();
  std::string step;
  for (const auto& view : shop.state().steps) {
    for (const auto& observe : view.step->observe) {
      if (observe.key == finding.observed) step = view.step->id;
    }
  }
  observe("check-damper/" + step, finding.observed, finding.words.front());
  const auto now = ahead();
  const auto made =
      std::find_if(now.known.made.begin(), now.known.made.end(),
                   [&](const auto& one) { return file.checks[one.check].key == "damper"; });
  ASSERT_NE(made, now.known.made.end());
  EXPECT_FALSE(made->found.empty());
  EXPECT_FALSE(made->waitsFor.empty());
  EXPECT_NEAR(probabilityOf("damper"), before, 1e-12);
  EXPECT_TRUE(planned("joints"));  // the search goes on
}

TEST_F(Shake, WishesShapeThePlan) {
  const auto begins = [&](const workshop::CheckWishes& wishes) {
    const auto now = ahead(wishes);
    return now.plan.steps.empty() ? std::string() : file.checks[now.plan.steps.front().check].key;
  };
  EXPECT_EQ(begins({"full_shop", {}, {}, {}}), "walk_round");
  // Left out, it is not forced any more.
  EXPECT_NE(begins({"full_shop", {}, {"walk_round"}, {}}), "walk_round");
  // Giving up at once costs nothing: only what is forced remains.
  EXPECT_EQ(ahead({"full_shop", 0.0, {}, {}}).plan.steps.size(), 1U);
}

TEST_F(Shake, OwnNumbersOfTheShopAreUsed) {
  shop.ok(R"({"do":"set_setting","key":"cause_numbers",)"
          R"("value":"{\"causes\":{\"disc\":{\"weight\":500}}}"})");
  const auto own = workshop::causesOf(*shop.workshop->shop().value());
  ASSERT_TRUE(own);
  EXPECT_EQ(own->table.causes[*own->table.cause("disc")].weight, 500);
  EXPECT_EQ(shop.refused(R"({"do":"set_setting","key":"cause_numbers","value":"{\"moon\":1}"})",
                         "json.unknown_field")
                .field,
            "value/moon");
}

TEST_F(Shake, AJobMayBeLeftOutOfLearningWithAReason) {
  shop.ok(R"({"do":"leave_out_of_learning","why":"three parts were changed at home"})");
  EXPECT_EQ(
      shop.refused(R"({"do":"leave_out_of_learning","why":""})", "workshop.field_needed").field,
      "why");
}

}  // namespace
}  // namespace sw::test
