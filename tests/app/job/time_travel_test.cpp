// SPDX-License-Identifier: GPL-3.0-or-later
// What a closed job points at is frozen: later changes leave its sheet and export as they were.
#include <nlohmann/json.hpp>
#include "complete_job.h"
#include "report/export_json.h"
#include "report/html.h"
#include "report/job_sheet.h"

namespace sw::test {
namespace {

/// Export and both sheets of the fixture's job.
std::string recordOf(Shop& shop) {
  const auto state = shop.state();
  const auto asOf = shop.workshop->shopOf(state.entries);
  EXPECT_TRUE(asOf);
  std::string text = report::exportJob(state, *asOf).dump();
  for (const auto copy : {report::SheetCopy::Workshop, report::SheetCopy::Customer}) {
    report::SheetOptions options;
    options.copy = copy;
    text += report::toHtml(report::jobSheet(state, *asOf, options)).toStdString();
  }
  return text;
}

std::string workedAndSignedOff(Shop& shop) {
  shop.setUp();
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 3);
  workWholePlan(shop, mechanic, situation(), "swivel-preload");
  shop.ok(R"({"do":"recheck","what":"Leak look","on":"2031-04-10"})");
  shop.ok(R"({"do":"sign_off"})");
  return recordOf(shop);
}

class TimeTravel : public testing::Test {
 protected:
  void SetUp() override {
    shop.ok(R"({"do":"set_setting","key":"shop_name","value":"Lindner and Thorne"})");
    (void)workedAndSignedOff(shop);
  }
  std::string record() { return recordOf(shop); }

  Shop shop;
};

TEST_F(TimeTravel, ChangesAfterwardsLeaveTheRecord) {
  const std::string before = record();
  ASSERT_NE(before.find("AB 12"), std::string::npos);
  shop.clock.advanceMilliseconds(400LL * 24 * 3600 * 1000);
  shop.ok(R"({"do":"set_spec","registration":"AB 12","key":"swivel.starting_force","type":"limit",)"
          R"("min":"40 N","max":"60 N"})");
  shop.ok(R"({"do":"set_instrument","name":"scale","graduation":"2 N","permissible_error":"5 N"})");
  shop.ok(R"({"do":"set_person","initials":"KL","name":"Kaya Marrable","new_initials":"KM"})");
  shop.by = "KM";
  shop.ok(R"({"do":"set_vehicle","registration":"AB 12","new_registration":"ZZ 9",)"
          R"("shim_layout":"inner","owner":"Somebody Else","steering_arm_on_cap":"yes"})");
  EXPECT_EQ(record(), before);
}

TEST_F(TimeTravel, ChangedProcedureFilesLeaveTheRecord) {
  const std::string before = record();
  auto changed = shop.library.procedures();
  for (auto& procedure : changed) {
    procedure.title = "Changed";
    procedure.hash = "0000";
    for (auto& step : procedure.steps) step.title = "Changed";
  }
  shop.library = procedures::Library::of(changed, shop.library.plans());
  shop.reopen();
  EXPECT_EQ(record(), before);
}

TEST_F(TimeTravel, AnotherNameOfTheShopLeavesTheRecord) {
  const auto nameNow = [&] { return shop.workshop->shopOf(shop.state().entries)->name(); };
  const std::string before = nameNow();
  EXPECT_EQ(before, "Lindner and Thorne");
  shop.ok(R"({"do":"set_setting","key":"shop_name","value":"Somebody Else"})");
  EXPECT_EQ(nameNow(), before);
  EXPECT_EQ((*shop.workshop->shop())->name(), "Somebody Else");
}

/// A job done and closed before the next version of the book, whatever that brings.
TEST(TimeTravelOfTheSchema, ANewerVersionLeavesTheRecord) {
  Shop shop;
  const auto record = workedAndSignedOff(shop);
  store::BookOptions next;
  next.migrations.push_back({next.schemaVersion() + 1,
                             "made up",
                             {R"(CREATE TABLE "made_up" ("id" INTEGER PRIMARY KEY) STRICT)"}});
  shop.reopenBook(next);
  ASSERT_EQ(shop.book->schemaVersion(), store::allMigrations().back().to + 1);
  EXPECT_EQ(recordOf(shop), record);
}

TEST_F(TimeTravel, ARecheckIsRecordedAfterTheClosing) {
  const auto job = shop.state();
  const auto due = std::find_if(job.valid.begin(), job.valid.end(), [](const model::Entry* entry) {
    return model::as<model::RecheckDue>(*entry) != nullptr;
  });
  ASSERT_NE(due, job.valid.end());
  const std::string number = std::to_string((*due)->id.value);
  shop.refused(R"({"do":"recheck_done","recheck":1,"result":"dry"})", "workshop.no_recheck");
  shop.ok(R"({"do":"recheck_done","recheck":)" + number + R"(,"result":"dry, nuts held"})");
  shop.refused(R"({"do":"recheck_done","recheck":)" + number + R"(,"result":"dry"})",
               "workshop.recheck_is_done");
  EXPECT_NE(record().find("dry, nuts held"), std::string::npos);
}

TEST_F(TimeTravel, ACorrectionShowsAsAChain) {
  const std::string before = record();
  const auto state = shop.state();
  const auto& series = state.series.back();
  const auto& reading = series.readings.back();
  shop.ok(R"({"do":"correct","entry":)" + std::to_string(reading.entry.value) +
          R"(,"reason":"typing_slip","field":"value","value":"20.6"})");
  const std::string after = record();
  EXPECT_NE(after, before);
  EXPECT_NE(after.find("20.6"), std::string::npos);
  EXPECT_NE(after.find(reading.fact.value.number), std::string::npos);
}

}  // namespace
}  // namespace sw::test
