// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

#include "support/answer.h"
#include "support/program_run.h"

// What the calculations of steering geometry say beyond their mechanics: notes, verdicts, refusals
// by field.

namespace sw::test {
namespace {

using model::Json;

TEST(ComputeToe, BetweenMillimetresAndDegrees) {
  const auto angle = [](const std::string& rest) {
    return amount(resultOf("toe", "{" + rest + "}").at("total_angle"), "deg");
  };
  // Plane geometry: 2 mm at two diameters.
  EXPECT_NEAR(angle(R"("total": "2 mm", "diameter": "700 mm")"), 0.1637, 5e-4);
  EXPECT_NEAR(angle(R"("total": "2 mm", "diameter": "16 in")"), 0.2820, 5e-4);
  const Json back = resultOf("toe", R"({"total_angle": 0.3333333333, "diameter": 381})");
  EXPECT_NEAR(amount(back.at("total"), "mm"), 2.217, 0.005);
}

TEST(ComputeToe, EachWheelWithTheSignsOfTheStandard) {
  const Json got =
      resultOf("toe", R"({"left": "0.15 deg", "right": "0.05 deg", "diameter": "700 mm"})");
  EXPECT_NEAR(amount(got.at("total"), "mm"), 2.443, 0.005);
  // ISO 8855:2011: toe-in of the left wheel is a negative steer angle.
  EXPECT_EQ(got.at("left_steer_angle"), "-0.15 deg");
  EXPECT_EQ(got.at("right_steer_angle"), "0.05 deg");
}

TEST(ComputeToe, ATotalIsADifferenceOfTwoReadings) {
  // JCGM 100: sqrt(2) x 1 mm / sqrt(12) = 0.408248 mm, over 700 mm; the same as from front and
  // rear.
  const std::string rest = R"("diameter": "700 mm", "graduation": "1 mm"})";
  const Json total = resultOf("toe", R"({"total": "2 mm", )" + rest);
  const Json read =
      resultOf("toe", R"({"readings": [{"front": "1400 mm", "rear": "1402 mm"}], )" + rest);
  EXPECT_NEAR(amount(total.at("length_uncertainty"), "mm"), 0.408248, 1e-6);
  EXPECT_EQ(total.at("standard_uncertainty"), read.at("standard_uncertainty"));
}

TEST(ComputeToe, ACoarseGaugeMayStillProveOutside) {
  // JCGM 106: 30 mm lies 14 standard uncertainties beyond a band that is 1 of them wide.
  const auto verdict = [](const std::string& total) {
    return resultOf("toe", R"({"diameter": "700 mm", "graduation": "5 mm", "total": ")" + total +
                               R"(", "limit_length": {"min": "1 mm", "max": "3 mm"}})")
        .at("verdict");
  };
  EXPECT_EQ(verdict("30 mm"), "outside");
  EXPECT_EQ(verdict("2 mm"), "instrument_too_coarse");
}

TEST(ComputeToe, OneReadingIsProvisional) {
  const std::string rest = R"("diameter": "650 mm", "graduation": "0.5 mm",
                              "limit_length": {"min": "0 mm", "max": "4 mm"}})";
  const Json one =
      computed("toe", R"({"readings": [{"front": "1400 mm", "rear": "1402 mm"}], )" + rest);
  EXPECT_EQ(one.at("result").at("verdict"), "provisional");
  EXPECT_EQ(one.at("result").at("decision_so_far"), "within");
  EXPECT_TRUE(hasNote(one, "one_reading"));
  const Json two = computed("toe", R"({"readings": [{"front": "1400 mm", "rear": "1402 mm"},
                                                    {"front": "1400 mm", "rear": "1402 mm"}], )" +
                                       rest);
  EXPECT_EQ(two.at("result").at("verdict"), "within");
  EXPECT_FALSE(hasNote(two, "one_reading"));
}

TEST(ComputeToe, VerdictsAgainstALimitAtItsOwnDiameter) {
  const auto verdict = [](const std::string& rest) {
    return resultOf("toe", R"({"total": "3 mm", "diameter": "700 mm")" + rest + "}")
        .at("verdict")
        .get<std::string>();
  };
  EXPECT_EQ(verdict(""), "no_limit");
  EXPECT_EQ(verdict(R"(, "limit_length": {"max": "2 mm"})"), "outside");
  // The same angle is 1.74 mm at 406.4 mm.
  EXPECT_EQ(verdict(R"(, "limit_length": {"max": "2 mm"}, "limit_diameter": "16 in")"), "within");
  EXPECT_EQ(verdict(R"(, "graduation": "1 mm", "limit_length": {"max": "3.1 mm"})"), "undecided");
  EXPECT_EQ(verdict(R"(, "graduation": "5 mm", "limit_length": {"min": "2 mm", "max": "4 mm"})"),
            "instrument_too_coarse");
}

TEST(ComputeToe, RefusalsNameTheirField) {
  EXPECT_EQ(refused("toe", R"({"diameter": "700 mm"})").at("field"), "/readings");
  EXPECT_EQ(refused("toe", R"({"diameter": "700 mm", "total": 2, "total_angle": 1})").at("code"),
            "out_of_range");
  EXPECT_EQ(refused("toe", R"({"diameter": "700 mm", "left": 1})").at("field"), "/right");
  EXPECT_EQ(refused("toe", R"({"diameter": "700 mm", "total": 2,
                               "limit": {"min": "1 deg", "max": "0 deg"}})")
                .at("field"),
            "/limit/min");
  EXPECT_EQ(refused("toe", R"({"diameter": "700 mm", "total": 2, "limit": {}})").at("field"),
            "/limit/min");
  EXPECT_EQ(refused("toe", R"({"diameter": "700 mm", "total": 600})").at("field"), "/total");
}

TEST(ComputeTrackRod, OneTurnAndItsDirection) {
  const std::string rod = R"("pitch": "1.5 mm", "arm": "140 mm", "thread": "one_end", )";
  const Json got =
      resultOf("track-rod-turns", "{" + rod + R"("rod": "behind_axle", "present": "0 mm",
                                          "wanted": "-7.5 mm", "diameter": "700 mm"})");
  EXPECT_NEAR(amount(got.at("toe_per_turn"), "deg"), 0.614, 0.005);
  EXPECT_NEAR(amount(got.at("length_per_turn"), "mm"), 7.50, 0.02);
  EXPECT_NEAR(got.at("turns").get<double>(), 1, 0.002);
  EXPECT_EQ(got.at("change"), "shorten");
  const Json ahead =
      resultOf("track-rod-turns", "{" + rod + R"("rod": "ahead_of_axle", "present_angle": 0,
                                                "wanted_angle": "-0.614 deg"})");
  EXPECT_EQ(ahead.at("change"), "lengthen");
  EXPECT_FALSE(ahead.contains("length_per_turn"));
  EXPECT_EQ(refused("track-rod-turns", "{" + rod + R"("rod": "behind_axle", "wanted": 1,
                                                     "present": 25, "diameter": 60})")
                .at("field"),
            "/present");
}

const std::string kSwing =
    R"("turn": "20 deg", "camber_outward": "2.9574 deg", "camber_inward": "0.8957 deg")";

TEST(ComputeCaster, SmallAngleAndExact) {
  // A wheel of caster 3, inclination 7 and camber 1.5, turned in space.
  const Json small = computed("caster", "{" + kSwing + "}");
  EXPECT_NEAR(amount(small.at("result").at("caster"), "deg"), 3.014, 0.002);
  EXPECT_TRUE(hasNote(small, "small_angles"));
  const Json exact = computed("caster", "{" + kSwing + R"(, "kingpin_inclination": "7 deg",
      "camber_ahead": "1.5 deg", "options": {"method": "exact"}})");
  EXPECT_NEAR(amount(exact.at("result").at("caster"), "deg"), 3.000, 0.001);
  EXPECT_FALSE(hasNote(exact, "small_angles"));
  const Json both = resultOf("caster", "{" + kSwing + R"(, "tilt_outward": "2.2329 deg",
      "tilt_inward": "-2.5939 deg"})");
  EXPECT_NEAR(amount(both.at("kingpin_inclination"), "deg"), 7.056, 0.003);
}

TEST(ComputeCaster, TheLimitIsForALevelFrame) {
  // Specified 1.5 at level frame: with the front 0.75 down, 0.75 is read.
  const std::string reading = R"("turn": "20 deg", "camber_outward": "0.51303 deg",
                                 "camber_inward": "0 deg", "limit": {"min": "1.4 deg"})";
  const Json level = resultOf("caster", "{" + reading + "}");
  EXPECT_NEAR(amount(level.at("caster"), "deg"), 0.75, 0.001);
  EXPECT_EQ(level.at("verdict"), "outside");
  const Json raked = resultOf("caster", "{" + reading + R"(, "frame_angle": "0.75 deg"})");
  EXPECT_NEAR(amount(raked.at("caster_at_level_frame"), "deg"), 1.5, 0.001);
  EXPECT_EQ(raked.at("verdict"), "within");
}

TEST(ComputeCaster, RefusalsNameTheirField) {
  EXPECT_EQ(refused("caster", "{" + kSwing + R"(, "options": {"method": "exact"}})").at("field"),
            "/kingpin_inclination");
  EXPECT_EQ(refused("caster", "{" + kSwing + R"(, "tilt_outward": 2})").at("field"),
            "/tilt_inward");
  EXPECT_EQ(
      refused("caster", "{" + kSwing + R"(, "tilt_outward": 50, "tilt_inward": 1})").at("field"),
      "/tilt_outward");
  EXPECT_EQ(refused("caster", R"({"turn": "2 deg", "camber_outward": 1, "camber_inward": 0})")
                .at("field"),
            "/turn");
}

TEST(ComputeTrail, TrailAndScrub) {
  const Json got = computed("trail", R"({"loaded_radius": "360 mm", "caster": "3 deg",
      "axis_to_wheel": "60 mm", "kingpin_inclination": "7 deg", "camber": "1.5 deg",
      "spacer": "30 mm"})");
  EXPECT_NEAR(amount(got.at("result").at("trail"), "mm"), 18.87, 0.05);
  EXPECT_NEAR(amount(got.at("result").at("scrub_without_spacer"), "mm"), 6.37, 0.05);
  EXPECT_NEAR(amount(got.at("result").at("scrub"), "mm"), 36.37, 0.05);
  EXPECT_TRUE(hasNote(got, "spacer_lengthens_levers"));
  EXPECT_EQ(refused("trail", R"({"loaded_radius": "360 mm"})").at("field"), "/caster");
  EXPECT_EQ(refused("trail", R"({"loaded_radius": "360 mm", "axis_to_wheel": 60})").at("field"),
            "/kingpin_inclination");
}

TEST(ComputeLift, ArmsLinksAndWedges) {
  const Json leading = computed("lift", R"({"arms": "leading", "lift": "50 mm",
      "arm_length": "800 mm", "pivot_height": "100 mm", "caster_before": "3 deg"})");
  EXPECT_NEAR(amount(leading.at("result").at("caster_change"), "deg"), -3.63, 0.01);
  EXPECT_NEAR(amount(leading.at("result").at("caster_after"), "deg"), -0.63, 0.01);
  // The nose of a rear-facing pinion goes up where the axle's top goes forward.
  EXPECT_LT(amount(leading.at("result").at("pinion_nose_down"), "deg"), 0);
  EXPECT_TRUE(hasNote(leading, "pinion_follows"));
  const Json springs = computed("lift", R"({"arms": "parallel", "lift": "50 mm"})");
  EXPECT_EQ(springs.at("result").at("caster_change"), "0 deg");
  EXPECT_TRUE(hasNote(springs, "parallel_about_none"));
  const Json wedge = resultOf("lift", R"({"arms": "parallel", "lift": 0, "wedge_length": "60 mm",
                                          "wedge_rise": "3 mm"})");
  EXPECT_NEAR(amount(wedge.at("wedge_angle"), "deg"), 2.86, 0.01);
  EXPECT_EQ(refused("lift", R"({"arms": "leading", "lift": "50 mm"})").at("field"), "/arm_length");
}

TEST(ComputeAckermann, EitherAngleGivesTheOther) {
  const std::string axle = R"({"kingpin_spacing": "1.30 m", "wheelbase": "2.54 m", )";
  const Json from20 = resultOf("ackermann", axle + R"("outer": "20 deg"})");
  EXPECT_NEAR(amount(from20.at("inner"), "deg"), 24.10, 0.02);
  const Json back = resultOf(
      "ackermann", axle + R"("inner": ")" + from20.at("inner").get<std::string>() + R"("})");
  EXPECT_NEAR(amount(back.at("outer"), "deg"), 20, 1e-9);
  EXPECT_EQ(refused("ackermann", axle + R"("measured_inner": 24, "inner": 24})").at("field"),
            "/outer");
}

}  // namespace
}  // namespace sw::test
