// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/program_run.h"

// Check values: worked budgets computed with SciPy 1.10.1 (Student quantiles also with Boost.Math);
// rules of JCGM 100:2008 and JCGM 106:2012.

namespace sw::test {
namespace {

using model::Json;

constexpr double kPrinted = 1.5e-6;  // the check values are given to six decimals

/// Spring scale 0.5 N, permissible error 0.5 N, pull within 10 degrees; one more member at the end.
std::string springScale(const std::string& rest) {
  return R"({"readings": ["18.5 N", "19.0 N", "18.5 N", "19.5 N", "19.0 N"],
             "instrument": {"graduation": "0.5 N", "permissible_error": "0.5 N"},
             "pull_angle_within": "10 deg")" +
         rest + "}";
}

std::string upperLimit(const std::string& limit) {
  return springScale(R"(, "limit": {"max": ")" + limit + R"("})");
}

TEST(ComputeSeries, BudgetOfASpringScale) {
  const Json answer = computed("series", springScale(""));
  const Json& result = answer.at("result");
  EXPECT_NEAR(amount(result.at("mean"), "N"), 18.9, kPrinted);
  EXPECT_NEAR(amount(result.at("scatter"), "N"), 0.41833, 5e-6);
  EXPECT_NEAR(result.at("correction_factor").get<double>(), 0.994931, kPrinted);
  EXPECT_NEAR(amount(result.at("corrected_mean"), "N"), 18.80419, 1e-5);
  EXPECT_NEAR(amount(result.at("standard_uncertainty"), "N"), 0.380911, kPrinted);
  EXPECT_NEAR(result.at("degrees_of_freedom").get<double>(), 70.153, 1e-3);
  EXPECT_NEAR(result.at("coverage_factor").get<double>(), 1.99436, 1e-5);
  EXPECT_NEAR(amount(result.at("expanded_uncertainty"), "N"), 0.759674, kPrinted);
  EXPECT_EQ(result.at("display"), "18.80 +- 0.76 N");
  EXPECT_EQ(result.at("verdict"), "no_limit");
  EXPECT_FALSE(result.contains("conformance_probability"));
  ASSERT_EQ(result.at("budget").size(), 4U);
  EXPECT_EQ(result.at("budget")[0].at("source"), "scatter");
  EXPECT_NEAR(amount(result.at("budget")[0].at("standard_uncertainty"), "N"), 0.186135, kPrinted);
  EXPECT_EQ(result.at("budget")[0].at("degrees_of_freedom").get<double>(), 4);
  EXPECT_EQ(result.at("budget")[1].at("degrees_of_freedom"), "infinity");
}

TEST(ComputeSeries, VerdictsAtFourLimits) {
  struct Row {
    const char* limit;
    double probability;
    const char* verdict;
  };
  for (const Row& row : {Row{"20 N", 0.998761, "within"}, Row{"19.5 N", 0.964000, "within"},
                         Row{"19 N", 0.695586, "undecided"}, Row{"18 N", 0.019159, "outside"}}) {
    const Json result = computed("series", upperLimit(row.limit)).at("result");
    EXPECT_NEAR(result.at("conformance_probability").get<double>(), row.probability, kPrinted);
    EXPECT_EQ(result.at("verdict"), row.verdict) << row.limit;
  }
}

TEST(ComputeSeries, ASpringScaleMarkedInKilograms) {
  const Json answer = computed("series", R"({"readings": ["1,9 kg", "2.0 kgf", "1.9kgf"],
                    "instrument": {"graduation": "0.1 kgf"}, "pull_angle_within": 15})");
  const Json& result = answer.at("result");
  EXPECT_NEAR(amount(result.at("corrected_mean"), "N"), 18.74369, 1e-5);
  EXPECT_NEAR(amount(result.at("standard_uncertainty"), "N"), 0.46896, 1e-5);
  EXPECT_NEAR(result.at("degrees_of_freedom").get<double>(), 8.86881, 1e-5);
  EXPECT_NEAR(result.at("coverage_factor").get<double>(), 2.26727, 1e-5);
  EXPECT_NEAR(amount(result.at("expanded_uncertainty"), "N"), 1.06326, 1e-5);
  EXPECT_EQ(result.at("display"), "18.7 +- 1.1 N");
  std::vector<std::string> codes;
  for (const auto& note : answer.at("notes")) codes.push_back(note.at("code"));
  EXPECT_THAT(codes, testing::IsSupersetOf(
                         {"mass_read_as_force", "comma_as_decimal", "instrument_error_unknown"}));
}

TEST(ComputeSeries, EqualReadingsKeepTheGraduation) {
  const Json result = computed("series", R"({"readings": ["19 N", 19, "19.0 N", "19", 19.0],
                                             "instrument": {"graduation": 0.5}})")
                          .at("result");
  EXPECT_EQ(result.at("scatter"), "0 N");
  // 0.5 / sqrt(12)
  EXPECT_NEAR(amount(result.at("standard_uncertainty"), "N"), 0.1443376, 1e-7);
}

TEST(ComputeSeries, TheKindComesFromTheFirstReadingOrTheField) {
  const std::string instrument = R"("instrument": {"graduation": 0.01})";
  const auto unitOf = [&](const std::string& fields) {
    const Json answer = computed("series", "{" + fields + "," + instrument + "}");
    const auto text = answer.at("result").at("mean").get<std::string>();
    return text.substr(text.find(' ') + 1);
  };
  EXPECT_EQ(unitOf(R"("readings": ["11.2 mm", 11.3])"), "mm");
  EXPECT_EQ(unitOf(R"("readings": [11.2, 11.3])"), "N");
  EXPECT_EQ(unitOf(R"("readings": [11.2, 11.3], "quantity": "torque")"), "N m");
  EXPECT_EQ(unitOf(R"("readings": ["2 kg", "2 kg"])"), "N");
  EXPECT_EQ(unitOf(R"("readings": ["2 kg", "2 kg"], "quantity": "mass")"), "kg");
  EXPECT_EQ(refused("series", R"({"readings": ["11 mm", "12 N"],)" + instrument + "}").at("field"),
            "/readings/1");
}

TEST(ComputeSeries, MoreThanWasPlannedRaisesTheBar) {
  // 0.964 passes at 0.95 and not at 0.975, the bar after an extension to five.
  const std::string limit = R"(, "limit": {"max": "19.5 N"}, "options": {"planned": )";
  EXPECT_EQ(computed("series", springScale(limit + "5}")).at("result").at("verdict"), "within");
  const Json extended = computed("series", springScale(limit + "3}"));
  EXPECT_EQ(extended.at("result").at("verdict"), "undecided");
  EXPECT_EQ(extended.at("notes")[0].at("code"), "extended");
  EXPECT_EQ(extended.at("method").at("options").at("planned"), 3);
  const Json provisional = computed("series", springScale(limit + "6}"));
  EXPECT_EQ(provisional.at("result").at("verdict"), "provisional");
  EXPECT_EQ(provisional.at("notes")[0].at("code"), "so_far");
}

TEST(ComputeSeries, OneReadingHasNoScatterAndNoProbability) {
  const Json result = computed("series", R"({"readings": ["19 N"], "limit": {"max": "30 N"},
                                             "instrument": {"graduation": "0.5 N"}})")
                          .at("result");
  EXPECT_FALSE(result.contains("scatter"));
  EXPECT_FALSE(result.contains("conformance_probability"));
  EXPECT_EQ(result.at("verdict"), "provisional");
}

TEST(ComputeSeries, TheOwnCheckCorrects) {
  const Json answer = computed("series", R"({"readings": ["19 N", "19 N", "19 N"],
                    "instrument": {"graduation": "0.5 N",
                                   "check": {"applied": "20 N", "shown": "19 N"}}})");
  // applied - shown = 1 N is added to every reading.
  EXPECT_NEAR(amount(answer.at("result").at("corrected_mean"), "N"), 20.0, 1e-12);
  EXPECT_EQ(answer.at("result").at("budget")[2].at("source"), "own_check");
}

TEST(ComputeSeries, BadInputsNameTheFieldAndTheKindOfFault) {
  struct Row {
    const char* input;
    const char* code;
    const char* field;
  };
  const std::string good = R"("instrument": {"graduation": "0.5 N"})";
  for (const Row& row : {
           Row{R"({"readings": [18, 19, "abc"])", "wrong_kind", "/readings/2"},
           Row{R"({"readings": [18, "3 mm"])", "wrong_kind", "/readings/1"},
           Row{R"({"readings": [18, null])", "wrong_kind", "/readings/1"},
           Row{R"({"readings": "18 N")", "wrong_kind", "/readings"},
           Row{R"({"readings": [])", "missing_field", "/readings"},
           Row{R"({"reading": [18])", "missing_field", "/readings"},
           Row{R"({"readings": [18], "readings": [18])", "duplicate_field", "/readings"},
           Row{R"({"readings": [18], "limits": {})", "unknown_field", "/limits"},
           Row{R"({"readings": [18], "limit": {"maximum": 3})", "unknown_field", "/limit/maximum"},
           Row{R"({"readings": [18], "limit": {"min": 3, "max": 2})", "out_of_range", "/limit"},
           Row{R"({"readings": [18], "pull_angle_within": "90 deg")", "out_of_range",
               "/pull_angle_within"},
           Row{R"({"readings": [18], "pull_angle_within": "-1 deg")", "out_of_range",
               "/pull_angle_within"},
           Row{R"({"readings": [18], "options": {"confidence": 1})", "out_of_range",
               "/options/confidence"},
           Row{R"({"readings": [18], "options": {"planned": 0})", "out_of_range",
               "/options/planned"},
           Row{R"({"readings": [18], "options": {"rule": "guess"})", "wrong_kind", "/options/rule"},
           Row{R"({"readings": [18], "pooled_scatter": {"amount": "0.4 N"})", "missing_field",
               "/pooled_scatter/readings"},
           Row{R"({"readings": [18], "pooled_scatter": {"amount": "0 N", "readings": 9})",
               "out_of_range", "/pooled_scatter/amount"},
           Row{R"({"readings": [18], "quantity": "weight")", "wrong_kind", "/quantity"},
           Row{R"({"readings": [18], "seed": -1)", "out_of_range", "/seed"},
       }) {
    const Json error = refused("series", std::string(row.input) + "," + good + "}");
    EXPECT_EQ(error.at("code"), row.code) << row.input;
    EXPECT_EQ(error.at("field"), row.field) << row.input;
  }
  EXPECT_EQ(refused("series", R"({"readings": [1], "instrument": {"graduation": 0}})").at("field"),
            "/instrument/graduation");
  EXPECT_EQ(refused("series", R"({"readings": [1]})").at("field"), "/instrument");
}

TEST(ComputeSeries, WhatComesOutCanGoIn) {
  const Json first = computed("series", springScale("")).at("result");
  Json again = {{"readings", Json::array({first.at("corrected_mean"), first.at("mean")})},
                {"instrument",
                 {{"graduation", first.at("scatter")},
                  {"permissible_error", first.at("expanded_uncertainty")},
                  {"error_shape", "certificate"},
                  {"coverage_factor", first.at("coverage_factor")}}}};
  const Json second = computed("series", again.dump()).at("result");
  EXPECT_NEAR(amount(second.at("budget")[2].at("standard_uncertainty"), "N"),
              amount(first.at("standard_uncertainty"), "N"), 1e-14);
}

}  // namespace
}  // namespace sw::test
