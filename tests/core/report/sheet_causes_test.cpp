// SPDX-License-Identifier: GPL-3.0-or-later
// What a sheet says of the cause: what was put right and what the last drive proved.
#include <gmock/gmock.h>

#include "document_text.h"
#include "report/job_sheet.h"
#include "shop_fixture.h"

namespace sw::report {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class SheetCauses : public ::testing::Test {
 protected:
  void SetUp() override { shop.setUp(); }
  std::string causes() {
    const auto state = shop.state();
    const auto asOf = shop.workshop->shopOf(state.entries);
    EXPECT_TRUE(asOf);
    return sw::testing::sectionText(jobSheet(state, *asOf, {}), "Causes looked at");
  }

  test::Shop shop;
};

TEST_F(SheetCauses, WhatWasPutRightStandsWithHowAndTheEndSaysWhatItWas) {
  shop.ok(R"({"do":"tell","feature":"braking","answer":"only"})");
  EXPECT_THAT(causes(), HasSubstr("As it stands: a brake disc"));
  shop.ok(R"({"do":"put_right","cause":"disc","how":"both discs renewed"})");
  EXPECT_THAT(causes(), HasSubstr("both discs renewed"));
  shop.drive(model::ShakeResult::None);
  shop.ok(R"({"do":"close","outcome":"closed_without_sign_off","reason":"test"})");
  EXPECT_THAT(causes(), HasSubstr("On record: a brake disc uneven or running out put right, and "
                                  "the last drive was without the shake."));
  EXPECT_THAT(causes(), Not(HasSubstr("As it stands")));
}

TEST_F(SheetCauses, WithoutALessonNothingIsOnRecord) {
  shop.ok(R"({"do":"tell","feature":"braking","answer":"only"})");
  shop.ok(R"({"do":"close","outcome":"closed_without_sign_off","reason":"test"})");
  EXPECT_THAT(causes(), Not(HasSubstr("On record")));
}

}  // namespace
}  // namespace sw::report
