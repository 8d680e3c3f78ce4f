// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

#include "compute/calculation.h"
#include "support/answer.h"
#include "support/program_run.h"

// What the calculations of wheels say beyond their mechanics: notes, verdicts, refusals by field.

namespace sw::test {
namespace {

using model::Json;

TEST(ComputeTyre, InchWidthAsksForAMeasuredDiameter) {
  const Json unknown = computed("tyre", R"({"designation": "7.50R16"})");
  EXPECT_EQ(unknown.at("result").at("diameter_from"), "not_computable");
  EXPECT_FALSE(unknown.at("result").contains("diameter"));
  EXPECT_TRUE(hasNote(unknown, "not_computable"));
  const Json measured = computed("tyre", R"({"designation": "7.50R16", "diameter": "801 mm"})");
  EXPECT_EQ(measured.at("result").at("diameter_from"), "measured");
  EXPECT_EQ(measured.at("result").at("diameter"), "801 mm");
  EXPECT_FALSE(hasNote(measured, "not_computable"));
}

TEST(ComputeTyre, LoadIndexAndSpeedSymbol) {
  // Public trade tables: 96 is 710 kg, S 180 km/h; 120 is 1400 kg (from memory), Q 160 km/h.
  const Json radial = resultOf("tyre", R"({"designation": "195/80 R15 96S"})");
  EXPECT_EQ(radial.at("load_of_index"), "710 kg");
  EXPECT_EQ(radial.at("top_speed"), "180 km/h");
  const Json truck = computed("tyre", R"({"designation": "LT235/85R16 120/116Q"})");
  EXPECT_EQ(truck.at("result").at("load_of_index"), "1400 kg");
  EXPECT_EQ(truck.at("result").at("load_index_dual"), 116);
  EXPECT_EQ(truck.at("result").at("top_speed"), "160 km/h");
  EXPECT_TRUE(hasNote(truck, "first_index_counts"));
}

TEST(ComputeTyre, AnAssumedAspectIsShownAndASetting) {
  const Json usual = computed("tyre", R"({"designation": "205 R16"})");
  EXPECT_EQ(usual.at("method").at("options").at("assumed_aspect"), 82);
  EXPECT_TRUE(hasNote(usual, "assumed_aspect"));
  const Json other =
      computed("tyre", R"({"designation": "205 R16", "options": {"assumed_aspect": 80}})");
  EXPECT_NEAR(amount(other.at("result").at("diameter"), "mm"), 734.4, 1e-9);
  EXPECT_EQ(refused("tyre", R"({"designation": "205 R16", "options": {"assumed_aspect": 8}})")
                .at("field"),
            "/options/assumed_aspect");
}

TEST(ComputeTyre, PressureAndLoadFromTheIndex) {
  // 710 kg at 2.5 bar carry 593.9 kg at 2.0 bar: test-pressure clause of UN R117 (from memory).
  const Json got = resultOf("tyre", R"({"designation": "195/80 R15 96S", "pressure": "2.0 bar",
                                        "reference_pressure": "2.5 bar"})");
  EXPECT_NEAR(amount(got.at("load_at_pressure"), "kg"), 593.9, 0.5);
  EXPECT_EQ(refused("tyre", R"({"designation": "195/80 R15", "pressure": "2.0 bar",
                                "reference_pressure": "2.5 bar"})")
                .at("field"),
            "/reference_load");
  EXPECT_EQ(
      refused("tyre", R"({"designation": "195/80 R15 96S", "pressure": "2 bar"})").at("field"),
      "/reference_pressure");
}

TEST(ComputeTyre, WhatIsNotASizeIsRefused) {
  EXPECT_EQ(refused("tyre", R"({"designation": "about so big"})").at("field"), "/designation");
}

TEST(ComputeWheelFrequency, OneSourceOfTheCircumference) {
  const std::string speeds = R"("speeds": ["80 km/h"]})";
  EXPECT_EQ(refused("wheel-frequency", "{" + speeds).at("code"), "missing_field");
  EXPECT_EQ(refused("wheel-frequency", R"({"tyre_on": "205 R16", "diameter": "740 mm", )" + speeds)
                .at("code"),
            "out_of_range");
  EXPECT_EQ(refused("wheel-frequency", R"({"tyre_on": "7.50R16", )" + speeds).at("code"),
            "degenerate");
  EXPECT_EQ(refused("wheel-frequency", R"({"tyre_on": "205 R16"})").at("field"), "/speeds");
}

TEST(ComputeWheelFrequency, EachSourceGivesItsCircumference) {
  const auto circumference = [](const std::string& source) {
    return amount(resultOf("wheel-frequency", "{" + source + R"(, "speeds": ["80 km/h"]})")
                      .at("circumference"),
                  "mm");
  };
  EXPECT_NEAR(circumference(R"("tyre_on": "205 R16")"), 2264.9, 1);  // 3.05 D, ETRTO as quoted
  EXPECT_NEAR(circumference(R"("tyre_on": "205 R16", "tread_worn": "6 mm")"), 2264.9 - 36.6, 1);
  EXPECT_NEAR(circumference(R"("diameter": "700 mm")"), 2135, 1e-9);
  EXPECT_NEAR(circumference(R"("roll_out": "10.8 m", "turns": 5)"), 2160, 1e-9);
  EXPECT_NEAR(circumference(R"("static_radius": "350 mm")"), 2199.1149, 1e-4);  // 2 pi r
  EXPECT_NEAR(circumference(R"("diameter": "700 mm", "options": {"convention": "geometric"})"),
              2199.1149, 1e-4);
}

TEST(ComputeWheelFrequency, TheDialGivesTheFrequencyWhateverTyreIsOn) {
  const std::string rest =
      R"("built_with_tyre": "205/80 R16", "speed_from": "dial", "speeds": ["80 km/h"]})";
  const Json big = resultOf("wheel-frequency", R"({"tyre_on": "265/75 R16", )" + rest);
  const Json same = resultOf("wheel-frequency", R"({"tyre_on": "205/80 R16", )" + rest);
  const auto first = [](const Json& result) {
    return amount(result.at("at_speeds").at(0).at("orders").at(0).at("frequency"), "Hz");
  };
  EXPECT_NEAR(first(big), 9.92, 0.006);
  EXPECT_NEAR(first(big), first(same), 1e-9);
  EXPECT_NEAR(amount(big.at("at_speeds").at(0).at("true_speed"), "km/h"), 80 * 803.9 / 734.4, 0.01);
  EXPECT_NEAR(amount(same.at("at_speeds").at(0).at("true_speed"), "km/h"), 80, 1e-9);
}

TEST(ComputeWheelFrequency, SpeedForAFrequencyIsTheInverse) {
  const Json there = resultOf("wheel-frequency", R"({"tyre_on": "235/85 R16",
      "speeds": ["73 km/h"], "final_drive": 4.1})");
  const Json row = there.at("at_speeds").at(0);
  const Json input = {{"tyre_on", "235/85 R16"},
                      {"frequencies", {row.at("orders").at(1).at("frequency")}},
                      {"final_drive", 4.1}};
  const Json back = resultOf("wheel-frequency", input.dump()).at("at_frequencies").at(0);
  EXPECT_NEAR(amount(back.at("orders").at(1).at("speed"), "km/h"), 73, 1e-9);
  EXPECT_NEAR(amount(row.at("prop_shaft").at("frequency"), "Hz"),
              4.1 * amount(row.at("orders").at(0).at("frequency"), "Hz"), 1e-9);
}

TEST(ComputeWheelFrequency, SpeedForAFrequencyIsTheInverseWithGrowthToo) {
  for (const std::string source : {R"("tyre_on": "235/85 R16")", R"("roll_out": "2.2 m")"}) {
    const std::string rest = R"(, "final_drive": 4.1, "options": {"speed_growth": "linear"}})";
    const Json there = resultOf("wheel-frequency", "{" + source + R"(, "speeds": [140])" + rest);
    const Json row = there.at("at_speeds").at(0);
    const auto speedFor = [&](const Json& frequency) {
      return resultOf("wheel-frequency",
                      "{" + source + R"(, "frequencies": [)" + frequency.dump() + "]" + rest)
          .at("at_frequencies")
          .at(0);
    };
    const Json order = speedFor(row.at("orders").at(1).at("frequency")).at("orders").at(1);
    EXPECT_NEAR(amount(order.at("speed"), "km/h"), 140, 1e-9);
    const Json shaft = speedFor(row.at("prop_shaft").at("frequency")).at("prop_shaft");
    EXPECT_NEAR(amount(shaft.at("speed"), "km/h"), 140, 1e-9);
  }
}

TEST(ComputeWheelFrequency, ATyreAgreesWithItselfUnderAnyConvention) {
  for (const std::string convention : {"geometric", "dynamic_radial", "dynamic_diagonal"}) {
    const Json got = resultOf("wheel-frequency", R"({"tyre_on": "205 R16",
        "built_with_tyre": "205 R16", "speeds": ["50 km/h"], "options": {"convention": ")" +
                                                     convention + R"("}})");
    EXPECT_EQ(got.at("true_over_dial"), 1) << convention;
  }
}

TEST(ComputeWheelFrequency, GrowthWithSpeedIsAnOption) {
  const Json got = resultOf("wheel-frequency", R"({"tyre_on": "195/80 R15",
      "speeds": ["110 km/h"], "options": {"speed_growth": "linear"}})");
  // WdK as quoted: 2124.2 mm at 110 km/h.
  EXPECT_NEAR(amount(got.at("at_speeds").at(0).at("circumference"), "mm"), 2124.2, 0.5);
  EXPECT_TRUE(
      hasNote(computed("wheel-frequency", R"({"roll_out": "2.2 m", "speeds": ["60 km/h"]})"),
              "rolled_by_hand"));
}

const std::string kWheel =
    R"("weight_radius": "203.2 mm", "plane_spacing": "150 mm", "speed": "80 km/h",
       "tyre_on": "205 R16")";

TEST(ComputeUnbalance, ACoupleLeadsWhereABubbleSeesNothing) {
  const Json pair = computed("unbalance", R"({"weights": [
      {"plane": "inner", "amount": "20 g", "angle": "0 deg"},
      {"plane": "outer", "amount": "20 g", "angle": "180 deg"}], "lever": "60 mm", )" +
                                              kWheel + "}");
  EXPECT_NEAR(amount(pair.at("result").at("couple"), "N m"), 2.317, 0.01);  // plane dynamics
  EXPECT_NEAR(amount(pair.at("result").at("moment_of_force"), "N m"), 0, 1e-9);
  EXPECT_TRUE(hasNote(pair, "couple_leads"));
}

TEST(ComputeUnbalance, AVerdictForEachPlane) {
  const auto verdict = [](const std::string& grams, const std::string& rest) {
    return resultOf("unbalance", R"({"weights": [{"plane": "inner", "angle": 0, "amount": )" +
                                     grams + "}], " + rest + kWheel + "}")
        .at("inner")
        .at("verdict")
        .get<std::string>();
  };
  EXPECT_EQ(verdict("12", ""), "no_limit");
  EXPECT_EQ(verdict("12", R"("limit_each_plane": "10 g", )"), "outside");
  EXPECT_EQ(verdict("12", R"("limit_each_plane": "10 g", "weight_uncertainty": "2 g", )"),
            "undecided");
  EXPECT_EQ(verdict("5", R"("limit_each_plane": "10 g", "weight_uncertainty": "2 g", )"), "within");
}

TEST(ComputeUnbalance, GradeIsInformationOnly) {
  const std::string weights =
      R"({"weights": [{"plane": "inner", "amount": 10, "angle": 0}], "wheel_mass": "28 kg", )";
  const Json got = computed("unbalance", weights + kWheel + "}");
  EXPECT_TRUE(hasNote(got, "grade_is_information"));
  EXPECT_EQ(got.at("result").at("grade").at("asked"), 40);
  EXPECT_EQ(got.at("result").at("inner").at("verdict"), "no_limit");
}

TEST(ComputeBalance, TheCorrectionIsOppositeTheUnbalance) {
  // Rao's rotor (from memory of the data): the correction stands at 325.555 and 68.256 degrees.
  const std::string runs = R"({
      "initial": {"inner": {"amount": 8.5, "angle": 60}, "outer": {"amount": 6.5, "angle": 205}},
      "trial_inner": {"weight": {"amount": 10, "angle": 270},
                      "inner": {"amount": 6.0, "angle": 125},
                      "outer": {"amount": 4.5, "angle": 230}},
      "trial_outer": {"weight": {"amount": 12, "angle": 180},
                      "inner": {"amount": 6.0, "angle": 35},
                      "outer": {"amount": 10.5, "angle": 160}})";
  const Json got = resultOf("balance-two-plane", runs + "}");
  EXPECT_NEAR(amount(got.at("correction").at("inner").at("amount"), "g"), 10.0561, 1e-3);
  EXPECT_NEAR(amount(got.at("correction").at("inner").at("angle"), "deg"), 325.555, 0.01);
  EXPECT_NEAR(amount(got.at("correction").at("outer").at("angle"), "deg"), 68.256, 0.01);
  const auto left = [&](const char* which) {
    return resultOf("balance-two-plane", runs + R"(, "fitted": )" + got.at(which).dump() + "}")
        .at("residual")
        .at("inner")
        .at("amount")
        .get<double>();
  };
  EXPECT_NEAR(left("correction"), 0, 1e-9);
  EXPECT_NEAR(left("unbalance"), 17, 1e-9) << "weights at the heavy spot double it";
}

TEST(ComputeBalance, RefusalsNameTheirField) {
  EXPECT_EQ(
      refused("balance-four-run", R"({"initial": 3, "with_trial": [4, 4], "trial_weight": "20 g"})")
          .at("field"),
      "/with_trial");
  const Json imaginary = refused(
      "balance-four-run", R"({"initial": 3, "with_trial": [2, 3, 2], "trial_weight": "20 g"})");
  EXPECT_EQ(imaginary.at("code"), "degenerate");
  const Json same = refused("balance-one-plane", R"({"initial": {"amount": 3, "angle": 10},
      "trial_weight": {"amount": 20, "angle": 0}, "with_trial": {"amount": 3, "angle": 10}})");
  EXPECT_EQ(same.at("code"), "degenerate");
  EXPECT_EQ(same.at("field"), "/with_trial");
}

/// Every place of a number or quantity in an input, as a pointer into it.
void collectPlaces(const Json& value, const Json::json_pointer& at,
                   std::vector<Json::json_pointer>& places) {
  if (!value.is_structured()) {
    places.push_back(at);
  } else if (value.is_object()) {
    for (const auto& [key, inner] : value.items()) collectPlaces(inner, at / key, places);
  } else {
    for (std::size_t i = 0; i < value.size(); ++i) collectPlaces(value[i], at / i, places);
  }
}

bool hasNoNumber(const std::string& text) {
  for (const char* sign : {"null", "\"inf ", "\"-inf ", "\"nan ", "\"-nan "}) {
    if (text.find(sign) != std::string::npos) return true;
  }
  return false;
}

TEST(ComputeWheelsAndGeometry, ExtremeNumbersAreRefusedOrGiveNumbers) {
  int answered = 0;
  for (const auto& row : compute::calculations()) {
    const bool ours =
        row.subject == compute::Subject::Wheels || row.subject == compute::Subject::Geometry;
    if (!ours) continue;
    const Json example = model::parseJson(row.describe().exampleInput).value();
    std::vector<Json::json_pointer> places;
    collectPlaces(example, Json::json_pointer(), places);
    for (const auto& place : places) {
      for (const double extreme : {0.0, -0.0, -1.0, 1e308, -1e308, 1e160, 1e11, 1e-11, 5e-324}) {
        Json input = example;
        input[place] = extreme;
        const auto answer = compute::evaluate(row, input);
        if (!answer) continue;
        ++answered;
        EXPECT_FALSE(hasNoNumber(answer->dump())) << row.name << " " << place << " " << extreme;
      }
    }
  }
  EXPECT_GT(answered, 200);
}

}  // namespace
}  // namespace sw::test
