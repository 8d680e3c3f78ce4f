// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/cause_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "diagnosis/ranking.h"
#include "diagnosis/shipped_causes.h"

namespace sw::diagnosis {
namespace {

/// A small file, with one place that a test may spoil.
std::string fileWith(const std::string& from = {}, const std::string& to = {}) {
  std::string text = R"({"schema":1,"id":"small","version":1,"source":"invented",
    "fallback_minutes":100,"comeback_days":90,
    "features":[{"key":"steady","ask":"?","answers":[{"word":"yes","text":"Yes"},
                                                     {"word":"no","text":"No"}]}],
    "setups":[{"key":"ground","name":"on its wheels","minutes":{"stands":{"open":0,"close":0}}},
              {"key":"up","name":"up","parent":"ground",
               "minutes":{"stands":{"open":10,"close":5},"two_post":{"open":4,"close":3}}}],
    "causes":[{"key":"nut","name":"a nut","weight":3,"answers":{"steady":{"yes":0.25}}},
              {"key":"other","name":"other","weight":1,"answers":{"steady":{"yes":0.5}}}],
    "checks":[{"key":"look","name":"Look","procedure":"check-look","first":true,
               "setups":["ground"],"minutes":2,"finds":{"nut":0.5},"false_alarm":0.1,
               "false_alarm_minutes":5},
              {"key":"pull","name":"Pull","procedure":"check-pull","after":["look"],
               "equipment":["scale"],"setups":["up"],"minutes":6,"finds":{"nut":0.9},
               "variants":[{"disc_mount":"behind_hub","setups":["up"],"minutes":16}],
               "findings":[{"cause":"nut","observed":"nut","words":["loose"]},
                           {"cause":"nut","limit":"nut_pull","beyond":"below"}],
               "clear":[{"observed":"nut","words":["tight","new"]},{"limit":"nut_pull"}]}],
    "presets":[{"key":"yard","name":"A yard","support":"stands","equipment":["scale"]}]})";
  const auto at = from.empty() ? std::string::npos : text.find(from);
  if (at != std::string::npos) text.replace(at, from.size(), to);
  return text;
}

TEST(CauseFile, IsReadWhole) {
  const auto file = parseCauses(fileWith());
  ASSERT_TRUE(file) << file.error().key << " " << file.error().field;
  EXPECT_EQ(file->table.causes[0].answers[0], (std::vector<double>{.25, .75}));
  EXPECT_EQ(file->table.other, 1U);
  EXPECT_EQ(file->setups[1].parent, 0U);
  EXPECT_EQ(file->setups[1].minutes[0].open, 10);
  EXPECT_EQ(file->setups[1].minutes[1].close, 3);
  EXPECT_EQ(file->checks[1].after, (std::vector<std::size_t>{0}));
  EXPECT_EQ(file->checks[1].findings[0].words, (std::vector<std::string>{"loose"}));
  EXPECT_EQ(file->presets[0].equipment, (std::vector<std::string>{"scale"}));
}

TEST(CauseFile, AFindingMayLieAtOneEndOfItsLimit) {
  const auto file = parseCauses(fileWith());
  ASSERT_TRUE(file);
  const auto& findings = file->checks[1].findings;
  EXPECT_FALSE(findings[0].beyond);
  EXPECT_EQ(findings[1].beyond, Beyond::Below);
  const auto either = parseCauses(fileWith(R"(,"beyond":"below")", ""));
  ASSERT_TRUE(either);
  EXPECT_FALSE(either->checks[1].findings[1].beyond);
}

TEST(CauseFile, WhatSpeaksAgainstACheckIsReadAndMayBeAbsent) {
  const auto file = parseCauses(fileWith());
  ASSERT_TRUE(file);
  EXPECT_TRUE(file->checks[0].clear.empty());
  const auto& clear = file->checks[1].clear;
  ASSERT_EQ(clear.size(), 2U);
  EXPECT_EQ(clear[0].observed, "nut");
  EXPECT_EQ(clear[0].words, (std::vector<std::string>{"tight", "new"}));
  EXPECT_EQ(clear[0].limit, "");
  EXPECT_EQ(clear[1].observed, "");
  EXPECT_EQ(clear[1].limit, "nut_pull");
}

TEST(CauseFile, TheProblemFollowsSupportVehicleAndEquipment) {
  const auto file = parseCauses(fileWith());
  ASSERT_TRUE(file);
  Circumstances here;
  here.equipment = {"scale"};
  here.fallbackMinutes = 50;
  auto problem = problemFor(*file, here);
  EXPECT_EQ(problem.moves(0, 1), 10);
  EXPECT_EQ(problem.checks[1].minutes, 6);
  EXPECT_EQ(problem.first, (std::vector<std::size_t>{0}));
  here.support = model::SupportKind::TwoPost;
  here.discMount = model::DiscMount::BehindHub;
  problem = problemFor(*file, here);
  EXPECT_EQ(problem.moves(0, 1), 4);
  EXPECT_EQ(problem.checks[1].minutes, 16);
  // Without the scale it cannot be done; a check that was made is not made again.
  here.equipment.clear();
  here.leftOut = {0};
  problem = problemFor(*file, here);
  EXPECT_TRUE(problem.checks[1].finds.empty());
  EXPECT_TRUE(problem.first.empty());
}

struct BadRow {
  const char* from;
  const char* to;
  const char* key;
  const char* field;
};

TEST(CauseFile, WhatIsWrongIsNamed) {
  const std::vector<BadRow> rows{
      {R"("schema":1)", R"("schema":9)", "causes.unknown_schema", "schema"},
      {R"("yes":0.25)", R"("yes":1.25)", "causes.bad_chance", "causes/0/answers/steady/yes"},
      {R"("yes":0.25)", R"("maybe":0.25)", "causes.unknown_key", "causes/0/answers/steady/maybe"},
      {R"("answers":{"steady":{"yes":0.5}})", R"("answers":{})", "json.missing",
       "causes/1/answers/steady"},
      {R"("weight":3)", R"("weight":-3)", "causes.bad_weight", "causes/0/weight"},
      {R"("key":"other","name")", R"("key":"rest","name")", "causes.no_other", "causes"},
      {R"("parent":"ground")", R"("parent":"moon")", "causes.unknown_key", "setups/1/parent"},
      {R"("after":["look"])", R"("after":["leap"])", "causes.unknown_key", "checks/1/after"},
      {R"({"nut":0.9})", R"({"bolt":0.9})", "causes.unknown_key", "checks/1/finds/bolt"},
      {R"("minutes":6)", R"("minutes":-6)", "causes.bad_minutes", "checks/1/minutes"},
      {R"("key":"pull")", R"("key":"look")", "causes.duplicate_key", "checks/1/key"},
      {R"("words":["loose"])", R"("words":[])", "causes.no_evidence",
       "checks/1/findings/0/observed"},
      {R"("words":["loose"])", R"("words":["loose"],"limit":"nut_pull")", "causes.no_evidence",
       "checks/1/findings/0/observed"},
      {R"("words":["loose"])", R"("words":["loose"],"beyond":"above")", "causes.no_evidence",
       "checks/1/findings/0/beyond"},
      {R"("beyond":"below")", R"("beyond":"beneath")", "causes.unknown_key",
       "checks/1/findings/1/beyond"},
      {R"("cause":"nut","limit")", R"("cause":"bolt","limit")", "causes.unknown_key",
       "checks/1/findings/1/cause"},
      {R"({"limit":"nut_pull"}])", R"({}])", "causes.no_evidence", "checks/1/clear/1/observed"},
      {R"({"limit":"nut_pull"}])", R"({"limit":"nut_pull","words":["tight"]}])",
       "causes.no_evidence", "checks/1/clear/1/observed"},
      {R"({"limit":"nut_pull"}])", R"({"limit":"nut_pull","cause":"nut"}])", "json.unknown_field",
       "checks/1/clear/1/cause"},
      {R"("first":true)", R"("frist":true)", "json.unknown_field", "checks/0/frist"}};
  for (const BadRow& row : rows) {
    const auto file = parseCauses(fileWith(row.from, row.to));
    ASSERT_FALSE(file) << row.to;
    EXPECT_EQ(file.error().key, row.key) << row.to;
    EXPECT_EQ(file.error().field, std::string("/") + row.field) << row.to;
  }
}

TEST(ShippedCauses, AreReadAndSayThatTheyAreNoMeasurements) {
  const auto file = parseCauses(shippedCausesText());
  ASSERT_TRUE(file) << file.error().key << " " << file.error().field;
  EXPECT_EQ(file->source, "starting value, common practice, no source");
  EXPECT_EQ(shippedCauses().table.causes.size(), file->table.causes.size());
}

TEST(ShippedCauses, EveryNamedCauseHasACheckAndEachCheckFindsOne) {
  const CauseFile& file = shippedCauses();
  std::vector<int> found(file.table.causes.size(), 0);
  for (const Check& check : file.checks) {
    EXPECT_FALSE(check.finds.empty()) << check.key;
    for (const Detection& one : check.finds) ++found[one.cause];
  }
  for (std::size_t cause = 0; cause < found.size(); ++cause) {
    EXPECT_EQ(found[cause] > 0, cause != file.table.other) << file.table.causes[cause].key;
  }
}

TEST(ShippedCauses, EveryPresetGivesAPlanThatBeginsWithTheWalkRound) {
  const CauseFile& file = shippedCauses();
  for (const Preset& preset : file.presets) {
    Circumstances here{preset.support, std::nullopt, preset.equipment, {}, 0, file.fallbackMinutes};
    auto problem = problemFor(file, here);
    problem.causes = probabilities(file.table, {});
    const auto plan = bestPlan(problem);
    ASSERT_TRUE(plan) << preset.key << " " << plan.error().key;
    EXPECT_EQ(file.checks[plan->steps.front().check].key, "walk_round") << preset.key;
    EXPECT_GT(plan->steps.size(), 5U) << preset.key;
    std::string order;
    for (const PlanStep& step : plan->steps) order += file.checks[step.check].key + " ";
    RecordProperty(preset.key, order);
  }
}

TEST(CauseFile, WeightsThatAreAllNoughtAreRefused) {
  std::string text(shippedCausesText());
  for (std::size_t at = text.find("\"weight\": "); at != std::string::npos;
       at = text.find("\"weight\": ", at + 1)) {
    const std::size_t begin = at + 10, end = text.find(',', begin);
    text.replace(begin, end - begin, "0");
  }
  const auto file = parseCauses(text);
  ASSERT_FALSE(file);
  EXPECT_EQ(file.error().key, "causes.bad_weight");
  EXPECT_EQ(file.error().field, "/causes");
}

}  // namespace
}  // namespace sw::diagnosis
