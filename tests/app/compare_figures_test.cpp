// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/program_run.h"

namespace sw::test {
namespace {

using model::Json;

Json compare(const std::string& first, const std::string& second) {
  return computed("compare-figures",
                  R"({"first": ")" + first + R"(", "second": ")" + second + "\"}");
}

// Common practice, no source: figures that spec sheets print beside one another.
TEST(ComputeCompareFigures, PairsThatAgree) {
  for (const auto& [first, second] :
       {std::pair{"25 N m", "18 lbf ft"}, std::pair{"43 N m", "32 lbf ft"},
        std::pair{"10 N m", "7.5 lbf ft"}, std::pair{"85 N m", "62 lbf ft"},
        std::pair{"45 N", "4.6 kgf"}, std::pair{"4.6 kg", "45 N"}}) {
    EXPECT_EQ(compare(first, second).at("result").at("agreement"), "agrees") << first;
    EXPECT_EQ(compare(second, first).at("result").at("agreement"), "agrees") << first;
  }
}

TEST(ComputeCompareFigures, AQueryShowsBothConversionsAndWhatWouldAgree) {
  const Json result = compare("100 N m", "72 lbf ft").at("result");
  EXPECT_EQ(result.at("agreement"), "query");
  // GNU units 2.22: 100 newton m = 73.756215 lbf ft; 72 lbf ft = 97.618892 newton m
  EXPECT_NEAR(amount(result.at("first_in_second_unit"), "lbf ft"), 73.756215, 5e-7);
  EXPECT_NEAR(amount(result.at("second_in_first_unit"), "N m"), 97.618892, 5e-7);
  EXPECT_EQ(result.at("would_agree_with_first"), "74 lbf ft");
  EXPECT_EQ(result.at("would_agree_with_second"), "98 N m");
}

TEST(ComputeCompareFigures, ATrailingZeroCounts) {
  EXPECT_EQ(compare("25 N m", "18 lbf ft").at("result").at("agreement"), "agrees");
  EXPECT_EQ(compare("25.00 N m", "18.00 lbf ft").at("result").at("agreement"), "query");
}

TEST(ComputeCompareFigures, BadInputsNameTheField) {
  const auto refusal = [](const std::string& first, const std::string& second) {
    return refused("compare-figures",
                   R"({"first": ")" + first + R"(", "second": ")" + second + "\"}");
  };
  EXPECT_EQ(refusal("25 N m", "3 mm").at("field"), "/second");
  EXPECT_EQ(refusal("25 N m", "3 mm").at("code"), "wrong_kind");
  EXPECT_EQ(refusal("25", "18 lbf ft").at("field"), "/first");
  EXPECT_EQ(refusal("25 N m", "18").at("field"), "/second");
  EXPECT_EQ(refused("compare-figures", R"({"first": 25, "second": "18 lbf ft"})").at("field"),
            "/first");
}

}  // namespace
}  // namespace sw::test
