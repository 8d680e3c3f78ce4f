// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/search.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "job_fixture.h"

namespace sw::report {
namespace {

using Kind = store::SearchHit::Kind;

TEST(SearchRows, HitsBecomeRowsForPeople) {
  const testing::JobFixture fixture;  // vehicle 1 is TRX 318
  const std::vector<store::SearchHit> hits{
      {Kind::Vehicle, {1}, std::nullopt, {12}, "TRX 318, M. Keller"},
      {Kind::Request, {1}, model::JobId{7}, {30}, "Cure the\nshake"},
      {Kind::Note, {99}, model::JobId{5}, {20}, "shake gone"}};
  const auto rows = searchRows(hits, fixture.shopState());
  EXPECT_EQ(toText(rows),
            "Registration  Job  What           Text\n"
            "TRX 318            vehicle        TRX 318, M. Keller\n"
            "TRX 318       7    owner's words  Cure the shake\n"
            "              5    note           shake gone\n");
  const auto json = toJson(std::span<const SearchRow>(rows));
  EXPECT_FALSE(json[0].contains("job"));
  EXPECT_EQ(json[1]["kind"], "request");
  EXPECT_EQ(json[1]["job"], 7);
  EXPECT_EQ(json[1]["text"], "Cure the\nshake");
}

}  // namespace
}  // namespace sw::report
