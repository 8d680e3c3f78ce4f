// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/answer.h"
#include "support/program_run.h"

// How the calculations of fasteners answer as JSON. Their figures are held against standards in
// tests/core/mechanics/bolts.

namespace sw::test {
namespace {

using model::Json;

/// The field an input is refused for.
std::string fieldOf(const std::string& name, const std::string& input) {
  return refused(name, input).at("field").get<std::string>();
}

TEST(ComputeThread, SaysWhatWasLookedUpAndWhatToConfirm) {
  const Json coarse = computed("thread", R"({"thread": "M12"})");
  EXPECT_EQ(coarse.at("result").at("pitch_from"), "coarse_series");
  EXPECT_TRUE(hasNote(coarse, "pitch_looked_up"));
  EXPECT_TRUE(hasNote(coarse, "look_alike")) << "1/2-13";
  EXPECT_FALSE(coarse.at("result").contains("proof_load"));
  EXPECT_FALSE(coarse.at("result").contains("threads_per_inch"));
  const Json inch = computed("thread", R"({"thread": "1/2-20", "strength_class": "8.8"})");
  EXPECT_EQ(inch.at("result").at("threads_per_inch"), 20);
  EXPECT_TRUE(hasNote(inch, "class_of_other_standard"));
  EXPECT_FALSE(hasNote(inch, "pitch_looked_up"));
}

TEST(ComputeThread, BadInputsNameTheField) {
  for (const char* text : {"", "1/2 BSF", "7/16", "7/16-14 UNF", "M10x9"}) {
    EXPECT_EQ(fieldOf("thread", R"({"thread": ")" + std::string(text) + "\"}"), "/thread");
  }
  EXPECT_EQ(fieldOf("thread", R"({"thread": "M20", "strength_class": "9.8"})"), "/strength_class");
  EXPECT_EQ(fieldOf("thread", R"({"thread": "M20", "strength_class": "11.9"})"), "/strength_class");
}

// VDI 2230-1:2003 fine threads: M10x1.25 8.8 at friction 0.12 is 31.6 kN and 51 N m.
TEST(ComputeClampForce, TableOfFineThreads) {
  const Json result = resultOf("clamp-force", R"({"thread": "M10x1.25", "strength_class": "8.8",
                                                  "friction": {"min": 0.12, "max": 0.12}})");
  EXPECT_NEAR(amount(result.at("greatest_preload").at("max"), "N"), 31600, 158);
  EXPECT_EQ(result.at("greatest_preload").at("min"), result.at("greatest_preload").at("max"));
  EXPECT_NEAR(amount(result.at("greatest_torque"), "N m"), 51, 0.6);
  EXPECT_EQ(result.at("cases").size(), 1U);
}

TEST(ComputeClampForce, TheOlderGenerationIsAnOptionAndSaysSo) {
  const std::string input = R"({"thread": "M10", "strength_class": "8.8",
                                "friction": {"min": 0.14, "max": 0.14})";
  const Json plastic = computed("clamp-force", input + "}");
  const Json elastic = computed("clamp-force", input + R"(, "options": {"torsion": "elastic"}})");
  EXPECT_EQ(plastic.at("method").at("options").at("torsion"), "plastic");
  EXPECT_EQ(elastic.at("method").at("options").at("torsion"), "elastic");
  EXPECT_TRUE(hasNote(elastic, "elastic_torsion"));
  EXPECT_FALSE(hasNote(plastic, "elastic_torsion"));
  // DIN 912 table of mu 0.14: 49 N m.
  EXPECT_NEAR(amount(elastic.at("result").at("greatest_torque"), "N m"), 49, 0.75);
  EXPECT_GT(amount(plastic.at("result").at("greatest_torque"), "N m"), 53);
}

TEST(ComputeClampForce, TorqueAndForceGiveTheNutFactor) {
  // Aircraft practice: 3/8-24, 28.9 lbf ft, 5788 lbf.
  const Json result = resultOf("clamp-force", R"({"thread": "3/8-24", "torque": "28.9 lbf ft",
                                                  "clamp_force": "5788 lbf"})");
  EXPECT_NEAR(result.at("nut_factor").at("min").get<double>(), 0.160, 0.0005);
  EXPECT_TRUE(result.contains("implied_friction"));
  const Json odd = computed("clamp-force", R"({"thread": "3/8-24", "torque": "1 N m",
                                               "clamp_force": "50 kN"})");
  EXPECT_TRUE(hasNote(odd, "force_too_high_for_torque"));
}

TEST(ComputeClampForce, ForceGoesOneWayAndBack) {
  const Json forward = resultOf("clamp-force", R"({"thread": "M8", "torque": "20 N m",
                                                   "friction": {"min": 0.1, "max": 0.1}})");
  const auto force = forward.at("clamp_force").at("min").get<std::string>();
  const Json back = resultOf("clamp-force", R"({"thread": "M8", "clamp_force": ")" + force +
                                                R"(", "friction": {"min": 0.1, "max": 0.1}})");
  EXPECT_NEAR(amount(back.at("torque").at("max"), "N m"), 20, 1e-9);
  const Json shortForm = computed("clamp-force", R"({"thread": "M12", "nut_factor": 0.2,
                                                     "clamp_force": "34226 N"})");
  EXPECT_NEAR(amount(shortForm.at("result").at("torque").at("max"), "N m"), 82.14, 0.01);
  EXPECT_TRUE(hasNote(shortForm, "nut_factor_is_not_friction"));
}

TEST(ComputeClampForce, UtilisationIsARange) {
  const Json answer = computed("clamp-force", R"({"thread": "M8", "strength_class": "8.8",
                                                  "torque": "25 N m"})");
  const Json& u = answer.at("result").at("utilisation");
  EXPECT_NEAR(u.at("max").get<double>(), 1.220, 0.004);  // VDI 2230-1, worked with Python
  EXPECT_NEAR(u.at("min").get<double>(), 0.593, 0.004);
  EXPECT_TRUE(hasNote(answer, "may_yield"));
  EXPECT_TRUE(hasNote(answer, "friction_assumed"));
  // Wanted as a force: while tightening, more thread friction is more torsion.
  const Json force = resultOf("clamp-force", R"({"thread": "M8", "strength_class": "8.8",
                                                 "clamp_force": "18 kN"})");
  EXPECT_LT(force.at("utilisation").at("min"), force.at("utilisation").at("max"));
}

TEST(ComputeClampForce, BadInputsNameTheField) {
  const auto field = [](const std::string& rest) {
    return fieldOf("clamp-force", R"({"thread": "M8", )" + rest + "}");
  };
  EXPECT_EQ(field(R"("friction_class": "B")"), "/strength_class") << "nothing to calculate";
  EXPECT_EQ(field(R"("nut_factor": 0.2)"), "/torque");
  EXPECT_EQ(field(R"("torque": 20, "tightening_factor": 1.6)"), "/strength_class");
  EXPECT_EQ(field(R"("torque": 20, "friction_class": "E")"), "/friction");
  EXPECT_EQ(field(R"("torque": 20, "friction": {"min": 0.2, "max": 0.1})"), "/friction");
  EXPECT_EQ(field(R"("torque": 20, "head_friction": {"min": 0})"), "/head_friction");
  EXPECT_EQ(field(R"("torque": 20, "friction": {"least": 0.1})"), "/friction/least");
  EXPECT_EQ(field(R"("torque": 20, "bearing_diameter": "5 mm")"), "/bearing_diameter");
  EXPECT_EQ(field(R"("torque": 0)"), "/torque");
  EXPECT_EQ(field(R"("torque": 20, "options": {"torsion": "both"})"), "/options/torsion");
}

TEST(ComputeTorquePlausibility, ListsReadingsInTheUnitTyped) {
  const Json answer = computed("torque-plausibility", R"({"torque": "250 N m", "thread": "M8",
                                                          "strength_class": "8.8"})");
  const Json& result = answer.at("result");
  EXPECT_EQ(result.at("verdict"), "impossible");
  EXPECT_EQ(result.at("torque_as_typed"), "250 N m") << "nothing is corrected";
  EXPECT_EQ(result.at("other_readings").at(0).at("torque"), "25 N m");
  EXPECT_TRUE(hasNote(answer, "other_readings"));
  const Json bearing = resultOf("torque-plausibility",
                                R"({"torque": "2.5 N m", "thread": "M8", "strength_class": "8.8",
                                    "duty": "bearing"})");
  EXPECT_EQ(bearing.at("verdict"), "exempt");
  EXPECT_EQ(bearing.at("exempt_from"), "suspiciously_low");
}

TEST(ComputeWrenchSetting, SetsAndChooses) {
  const Json result = resultOf("wrench-setting", R"({
      "torque": "40 lbf ft", "today": "2031-04-05",
      "adapter": {"lever_length": "12 in", "adapter_length": "4 in"},
      "wrenches": [{"name": "a", "lowest_mark": "50 lbf ft", "maximum": "150 lbf ft",
                    "calibrated_on": "2031-01-01"},
                   {"name": "b", "lowest_mark": "10 lbf ft", "maximum": "80 lbf ft",
                    "calibrated_on": "2031-01-01"}]})");
  EXPECT_NEAR(amount(result.at("set"), "N m"), 30 * 1.3558179483314004, 1e-9);
  EXPECT_EQ(result.at("best"), "b");
  EXPECT_EQ(result.at("wrenches").at(1).at("use"), "refuse");
}

TEST(ComputeWrenchSetting, WithoutAUsableWrenchNoneIsBest) {
  const Json result = resultOf("wrench-setting", R"({"torque": "39 N m", "today": "2031-04-05",
      "wrenches": [{"name": "a", "lowest_mark": "40 N m", "maximum": "200 N m",
                    "calibrated_on": "2031-01-01"}]})");
  EXPECT_FALSE(result.contains("best"));
}

TEST(ComputeWrenchSetting, BadInputsNameTheField) {
  const auto field = [](const std::string& input) { return fieldOf("wrench-setting", input); };
  EXPECT_EQ(field("{}"), "/torque");
  EXPECT_EQ(field(R"({"torque": 50, "wrenches": [{"name": "a", "maximum": 200}]})"), "/today");
  EXPECT_EQ(field(R"({"torque": 50, "today": "5/4/31"})"), "/today");
  EXPECT_EQ(field(R"({"torque": 50, "today": "2031-04-05", "wrenches": [
                      {"name": "a", "maximum": 200},
                      {"name": "b", "maximum": 200, "lowest_mark": 300}]})"),
            "/wrenches/1/lowest_mark");
  EXPECT_EQ(field(R"({"torque": 80, "adapter": {"lever_length": 100, "adapter_length": 100,
                                                "adapter_angle": 180}})"),
            "/adapter/adapter_length");
  EXPECT_EQ(field(R"({"check": {"set": 100, "reference": 98}})"), "/check/maximum");
}

TEST(ComputePrevailingTorque, TheRuleIsAskedFor) {
  const std::string torque = R"({"torque": {"min": "50 lbf in", "max": "70 lbf in"},
                                 "drag": "15 lbf in")";
  EXPECT_EQ(fieldOf("prevailing-torque", torque + "}"), "/rule");
  EXPECT_EQ(fieldOf("prevailing-torque", "{}"), "/torque");
  EXPECT_EQ(fieldOf("prevailing-torque", R"({"torque": {"min": 5, "max": 4}})"), "/torque/max");
  const Json always = resultOf("prevailing-torque", torque + R"(, "rule": "add_always"})");
  const Json third = resultOf("prevailing-torque", torque + R"(, "rule": "add_if_third"})");
  const double poundInch = 0.1129848290276167;
  EXPECT_NEAR(amount(always.at("torque").at("max"), "N m"), 85 * poundInch, 1e-9);
  EXPECT_NEAR(amount(third.at("torque").at("max"), "N m"), 70 * poundInch, 1e-9);
}

TEST(ComputePrevailingTorque, ANutWithoutFigureIsNotPassed) {
  const Json answer = computed("prevailing-torque",
                               R"({"used_nut": {"thread": "M10", "breakaway_torque": "3 N m"}})");
  EXPECT_EQ(answer.at("result").at("used_nut").at("verdict"), "no_limit");
  EXPECT_FALSE(answer.at("result").at("used_nut").contains("least_breakaway"));
}

TEST(ComputeCastleNut, NeverBackAndNothingMadeUp) {
  const auto action = [](const std::string& rest) {
    return resultOf("castle-nut", R"({"thread": "M12x1.25", )" + rest + "}").at("action");
  };
  const std::string limits = R"("torque": {"min": "95 N m", "max": "110 N m"}, )";
  EXPECT_EQ(action(limits + R"("reached": "104 N m", "slot": "aligned")"), "fit_pin");
  EXPECT_EQ(action(limits + R"("reached": "112 N m", "slot": "aligned")"), "change_washer_or_nut");
  EXPECT_EQ(action(limits + R"("reached": "104 N m", "slot": "aligned",
                               "reached_by": "backing_off")"),
            "backing_off_refused");
  EXPECT_EQ(action(R"("torque": {"min": "95 N m"}, "reached": "99 N m", "slot": "not_aligned")"),
            "ask_upper_limit");
  EXPECT_EQ(action(limits + R"("reached": "20 N m", "slot": "aligned",
                               "purpose": "sets_bearing", "reached_by": "backing_off")"),
            "follow_procedure");
}

TEST(ComputeTightenPattern, RoundsNeedATorque) {
  EXPECT_FALSE(resultOf("tighten-pattern", R"({"fasteners": 6})").contains("rounds"));
  EXPECT_EQ(fieldOf("tighten-pattern", R"({"fasteners": 6, "stages": [0.5, 1]})"), "/torque");
  EXPECT_EQ(fieldOf("tighten-pattern", R"({"fasteners": 6, "torque": 90, "stages": [0.5]})"),
            "/stages");
  const Json rounds =
      resultOf("tighten-pattern", R"({"fasteners": 6, "torque": "110 N m"})").at("rounds");
  EXPECT_EQ(rounds.at(0).at("torque"), "55 N m");
  EXPECT_EQ(rounds.at(1).at("torque"), "110 N m");
  EXPECT_EQ(rounds.at(2).at("purpose"), "confirm");
}

TEST(ComputeWheelNutRecheck, ReadingsInTheUnitOfTheOdometer) {
  const Json first =
      resultOf("wheel-nut-recheck", R"({"odometer": "1000 mi"})").at("rechecks").at(0);
  EXPECT_EQ(first.at("from_on_odometer"), "1031 mi");  // 50 km are 31.07 miles
  EXPECT_NEAR(amount(first.at("from_reading"), "km"), 1659.344, 1e-9);
  EXPECT_FALSE(first.contains("state"));
  EXPECT_EQ(fieldOf("wheel-nut-recheck", R"({"odometer": 100, "odometer_now": 99})"),
            "/odometer_now");
}

// Whatever comes out, nothing says that a vehicle or a joint is safe.
TEST(ComputeBolts, NothingIsCalledSafe) {
  for (const char* name :
       {"thread", "clamp-force", "torque-plausibility", "wrench-setting", "prevailing-torque",
        "castle-nut", "tighten-pattern", "wheel-nut-recheck"}) {
    const ProgramRun run = runProgram({"compute", name, "--describe"});
    const Json example = model::parseJson(run.out)->at("example");
    const std::string answer = computed(name, example.at("input").dump()).dump();
    EXPECT_EQ(answer.find("safe"), std::string::npos) << name;
    EXPECT_NE(answer.find("documentation"), std::string::npos) << name << " defers to it";
  }
}

}  // namespace
}  // namespace sw::test
