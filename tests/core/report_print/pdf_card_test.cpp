// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "job_fixture.h"
#include "printed.h"
#include "report/work_card.h"

namespace sw::report_print {
namespace {

using ::testing::HasSubstr;
using namespace sw::report;
using testing::JobFixture;
using testing::pagesOf;
using testing::printed;

Document cardOf(const JobFixture& fixture, Paper paper) {
  return workCard(fixture.state(), fixture.shopState(), {paper, {}, fixture.planProcedures()});
}

TEST(PdfCard, TheWholePlanForBothSidesFitsOnTwoPages) {
  JobFixture fixture;
  for (const Paper paper : {Paper::A4, Paper::Letter}) {
    EXPECT_LE(pagesOf(printed(cardOf(fixture, paper))), 2);
  }
  fixture.add(model::SupportChosen{model::SupportKind::Stands});
  for (const Paper paper : {Paper::A4, Paper::Letter}) {
    EXPECT_LE(pagesOf(printed(cardOf(fixture, paper))), 2);
  }
}

TEST(PdfCard, AStartedJobFitsToo) {
  JobFixture fixture;
  fixture.startPlan();
  const auto pdf = printed(cardOf(fixture, Paper::A4));
  EXPECT_LE(pagesOf(pdf), 2);
  EXPECT_THAT(testing::readBack(pdf), HasSubstr("Page 1 of 2"));
  EXPECT_THAT(testing::readBack(pdf), HasSubstr("TRX 318 – job 7"));
}

TEST(PdfCard, ItIsBlackAndWhite) {
  const auto text = toHtml(cardOf(JobFixture{}, Paper::A4), HtmlTarget::Layout);
  // No verdict shapes on the card, so no colour but greys.
  for (const char* colour : {"#0067b3", "#9a5f00", "#6e0a1e"}) {
    EXPECT_FALSE(text.contains(QLatin1String(colour)));
  }
}

}  // namespace
}  // namespace sw::report_print
