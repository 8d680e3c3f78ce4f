// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/export_json.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "job_fixture.h"
#include "model/entry_json.h"

namespace sw::report {
namespace {

using model::Json;
using ::testing::HasSubstr;
using testing::JobFixture;
using ::testing::Not;
using testing::quantity;

JobFixture workedJob() {
  JobFixture fixture;
  fixture.startPlan("swivel-pull-only");
  fixture.workThrough();
  return fixture;
}

TEST(ExportJson, EveryFactOfTheJobStandsInItAndReadsBack) {
  const auto fixture = workedJob();
  const auto job = fixture.state();
  const Json json = exportJob(job, fixture.shopState());
  ASSERT_EQ(json["entries"].size(), job.entries.size());
  for (std::size_t i = 0; i < job.entries.size(); ++i) {
    EXPECT_EQ(json["entries"][i], model::toJson(*job.entries[i]));
    EXPECT_TRUE(model::entryFromJson(json["entries"][i])) << json["entries"][i].dump();
  }
}

TEST(ExportJson, TheShapeIsTheDocumentedOne) {
  const auto fixture = workedJob();
  const Json json = exportJob(fixture.state(), fixture.shopState());
  std::vector<std::string> keys;
  for (const auto& [key, value] : json.items()) keys.push_back(key);
  EXPECT_THAT(keys, ::testing::ElementsAre("schema", "job", "vehicle", "people", "instruments",
                                           "instrument_checks", "spec", "procedures", "entries",
                                           "summary"));
  EXPECT_EQ(json["schema"], 1);
  EXPECT_EQ(json["job"]["job"], 7);
  EXPECT_EQ(json["job"]["odometer"]["number"], "148210");
  EXPECT_EQ(json["vehicle"]["registration"], "TRX 318");
  EXPECT_EQ(json["people"][0]["initials"], "AS");
  EXPECT_EQ(json["procedures"].size(), fixture.planProcedures("swivel-pull-only").size());
  EXPECT_EQ(json["summary"]["outcome"], "open");
}

TEST(ExportJson, EveryReferenceOfAFactIsThere) {
  const auto fixture = workedJob();
  const Json json = exportJob(fixture.state(), fixture.shopState());
  const auto known = [&](const char* list, const Json& id) {
    for (const Json& one : json[list]) {
      if (one["entry"] == id) return true;
    }
    return false;
  };
  std::size_t references = 0;
  for (const Json& entry : json["entries"]) {
    const Json& fact = entry["fact"];
    EXPECT_TRUE(!entry.contains("by") || known("people", entry["by"]));
    for (const char* key : {"instrument", "wrench"}) {
      if (!fact.contains(key)) continue;
      EXPECT_TRUE(known("instruments", fact[key]));
      ++references;
    }
    for (const char* key : {"limit", "spec"}) {
      if (!fact.contains(key)) continue;
      EXPECT_TRUE(known("spec", fact[key]));
      ++references;
    }
  }
  EXPECT_GT(references, 20U);
}

TEST(ExportJson, SameFactsSameBytes) {
  const auto fixture = workedJob();
  const auto shop = fixture.shopState();
  EXPECT_EQ(exportJob(fixture.state(), shop).dump(2), exportJob(fixture.state(), shop).dump(2));
}

procedures::MeasureSpec pull() {
  procedures::MeasureSpec spec;
  spec.limit = "swivel.starting_force";
  spec.state = model::PullState{};
  return spec;
}

Json pullsOf(const std::vector<std::string>& left, const std::vector<std::string>& right,
             model::Side first, SideMapping mapping = SideMapping::AsRecorded) {
  JobFixture fixture;
  const auto run = fixture.start("as-found-pull");
  for (const model::Side side : {first, model::otherSide(first)}) {
    fixture.takeSeries({run, "pull_ahead", side}, "swivel.starting_force",
                       side == model::Side::Left ? left : right, QuantityKind::Force, pull());
  }
  return comparableJob(fixture.state(), mapping);
}

// 2 kgf = 19.6133 N and 2.1 kgf = 20.593965 N exactly (9.80665 N a kgf, 3rd CGPM 1901).
TEST(ComparableJson, UnitAndOrderOfTheSidesDoNotMatter) {
  const auto newtons = pullsOf({"19.6133 N", "20.593965 N", "19.6133 N"},
                               {"20.593965 N", "20.593965 N", "19.6133 N"}, model::Side::Left);
  const auto kilograms =
      pullsOf({"2 kgf", "2,1 kgf", "2.0 kgf"}, {"2.1 kgf", "2.10 kgf", "2 kg"}, model::Side::Right);
  EXPECT_EQ(newtons, kilograms);
  EXPECT_EQ(newtons["series"].size(), 2U);
  EXPECT_EQ(newtons["series"][0]["readings"][0]["si"], 19.6133);
}

TEST(ComparableJson, AnotherReadingDiffers) {
  EXPECT_NE(pullsOf({"20 N", "20 N", "20 N"}, {"20 N"}, model::Side::Left),
            pullsOf({"20 N", "20 N", "20.5 N"}, {"20 N"}, model::Side::Left));
}

TEST(ComparableJson, TheMirroredJobIsTheSameWithSidesExchanged) {
  const std::vector<std::string> one{"20 N", "20.5 N", "20 N"}, other{"17 N", "17.5 N", "17 N"};
  EXPECT_EQ(pullsOf(one, other, model::Side::Left),
            pullsOf(other, one, model::Side::Right, SideMapping::Exchanged));
  EXPECT_NE(pullsOf(one, other, model::Side::Left), pullsOf(other, one, model::Side::Left));
}

TEST(ComparableJson, ItHoldsNoIdsTimesOrTypedText) {
  const auto fixture = workedJob();
  const std::string text = comparableJob(fixture.state()).dump();
  for (const char* absent : {"entry", "done_at", "2031-", "\"unit\"", "number", "seen and tried"}) {
    EXPECT_THAT(text, Not(HasSubstr(absent))) << absent;
  }
  for (const char* present : {"verdict", "taken_off", "torque", "\"passes\":true"}) {
    EXPECT_THAT(text, HasSubstr(present)) << present;
  }
}

}  // namespace
}  // namespace sw::report
