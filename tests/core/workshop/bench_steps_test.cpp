// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cctype>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "compute/calculation.h"
#include "shop_fixture.h"
#include "units/parse.h"
#include "workshop/bench_input.h"

// What each step of the shipped procedures is served by, and what the job gives to it.

namespace sw::test {
namespace {

using model::Json;
using model::Side;

/// A job in which one procedure runs and only the steps a test names are worked.
class BenchSteps : public testing::Test {
 protected:
  void start(const std::string& procedure, const std::string& vehicleExtras = "") {
    shop.setUp(vehicleExtras);
    shop.ok(R"({"do":"set_instrument","name":"fine micrometer","type":"micrometer",)"
            R"("graduation":"0.001 mm","permissible_error":"0.003 mm"})");
    shop.ok(R"({"do":"set_instrument","name":"fine dial","type":"dial_indicator",)"
            R"("graduation":"0.001 mm","permissible_error":"0.004 mm"})");
    shop.spec(R"("key":"disc.min_thickness","type":"limit","min":"13.4 mm")");
    shop.spec(R"("key":"disc.thickness_variation","type":"limit","max":"0.011 mm")");
    shop.spec(R"("key":"disc.machine_to","type":"limit","min":"13.9 mm")");
    shop.spec(R"("key":"disc.runout","type":"limit","max":"0.07 mm")");
    shop.spec(R"("key":"toe.total","type":"limit","min":"1 mm","max":"3 mm")");
    m_procedure = procedure;
    shop.ok(R"({"do":"start_procedure","procedure":")" + procedure + "\"}");
  }
  /// A command at a step, its order put aside.
  void at(const std::string& step, const std::string& side, const std::string& rest) {
    std::string place = R"("step":")" + m_procedure + "/" + step + "\"";
    if (!side.empty()) place += R"(,"side":")" + side + "\"";
    shop.ok(R"({"do":"override","rule":"order","why":"only this step matters here",)" + place +
            "}");
    shop.ok("{" + rest + "," + place + "}");
  }
  void read(const std::string& step, const std::string& side, const std::string& instrument,
            const std::string& readings) {
    at(step, side,
       R"("do":"take_readings","instrument":")" + instrument + R"(","readings":")" + readings +
           "\"");
  }
  void observe(const std::string& step, const std::string& side, const std::string& key,
               const std::string& value) {
    at(step, side, R"("do":"observe","key":")" + key + R"(","value":")" + value + "\"");
  }
  /// The input of a calculation at a step of the procedure.
  Json input(const std::string& calculation, const std::string& step,
             std::optional<Side> side = std::nullopt) {
    const auto state = shop.state();
    for (std::size_t i = 0; i < state.steps.size(); ++i) {
      if (state.steps[i].step->id != step || state.steps[i].side != side) continue;
      return workshop::benchInput(state, *shop.workshop->shop().value(), calculation, {i, side});
    }
    ADD_FAILURE() << "no step " << step;
    return {};
  }
  /// The result of the calculation with what the job knows, which must be enough.
  static Json worked(const std::string& calculation, const Json& input) {
    const auto answer = compute::evaluate(compute::findCalculation(calculation).value(), input);
    EXPECT_TRUE(answer) << answer.error().key << " " << answer.error().field << input.dump(1);
    return answer ? answer->at("result") : Json::object();
  }

  Shop shop;

 private:
  std::string m_procedure;
};

const std::string kRound =
    "14.310 14.309 14.307 14.303 14.299 14.296 14.295 14.296 14.299 14.303 "
    "14.307 14.309";

TEST_F(BenchSteps, ADiscIsJudgedFromItsTwelvePoints) {
  start("disc-check");
  read("thickness", "left", "fine micrometer", kRound);
  for (const char* step : {"thickness", "variation"}) {
    const Json left = input("disc-thickness", step, Side::Left);
    EXPECT_EQ(left.at("gauge"), "micrometer");
    EXPECT_EQ(left.at("discard"), "13.4 mm");
    EXPECT_EQ(left.at("variation_limit"), "0.011 mm");
    EXPECT_EQ(left.at("instrument"),
              (Json{{"graduation", "0.001 mm"}, {"permissible_error", "0.003 mm"}}));
    ASSERT_EQ(left.at("readings").size(), 12U);
    const Json result = worked("disc-thickness", left);
    EXPECT_EQ(result.at("thinnest_point"), 7);
    EXPECT_EQ(result.at("minimum").at("verdict"), "within");
    EXPECT_EQ(result.at("variation").at("verdict"), "outside");  // 0.015 mm against 0.011 mm
  }
  EXPECT_FALSE(input("disc-thickness", "thickness", Side::Right).contains("readings"));
}

// Seven of twelve marks span half a turn: as even places of a whole one they would be false.
TEST_F(BenchSteps, APartOfARoundIsNoRound) {
  start("disc-check");
  read("thickness", "left", "fine micrometer", "14.310 14.309 14.307 14.303 14.299 14.296 14.295");
  EXPECT_FALSE(input("disc-thickness", "thickness", Side::Left).contains("readings"));
  read("thickness", "left", "fine micrometer", "14.296 14.299 14.303 14.307 14.309");
  EXPECT_EQ(input("disc-thickness", "thickness", Side::Left).at("readings").size(), 12U);
  read("thickness", "left", "fine micrometer", "14.310");
  EXPECT_FALSE(input("disc-thickness", "thickness", Side::Left).contains("readings"));
}

// A reading a turn is a whole run-out, no place on the disc.
TEST_F(BenchSteps, RunoutIsTakenApartFromReadingsAtPlacesOnly) {
  start("disc-check");
  read("runout", "left", "fine dial", "0.081 0.080 0.082");
  EXPECT_FALSE(input("disc-runout", "runout", Side::Left).contains("readings"));
  // A tilt of 0.04 mm, high at the fourth mark: 0.04 + 0.04 cos(30 deg (k - 3)).
  read("runout_round", "left", "fine dial",
       "0.040 0.060 0.0746 0.080 0.0746 0.060 0.040 0.020 0.0054 0.000 0.0054 0.020");
  const Json left = input("disc-runout", "runout_round", Side::Left);
  EXPECT_EQ(left.at("runout_limit"), "0.07 mm");
  const Json result = worked("disc-runout", left);
  EXPECT_EQ(result.at("places"), 12);
  const auto tilt = parseQuantity(result.at("tilt").at("amount").get<std::string>(),
                                  {"amount", QuantityKind::Length, {}});
  ASSERT_TRUE(tilt);
  EXPECT_NEAR(tilt->value.si, 0.00004, 1e-7);
  EXPECT_EQ(result.at("total").at("verdict"), "outside");
}

TEST_F(BenchSteps, BothDiscsAreDecidedTogether) {
  start("disc-check");
  for (const char* side : {"left", "right"}) {
    read("thickness", side, "fine micrometer", kRound);
    read("runout", side, "fine dial", "0.051 0.050 0.052");
    observe("faces", side, "disc_faces", "sound");
  }
  const Json axle = input("disc-decision", "decide");
  EXPECT_EQ(axle.at("mounting"), "outside_hub");
  EXPECT_EQ(axle.at("discard"), "13.4 mm");
  EXPECT_EQ(axle.at("machine_to"), "13.9 mm");
  EXPECT_EQ(axle.at("variation_limit"), "0.011 mm");
  EXPECT_EQ(axle.at("runout_limit"), "0.07 mm");
  ASSERT_EQ(axle.at("discs").size(), 2U);
  for (const Json& disc : axle.at("discs")) {
    EXPECT_EQ(disc.at("minimum"), "14.295 mm");
    EXPECT_EQ(disc.at("condition"), "none");
    EXPECT_TRUE(disc.contains("runout") && disc.contains("runout_uncertainty"));
    EXPECT_FALSE(disc.contains("residual")) << "a whole run-out is not taken apart";
  }
  const Json result = worked("disc-decision", axle);
  EXPECT_EQ(result.at("discs").at(0).at("minimum").at("verdict"), "within");
  observe("faces", "right", "disc_faces", "cracked");
  EXPECT_EQ(worked("disc-decision", input("disc-decision", "decide")).at("decision"), "replace");
}

TEST_F(BenchSteps, AFaceNobodyLookedAtHasNoCondition) {
  start("disc-check");
  read("thickness", "left", "fine micrometer", kRound);
  observe("faces", "right", "disc_faces", "deep_scores");
  const Json discs = input("disc-decision", "decide").at("discs");
  EXPECT_FALSE(discs.at(0).contains("condition"));
  EXPECT_FALSE(discs.at(1).contains("condition"));  // for a person to say what they mean
  EXPECT_FALSE(discs.at(1).contains("minimum"));
}

TEST_F(BenchSteps, IndexingStartsFromTheDiscOnItsMark) {
  start("disc-on");
  EXPECT_EQ(input("disc-index", "index", Side::Left).at("studs"), 5);
  read("runout_round", "left", "fine dial",
       "0.040 0.060 0.0746 0.080 0.0746 0.060 0.040 0.020 0.0054 0.000 0.0054 0.020");
  const Json left = input("disc-index", "index", Side::Left);
  ASSERT_EQ(left.at("runs").size(), 1U);
  EXPECT_EQ(left.at("runs").at(0).at("position"), 0);
  EXPECT_TRUE(left.at("runs").at(0).contains("angle"));
}

// A disc behind the hub is not turned by a wheel stud.
TEST_F(BenchSteps, StudsOfADiscBehindTheHubAreAsked) {
  start("disc-on", R"(,"disc_mount":"behind_hub")");
  EXPECT_FALSE(input("disc-index", "index", Side::Left).contains("studs"));
  EXPECT_EQ(input("disc-index", "index", Side::Left).at("runout_limit"), "0.07 mm");
}

TEST_F(BenchSteps, WearBeginsWithThisVisit) {
  start("disc-proof");
  read("thinnest", "left", "fine micrometer", "14.295 14.296 14.294");
  const Json left = input("disc-wear", "thinnest", Side::Left);
  EXPECT_EQ(left.at("discard"), "13.4 mm");
  ASSERT_EQ(left.at("visits").size(), 1U);
  EXPECT_EQ(left.at("visits").at(0).at("odometer"), "120500 km");
  EXPECT_EQ(left.at("visits").at(0).at("minimum"), "14.295 mm");
  EXPECT_TRUE(left.at("visits").at(0).contains("uncertainty"));
}

TEST_F(BenchSteps, TheRockIsWeighedWithTheBrakeOnAndOff) {
  start("rock-tests");
  read("rock_diameter", "", "rule", "410");
  EXPECT_EQ(worked("play-limits", input("play-limits", "rock_diameter")).empty(), false);
  read("rock_on_read", "left", "dial", "0.20 0.22 0.21");
  EXPECT_FALSE(input("rock-test", "rock_on_read", Side::Left).contains("brake_off"));
  read("rock_off_read", "left", "dial", "1.42 1.40 1.41");
  const Json left = input("rock-test", "rock_off_read", Side::Left);
  EXPECT_EQ(left.at("diameter"), "410 mm");
  EXPECT_EQ(left.at("brake_on").size(), 3U);
  EXPECT_EQ(left.at("brake_off").at(0), "1.42 mm");
  // What is added with the brake off is the bearing: 1.41 less 0.21.
  const Json result = worked("rock-test", left);
  EXPECT_EQ(result.at("bearing").at("state"), "found");
  EXPECT_EQ(result.at("swivel").at("state"), "none_noticeable");
  EXPECT_FALSE(input("rock-test", "rock_off_read", Side::Right).contains("brake_on"));
}

TEST_F(BenchSteps, TwoInstrumentsAreNotSubtracted) {
  start("rock-tests");
  read("rock_on_read", "left", "dial", "0.20 0.22 0.21");
  read("rock_off_read", "left", "fine dial", "1.420 1.400 1.410");
  EXPECT_FALSE(input("rock-test", "rock_off_read", Side::Left).contains("instrument"));
}

TEST_F(BenchSteps, AToeHasItsSignFromWhatWasSeen) {
  start("set-toe");
  read("diameter", "", "rule", "660");
  read("toe_found", "", "rule", "2 2");
  EXPECT_FALSE(input("toe", "toe_found").contains("total")) << "no sign yet";
  EXPECT_FALSE(input("toe", "toe_found").contains("limit_length"));
  observe("way_found", "", "toe_way", "other_way");
  observe("way_found", "", "toe_direction", "toe_out");
  // The sheet means the other way: toe-in.
  Json found = input("toe", "way_found");
  EXPECT_EQ(found.at("total"), "-2 mm");
  EXPECT_EQ(found.at("diameter"), "660 mm");
  EXPECT_EQ(found.at("graduation"), "0.5 mm");
  EXPECT_EQ(found.at("limit_length"), (Json{{"min", "1 mm"}, {"max", "3 mm"}}));
  EXPECT_EQ(worked("toe", found).at("verdict"), "outside");
  EXPECT_EQ(input("track-rod-turns", "turn_rod").at("present"), "-2 mm");
  // As left: new readings have no sign before they are looked at, and the old ones keep theirs.
  read("toe_left", "", "rule", "2 2");
  EXPECT_FALSE(input("toe", "toe_left").contains("total"));
  observe("way_left", "", "toe_way", "as_sheet");
  observe("way_left", "", "toe_direction", "toe_in");
  const Json left = input("toe", "way_left");
  EXPECT_EQ(left.at("total"), "2 mm");
  EXPECT_EQ(worked("toe", left).at("verdict"), "within");
  EXPECT_EQ(input("toe", "way_found"), found);
}

TEST_F(BenchSteps, ASheetOfToeOutIsTurnedRound) {
  start("set-toe");
  read("diameter", "", "rule", "660");
  read("toe_found", "", "rule", "2 2");
  observe("way_found", "", "toe_way", "as_sheet");
  observe("way_found", "", "toe_direction", "toe_out");
  const Json found = input("toe", "way_found");
  EXPECT_EQ(found.at("limit_length"), (Json{{"min", "-3 mm"}, {"max", "-1 mm"}}));
  EXPECT_EQ(worked("toe", found).at("verdict"), "within");
  observe("way_found", "", "toe_direction", "neither");
  EXPECT_FALSE(input("toe", "way_found").contains("total"));
}

TEST_F(BenchSteps, AWheelBearingIsJudgedByItsFloat) {
  start("wheel-bearing-set");
  read("float_proved", "left", "fine dial", "0.050 0.052 0.051");
  const Json left = input("wheel-bearing", "float_proved", Side::Left);
  EXPECT_EQ(left.at("kind"), "end_float");
  EXPECT_EQ(left.at("limit"), (Json{{"min", "0.02 mm"}, {"max", "0.09 mm"}}));
  EXPECT_EQ(left.at("readings").size(), 3U);
  EXPECT_FALSE(worked("wheel-bearing", left).empty());
  // Before it is set there is nothing to judge.
  EXPECT_FALSE(input("wheel-bearing", "set_float", Side::Left).contains("readings"));
}

TEST_F(BenchSteps, TheFirstPackComesFromTheGapsReadBefore) {
  start("zero-pack");
  read("gaps", "left", "feeler", "0.85 0.85 0.90 0.85");
  for (const char* step : {"gaps", "gaps_even", "first_pack"}) {
    const Json left = input("first-pack", step, Side::Left);
    EXPECT_EQ(left.at("method"), "nip") << step;
    EXPECT_EQ(left.at("gaps").size(), 4U) << step;
    EXPECT_FALSE(worked("first-pack", left).empty());
  }
}

TEST_F(BenchSteps, ASpeedIsUsedWithItsSource) {
  start("road-test-before", R"(,"tyre_fitted":"235/85 R16","tyre_original":"215/80 R15")");
  Json drive = input("wheel-frequency", "drive");
  EXPECT_EQ(drive.at("tyre_on"), "235/85 R16");
  EXPECT_FALSE(drive.contains("speeds"));
  shop.ok(R"({"do":"complaint","onset_rising":"70 km/h","speed_source":"dial","braking":"no"})");
  drive = input("wheel-frequency", "drive");
  EXPECT_EQ(drive.at("speeds"), Json{"70 km/h"});
  EXPECT_EQ(drive.at("speed_from"), "dial");
  EXPECT_EQ(drive.at("built_with_tyre"), "215/80 R15");
  EXPECT_FALSE(worked("wheel-frequency", drive).empty());
  // What the drive showed goes before the complaint; a satellite needs no dial's tyre.
  at("drive", "",
     R"("do":"road_test","shake":"same","onset":"66 km/h","release":"58 km/h","speed_source":"gps")");
  drive = input("wheel-frequency", "drive");
  EXPECT_EQ(drive.at("speeds"), Json{"66 km/h"});
  EXPECT_EQ(drive.at("speed_from"), "true");
  EXPECT_FALSE(drive.contains("built_with_tyre"));
}

TEST_F(BenchSteps, BoltsWheelsAndStandsAreFilledInFromSheetAndVehicle) {
  start("steering-damper");
  const Json nut = input("prevailing-torque", "damper_torque");
  EXPECT_EQ(nut.at("torque"), (Json{{"min", "31 N m"}}));
  EXPECT_EQ(input("wheel-nut-recheck", "damper_torque").at("odometer"), "120500 km");
  EXPECT_EQ(input("stand-load", "damper_torque").at("axle_load"), "880 kg");
  EXPECT_TRUE(input("unbalance", "damper_torque").empty());
}

/// What serves no step, and why.
const std::map<std::string, std::string> kBenchOnly{
    {"series", "every measuring step judges its own readings"},
    {"straight-line", "a tool for figures of one's own"},
    {"convert", "a tool for figures of one's own; readings are taken in any unit"},
    {"compare-figures", "two figures of a sheet are typed side by side, at no step"},
    {"rank-causes", "stands before the steps"},
    {"next-check", "chooses the steps"}};

std::set<std::string> servedBy(const Shop& shop) {
  std::set<std::string> serving;
  for (const auto& procedure : shop.library.procedures()) {
    for (const auto& step : procedure.steps) {
      workshop::StepView view;
      view.step = &step;
      for (const std::string& name : workshop::benchFor(view)) {
        EXPECT_TRUE(compute::findCalculation(name))
            << procedure.id << "/" << step.id << " " << name;
        serving.insert(name);
      }
    }
  }
  return serving;
}

TEST(BenchMapping, EveryCalculationServesAStepOrSaysWhyNot) {
  const Shop shop;
  const auto serving = servedBy(shop);
  std::set<std::string> all;
  for (const auto& calculation : compute::calculations()) {
    const std::string name(calculation.name);
    all.insert(name);
    EXPECT_NE(serving.contains(name), kBenchOnly.contains(name)) << name;
  }
  for (const auto& [name, why] : kBenchOnly) EXPECT_TRUE(all.contains(name)) << name;
}

TEST(BenchMapping, WhatAStepReadsIsWhatItMeasures) {
  const Shop shop;
  std::set<procedures::Reads> read;
  for (const auto& procedure : shop.library.procedures()) {
    for (const auto& step : procedure.steps) {
      if (!step.measure || !step.measure->reads) continue;
      EXPECT_EQ(step.measure->quantity, QuantityKind::Length) << procedure.id << "/" << step.id;
      EXPECT_EQ(step.measure->settling, 0) << "a place would be missing";
      read.insert(*step.measure->reads);
    }
  }
  EXPECT_EQ(read.size(), Words<procedures::Reads>::table.size());
}

struct Serves {
  const char* step;
  std::vector<std::string> names;
};

class BenchServes : public testing::TestWithParam<Serves> {};

TEST_P(BenchServes, TheStepInThisOrder) {
  const Shop shop;
  const std::string place = GetParam().step;
  const auto slash = place.find('/');
  const auto* procedure = shop.library.procedure(place.substr(0, slash));
  ASSERT_NE(procedure, nullptr);
  const auto step =
      std::find_if(procedure->steps.begin(), procedure->steps.end(),
                   [&](const procedures::Step& one) { return one.id == place.substr(slash + 1); });
  ASSERT_NE(step, procedure->steps.end());
  workshop::StepView view;
  view.step = &*step;
  EXPECT_EQ(workshop::benchFor(view), GetParam().names);
}

INSTANTIATE_TEST_SUITE_P(
    Steps, BenchServes,
    testing::Values(Serves{"disc-check/thickness", {"disc-thickness", "disc-wear"}},
                    Serves{"disc-check/runout_round", {"disc-runout"}},
                    Serves{"disc-check/variation", {"disc-thickness", "brake-torque-variation"}},
                    Serves{"disc-check/decide", {"disc-decision"}},
                    Serves{"disc-renew/pair", {"disc-decision"}},
                    Serves{"disc-on/seat_clean", {"runout-at-track"}},
                    Serves{"disc-on/index", {"disc-index", "disc-runout"}},
                    Serves{"disc-proof/thinnest", {"disc-wear"}},
                    Serves{"rock-tests/rock_off_read", {"rock-test", "play-limits"}},
                    Serves{"set-toe/way_found", {"toe"}},
                    Serves{"set-toe/turn_rod", {"track-rod-turns", "toe"}},
                    Serves{"zero-pack/first_pack", {"first-pack", "shim-pack"}},
                    Serves{"wheel-bearing-set/set_pull", {"wheel-bearing", "bearing-friction"}},
                    Serves{"wheel-bearing-set/float_proved", {"wheel-bearing"}},
                    Serves{"hub-open/pull_found", {"wheel-bearing"}},
                    Serves{"free-checks/pressures", {"tyre", "wheel-frequency"}},
                    Serves{"free-checks/steering_slack", {"play-limits"}},
                    Serves{"road-test-before/drive", {"wheel-frequency"}},
                    Serves{"what-else-to-suspect/caster", {"caster", "trail", "lift"}},
                    Serves{"follow-up/nuts_again", {"wheel-nut-recheck"}},
                    Serves{"make-safe-and-lift/lift_stands", {"stand-load"}},
                    Serves{"make-safe-and-lift/support", {"stand-load"}},
                    Serves{"refit-swivel/track_rod_torque",
                           {"wrench-setting", "castle-nut", "torque-plausibility",
                            "tighten-pattern", "clamp-force"}},
                    Serves{"steering-damper/damper_torque",
                           {"wrench-setting", "prevailing-torque", "torque-plausibility",
                            "clamp-force"}},
                    Serves{"steering-damper/look", {}}),
    [](const auto& row) {
      std::string name = row.param.step;
      std::erase_if(name, [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; });
      return name;
    });

}  // namespace
}  // namespace sw::test
