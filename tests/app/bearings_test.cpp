// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/answer.h"
#include "support/program_run.h"

// What the calculations about bearings say beside their figures; figures themselves are tested in
// tests/core/mechanics/bearings.

namespace sw::test {
namespace {

using model::Json;

const std::string kFloat = R"("readings": ["0.05 mm", "0.052 mm", "0.051 mm"],
                              "instrument": {"graduation": "0.001 mm"})";

TEST(ComputeWheelBearing, TheKindIsNeverGuessed) {
  EXPECT_EQ(refused("wheel-bearing", "{" + kFloat + "}").at("field"), "/kind");
}

TEST(ComputeWheelBearing, EachKindTakesItsOwnFieldsOnly) {
  EXPECT_EQ(refused("wheel-bearing", R"({"kind": "end_float", "radius": "60 mm", )" + kFloat + "}")
                .at("field"),
            "/radius");
  EXPECT_EQ(refused("wheel-bearing", R"({"kind": "unit_without_setting",
                "limit": {"min": "0.01 mm"}, )" +
                                         kFloat + "}")
                .at("field"),
            "/limit/min");
  // A play is no pull, and a torque limits no play.
  EXPECT_EQ(
      refused("wheel-bearing", R"({"kind": "preload_pull", "radius": "60 mm", )" + kFloat + "}")
          .at("code"),
      "wrong_kind");
  EXPECT_EQ(refused("wheel-bearing",
                    R"({"kind": "end_float", "limit": {"max": "2 N m"}, )" + kFloat + "}")
                .at("code"),
            "wrong_kind");
}

TEST(ComputeWheelBearing, APlausibleFloatIsNoVerdict) {
  const Json answer = computed("wheel-bearing", R"({"kind": "end_float", )" + kFloat + "}");
  EXPECT_EQ(answer.at("result").at("play").at("verdict"), "no_limit");
  EXPECT_EQ(answer.at("result").at("plausibility"), "within");
  EXPECT_TRUE(hasNote(answer, "plausible_range"));
}

TEST(ComputeWheelBearing, AUnitIsNotAdjusted) {
  const Json answer =
      computed("wheel-bearing", R"({"kind": "unit_without_setting", )" + kFloat + "}");
  EXPECT_TRUE(hasNote(answer, "nothing_to_adjust"));
  EXPECT_TRUE(hasNote(answer, "no_figure"));
  EXPECT_FALSE(answer.at("result").contains("plausibility"));
}

TEST(ComputeWheelBearing, APullGivesATorqueAndNoPreload) {
  const std::string pull = R"({"kind": "preload_pull", "readings": ["20 N", "20 N", "20 N"],
      "instrument": {"graduation": "0.5 N"}, "limit": {"min": "1 N m", "max": "2 N m"})";
  const Json answer = computed("wheel-bearing", pull + R"(, "radius": "70 mm"})");
  EXPECT_NEAR(amount(answer.at("result").at("torque").at("value"), "N m"), 1.4, 1e-9);
  EXPECT_EQ(answer.at("result").at("torque").at("verdict"), "within");
  EXPECT_TRUE(hasNote(answer, "no_preload"));
  EXPECT_TRUE(hasNote(answer, "instrument_error_unknown"));
  EXPECT_EQ(refused("wheel-bearing", pull + "}").at("field"), "/radius");
}

TEST(ComputeRockTest, ItNamesThePartAndTheFloor) {
  const Json answer = computed("rock-test", R"({"diameter": "400 mm",
      "instrument": {"graduation": "0.05 mm"},
      "brake_on": ["2.1 mm", "2.0 mm", "2.05 mm"],
      "brake_off": ["2.1 mm", "2.05 mm", "2.1 mm"]})");
  EXPECT_EQ(answer.at("result").at("swivel").at("state"), "found");
  EXPECT_EQ(answer.at("result").at("bearing").at("state"), "none_noticeable");
  EXPECT_TRUE(hasNote(answer, "swivel_play"));
  EXPECT_FALSE(hasNote(answer, "bearing_play"));
  EXPECT_TRUE(hasNote(answer, "floor_only"));
  EXPECT_NEAR(amount(answer.at("result").at("swivel").at("floor"), "mm"), 8, 1e-9);
}

TEST(ComputeRockTest, OneReadingAndSwappedReadingsAreSaid) {
  const std::string head = R"({"diameter": "400 mm", "instrument": {"graduation": "0.05 mm"}, )";
  EXPECT_TRUE(hasNote(computed("rock-test", head + R"("brake_on": ["1 mm"],
                                                      "brake_off": ["2 mm"]})"),
                      "not_repeated"));
  EXPECT_TRUE(hasNote(computed("rock-test", head + R"("brake_on": ["3 mm", "3.1 mm", "3 mm"],
                                                      "brake_off": ["1 mm", "1.1 mm", "1 mm"]})"),
                      "reversed"));
  EXPECT_EQ(refused("rock-test", head + R"("brake_on": [], "brake_off": ["1 mm"]})").at("field"),
            "/brake_on");
}

TEST(ComputePlayLimits, OnlyWhatCanBeTold) {
  const Json bare = computed("play-limits", "{}");
  ASSERT_EQ(bare.at("result").at("limits").size(), 1U);
  EXPECT_EQ(bare.at("result").at("limits")[0].at("check"), "wheel_bearing");
  EXPECT_TRUE(hasNote(bare, "floor_only"));
  EXPECT_EQ(refused("play-limits", R"({"rim_diameter": "15 in"})").at("field"), "/gross_mass");
  EXPECT_EQ(refused("play-limits", R"({"gross_mass": "2 t"})").at("field"), "/rim_diameter");
  EXPECT_EQ(refused("play-limits", R"({"steering_gear": "box"})").at("field"),
            "/steering_wheel_diameter");
}

TEST(ComputeBearingFriction, NoPreloadFollows) {
  const Json answer = computed("bearing-friction", R"({"load": "1 kN", "bore": "40 mm"})");
  EXPECT_TRUE(hasNote(answer, "no_preload"));
}

TEST(ComputeBearingStiffness, LoadOrDisplacement) {
  const std::string bearing =
      R"({"rollers": 19, "contact_angle": "14 deg", "roller_length": "13 mm")";
  const Json there = computed("bearing-stiffness", bearing + R"(, "load": "900 N"})");
  const Json back =
      computed("bearing-stiffness", bearing + R"(, "displacement": )" +
                                        there.at("result").at("displacement").dump() + "}");
  EXPECT_NEAR(amount(back.at("result").at("load"), "N"), 900, 1e-6);
  EXPECT_EQ(refused("bearing-stiffness", bearing + "}").at("field"), "/load");
  EXPECT_EQ(
      refused("bearing-stiffness", bearing + R"(, "load": "900 N", "displacement": "0.01 mm"})")
          .at("field"),
      "/displacement");
}

TEST(ComputeBrakesAndBearings, NothingIsCalledSafe) {
  for (const char* name : {"disc-thickness", "disc-runout", "runout-at-track", "disc-index",
                           "disc-decision", "disc-wear", "brake-torque-variation", "wheel-bearing",
                           "rock-test", "play-limits", "bearing-friction", "bearing-stiffness"}) {
    const ProgramRun run = runProgram({"compute", name, "--describe"});
    EXPECT_EQ(run.exitCode, 0) << name;
    EXPECT_EQ(run.out.find("safe"), std::string::npos) << name;
    EXPECT_EQ(run.out.find("cleared"), std::string::npos) << name;
  }
}

}  // namespace
}  // namespace sw::test
