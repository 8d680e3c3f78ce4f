// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/readable.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace sw::compute {
namespace {

using model::Json;

std::string rowOf(const Json& judged) {
  const std::vector<FieldDescription> fields{{.name = "minimum", .kind = "object"}};
  const auto shown = readable(fields, Json{{"minimum", judged}});
  return shown.rows.empty() ? std::string() : shown.rows.front().value;
}

// The no-break spaces of a measured value, as plain ones.
std::string plain(std::string text) {
  const std::string noBreak = "\u00a0";
  for (auto at = text.find(noBreak); at != std::string::npos; at = text.find(noBreak)) {
    text.replace(at, noBreak.size(), " ");
  }
  return text;
}

TEST(Readable, WhatWasJudgedIsAFigureWithItsDoubtAndAVerdict) {
  const Json judged = {{"value", "22.398 mm"},
                       {"standard_uncertainty", "0.00175594229214212 mm"},
                       {"degrees_of_freedom", "infinity"},
                       {"expanded_uncertainty", "0.00344158365152927 mm"},
                       {"verdict", "within"},
                       {"side", "none"}};
  // Two digits of the doubt, the value to the same place (JCGM 100:2008, 7.2.6).
  EXPECT_EQ(plain(rowOf(judged)), "22.3980 ± 0.0034 mm, within");
}

TEST(Readable, TheSideOfALimitIsNamedAndNoLimitIsNoVerdict) {
  Json judged = {{"value", "0.015 mm"},
                 {"expanded_uncertainty", "0.0008 mm"},
                 {"verdict", "outside"},
                 {"side", "above"}};
  EXPECT_EQ(plain(rowOf(judged)), "0.01500 ± 0.00080 mm, outside, above the limit");
  judged["verdict"] = "no_limit";
  judged["side"] = "none";
  EXPECT_EQ(plain(rowOf(judged)), "0.01500 ± 0.00080 mm");
}

TEST(Readable, OtherObjectsAreNamedFieldByField) {
  const std::vector<FieldDescription> fields{
      {.name = "limit",
       .kind = "object",
       .fields = {{.name = "min", .kind = "force"}, {.name = "max", .kind = "force"}}}};
  const auto shown = readable(fields, Json{{"limit", {{"min", "15 N"}, {"max", "26 N"}}}});
  ASSERT_EQ(shown.rows.size(), 1U);
  EXPECT_EQ(shown.rows.front().value, "min 15 N, max 26 N");
}

}  // namespace
}  // namespace sw::compute
