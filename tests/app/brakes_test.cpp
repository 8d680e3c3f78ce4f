// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/answer.h"
#include "support/program_run.h"

// What the calculations about brake discs say beside their figures; figures themselves are tested
// in tests/core/mechanics/brakes. Rules without a source are common practice.

namespace sw::test {
namespace {

using model::Json;

std::string listOf(int count, const std::string& text) {
  std::string list = "[";
  for (int at = 0; at < count; ++at) list += (at == 0 ? "\"" : ", \"") + text + "\"";
  return list + "]";
}

Json thickness(int points, const std::string& more, const std::string& gauge = "micrometer",
               const std::string& instrument =
                   R"({"graduation": "0.001 mm", "permissible_error": "0.004 mm"})") {
  return computed("disc-thickness", R"({"gauge": ")" + gauge + R"(", "readings": )" +
                                        listOf(points, "12 mm") + R"(, "instrument": )" +
                                        instrument + more + "}");
}

TEST(ComputeDiscThickness, ALargeVariationLimitIsQuestioned) {
  EXPECT_TRUE(hasNote(thickness(12, R"(, "variation_limit": "0.13 mm")"), "variation_limit_large"));
  EXPECT_FALSE(
      hasNote(thickness(12, R"(, "variation_limit": "0.05 mm")"), "variation_limit_large"));
}

TEST(ComputeDiscThickness, PointsThatAreBlindSaySo) {
  const Json four = thickness(4, R"(, "variation_limit": "0.0127 mm")");
  EXPECT_TRUE(hasNote(four, "blind_orders"));
  EXPECT_TRUE(hasNote(four, "too_few_points"));
  EXPECT_EQ(four.at("result").at("variation").at("verdict"), "undecided");
  EXPECT_EQ(four.at("result").at("orders")[1].at("captured_share"), 0);
  const Json eleven = thickness(11, R"(, "variation_limit": "0.0127 mm")");
  EXPECT_FALSE(hasNote(eleven, "blind_orders"));
  EXPECT_EQ(eleven.at("result").at("variation").at("verdict"), "within");
}

TEST(ComputeDiscThickness, ACaliperOverALipGivesNoMinimum) {
  const Json answer = thickness(12, R"(, "discard": "10 mm")", "caliper_over_lip");
  EXPECT_TRUE(hasNote(answer, "gauge_over_lip"));
  EXPECT_EQ(answer.at("result").at("minimum").at("verdict"), "undecided");
  EXPECT_EQ(refused("disc-thickness", R"({"readings": ["12 mm"],
                     "instrument": {"graduation": "0.01 mm"}})")
                .at("field"),
            "/gauge");
}

TEST(ComputeDiscThickness, AHundredthIsTooCoarse) {
  const Json answer = thickness(12, R"(, "variation_limit": "0.0127 mm")", "micrometer",
                                R"({"graduation": "0.01 mm", "permissible_error": "0.004 mm"})");
  EXPECT_EQ(answer.at("result").at("variation").at("verdict"), "instrument_too_coarse");
  EXPECT_TRUE(hasNote(answer, "too_coarse"));
}

TEST(ComputeDiscThickness, WithoutTheInstrumentsErrorNothingIsProved) {
  const Json answer =
      thickness(12, R"(, "discard": "10 mm")", "micrometer", R"({"graduation": "0.001 mm"})");
  EXPECT_EQ(answer.at("result").at("minimum").at("verdict"), "undecided");
  EXPECT_TRUE(hasNote(answer, "instrument_error_unknown"));
  EXPECT_TRUE(hasNote(answer, "minimum_not_proved"));
}

TEST(ComputeDiscThickness, BadReadingsNameTheirPlace) {
  const Json error = refused("disc-thickness", R"({"gauge": "micrometer",
      "readings": ["12 mm", "12 mm", "12 mm"], "instrument": {"graduation": "0.01 mm"}})");
  EXPECT_EQ(error.at("field"), "/readings");
  EXPECT_EQ(error.at("code"), "out_of_range");
}

const std::string kDial = R"("instrument": {"graduation": "0.001 mm"})";

TEST(ComputeDiscRunout, ClockPlacesAndEvenStepsAreTheSame) {
  const Json even = computed("disc-runout", "{" + kDial + R"(,
      "readings": ["0.01 mm", "0.05 mm", "0.03 mm", "0 mm"]})");
  const Json clock = computed("disc-runout", "{" + kDial + R"(, "points": [
      {"clock": 6, "reading": "0.03 mm"}, {"clock": 3, "reading": "0.05 mm"},
      {"clock": 12, "reading": "0.01 mm"}, {"angle": "270 deg", "reading": "0 mm"}]})");
  EXPECT_EQ(even.at("result"), clock.at("result"));
}

TEST(ComputeDiscRunout, BadPlacesAreNamed) {
  const auto field = [](const std::string& rest) {
    return refused("disc-runout", "{" + kDial + rest + "}").at("field").get<std::string>();
  };
  EXPECT_EQ(field(""), "/readings");
  EXPECT_EQ(field(R"(, "readings": ["0 mm"], "points": [{"clock": 3, "reading": "0 mm"}])"),
            "/points");
  EXPECT_EQ(field(R"(, "points": [{"clock": 12, "reading": "0 mm"},
                                  {"clock": 3, "reading": "0 mm"}])"),
            "/points/1");
  EXPECT_EQ(field(R"(, "points": [{"clock": 12, "reading": "0 mm"},
                                  {"clock": 6, "reading": "0 mm"}])"),
            "/points");
  EXPECT_EQ(field(R"(, "points": [{"clock": 3, "angle": "90 deg", "reading": "0 mm"}])"), "/angle");
  EXPECT_EQ(field(R"(, "points": [{"clock": 13, "reading": "0 mm"}])"), "/points/0/clock");
}

TEST(ComputeDiscRunout, RunoutIsNotTakenForThicknessVariation) {
  const Json answer = computed("disc-runout", "{" + kDial + R"(,
      "readings": ["0.01 mm", "0.05 mm", "0.03 mm", "0 mm"]})");
  EXPECT_TRUE(hasNote(answer, "another_fault"));
}

TEST(ComputeRunoutAtTrack, WhatDoesNotCountIsSaid) {
  const Json answer = computed("runout-at-track", R"({"fault": "hub_runout",
      "hub_runout": "0.02 mm", "hub_radius": "50 mm", "track_radius": "125 mm",
      "speck": "0.1 mm"})");
  EXPECT_NEAR(amount(answer.at("result").at("runout"), "mm"), 0.05, 1e-12);
  EXPECT_TRUE(hasNote(answer, "not_used"));
  EXPECT_EQ(refused("runout-at-track", R"({"fault": "speck", "speck": "0.1 mm",
                                           "track_radius": "125 mm"})")
                .at("field"),
            "/seat_diameter");
}

TEST(ComputeDiscIndex, OneWayOfGivingItAndBothRuns) {
  const auto field = [](const std::string& rest) {
    return refused("disc-index", R"({"studs": 5)" + rest + "}").at("field").get<std::string>();
  };
  const std::string run = R"({"position": 0, "amount": "0.1 mm", "angle": "0 deg"})";
  const std::string part = R"({"amount": "0.1 mm", "angle": "0 deg"})";
  EXPECT_EQ(field(""), "/runs");
  EXPECT_EQ(field(R"(, "runs": [)" + run + "]"), "/runs");
  EXPECT_EQ(field(R"(, "runs": [)" + run + ", " + run + "]"), "/runs/1/position");
  EXPECT_EQ(field(R"(, "hub": )" + part), "/disc");
  EXPECT_EQ(field(R"(, "disc": )" + part), "/hub");
  EXPECT_EQ(field(R"(, "hub": )" + part + R"(, "runs": [)" + run + ", " + run + "]"), "/hub");
}

TEST(ComputeDiscIndex, AHubThatIndexingCannotCureIsNamed) {
  const std::string parts = R"({"studs": 5, "hub": {"amount": "0.08 mm", "angle": "10 deg"},
      "disc": {"amount": "0.01 mm", "angle": "70 deg"}, "runout_limit": )";
  EXPECT_TRUE(hasNote(computed("disc-index", parts + R"("0.1 mm"})"), "floor_above_limit"));
  const Json wide = computed("disc-index", parts + R"("0.2 mm"})");
  EXPECT_FALSE(hasNote(wide, "floor_above_limit"));
  EXPECT_TRUE(hasNote(wide, "no_uncertainty"));
}

std::string discText(const std::string& side, const std::string& minimum,
                     const std::string& more = "") {
  return R"({"side": ")" + side + R"(", "minimum": ")" + minimum +
         R"(", "minimum_uncertainty": "0.003 mm", "condition": "none")" + more + "}";
}

std::string pairText(const std::string& left, const std::string& right,
                     const std::string& mounting = "outside_hub") {
  return R"({"mounting": ")" + mounting + R"(", "discard": "12 mm", "machine_to": "12.4 mm",
             "discs": [)" +
         left + ", " + right + "]}";
}

TEST(ComputeDiscDecision, AnUndecidedMinimumIsNeverKept) {
  const Json answer = computed("disc-decision",
                               pairText(discText("left", "12.002 mm"), discText("right", "13 mm")));
  EXPECT_EQ(answer.at("result").at("decision"), "not_decided");
  EXPECT_EQ(answer.at("result").at("reasons")[0].at("reason"), "minimum_not_proved");
  EXPECT_EQ(answer.at("result").at("reasons")[0].at("side"), "left");
}

TEST(ComputeDiscDecision, WhatLiesBehindTheHubAsksForMore) {
  const std::string worn = discText("left", "11.5 mm");
  const std::string other = discText("right", "13 mm");
  EXPECT_TRUE(
      hasNote(computed("disc-decision", pairText(worn, other, "behind_hub")), "hub_comes_off"));
  EXPECT_FALSE(hasNote(computed("disc-decision", pairText(worn, other)), "hub_comes_off"));
  const std::string good = discText("left", "13 mm");
  EXPECT_FALSE(
      hasNote(computed("disc-decision", pairText(good, other, "behind_hub")), "hub_comes_off"));
}

TEST(ComputeDiscDecision, BetweenTheLimitsItIsKeptAndNotMachined) {
  const Json answer =
      computed("disc-decision", pairText(discText("right", "12.2 mm"), discText("left", "13 mm")));
  EXPECT_EQ(answer.at("result").at("decision"), "keep");
  EXPECT_TRUE(hasNote(answer, "not_machinable_later"));
  EXPECT_TRUE(hasNote(answer, "variation_not_judged"));
  EXPECT_TRUE(hasNote(answer, "runout_not_judged"));
}

TEST(ComputeDiscDecision, AFigureWithoutItsUncertaintyIsNoProof) {
  const auto field = [](const std::string& more) {
    return refused("disc-decision",
                   pairText(discText("left", "13 mm", more), discText("right", "13 mm")))
        .at("field")
        .get<std::string>();
  };
  EXPECT_EQ(field(R"(, "variation": "0.01 mm")"), "/discs/0/variation_uncertainty");
  EXPECT_EQ(field(R"(, "runout": "0.01 mm")"), "/discs/0/runout_uncertainty");
  EXPECT_EQ(field(R"(, "residual": "0.01 mm")"), "/discs/0/residual_uncertainty");
}

TEST(ComputeDiscDecision, ItTakesBothSides) {
  const std::string left = discText("left", "13 mm");
  EXPECT_EQ(refused("disc-decision", pairText(left, left)).at("field"), "/discs");
  EXPECT_EQ(refused("disc-decision",
                    R"({"mounting": "outside_hub", "discard": "12 mm", "discs": [)" + left + "]}")
                .at("field"),
            "/discs");
}

TEST(ComputeDiscWear, ABareOdometerIsInKilometres) {
  const Json answer = computed("disc-wear", R"({"discard": "11 mm", "visits": [
      {"odometer": 10000, "minimum": "12.0 mm", "uncertainty": "0.005 mm"},
      {"odometer": "40000 km", "minimum": "11.7 mm", "uncertainty": "0.005 mm"}]})");
  EXPECT_NEAR(amount(answer.at("result").at("distance_to_discard"), "km"), 70000, 1e-3);
  EXPECT_TRUE(hasNote(answer, "far_ahead"));
}

TEST(ComputeDiscWear, OneVisitOrAThickerDiscTellsNothing) {
  const Json one = refused("disc-wear", R"({"discard": "11 mm", "visits": [
      {"odometer": "10000 km", "minimum": "12.0 mm", "uncertainty": "0.005 mm"}]})");
  EXPECT_EQ(one.at("code"), "degenerate");
  EXPECT_EQ(one.at("field"), "/visits");
  const Json thicker = refused("disc-wear", R"({"discard": "11 mm", "visits": [
      {"odometer": "10000 km", "minimum": "11.6 mm", "uncertainty": "0.005 mm"},
      {"odometer": "40000 km", "minimum": "11.7 mm", "uncertainty": "0.005 mm"}]})");
  EXPECT_EQ(thicker.at("code"), "degenerate");
}

TEST(ComputeBrakeTorqueVariation, SpeedAndCircumferenceBelongTogether) {
  const std::string brake = R"({"thickness_variation": "0.01 mm", "stiffness": "20 kN/mm",
                                "effective_radius": "120 mm")";
  EXPECT_FALSE(computed("brake-torque-variation", brake + "}").at("result").contains("frequency"));
  EXPECT_EQ(refused("brake-torque-variation", brake + R"(, "speed": "60 km/h"})").at("field"),
            "/rolling_circumference");
  EXPECT_EQ(
      refused("brake-torque-variation", brake + R"(, "rolling_circumference": "2 m"})").at("field"),
      "/speed");
}

}  // namespace
}  // namespace sw::test
