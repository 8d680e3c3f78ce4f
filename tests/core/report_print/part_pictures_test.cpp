// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "model/json.h"
#include "picture_checks.h"
#include "printed.h"

// Pictures of brakes, bearings, stands, series and swivels at the ends of what can be asked: one
// reading and many, nothing at all, far beyond a limit, without a limit. Invented inputs.

namespace sw {
namespace {

struct EdgeInput {
  const char* name;
  const char* calculation;
  const char* input;
};

constexpr auto kEdges = std::to_array<EdgeInput>({
    {"SeriesOne", "series",
     R"({"readings": ["31 N"], "instrument": {"graduation": "0.5 N"}, "limit": {"max": "20 N"}})"},
    {"SeriesNoLimit", "series",
     R"({"readings": ["0.051 mm", "0.052 mm", "0.051 mm"],
         "instrument": {"graduation": "0.001 mm"}})"},
    {"SeriesAlike", "series",
     R"({"readings": ["14 N", "14 N", "14 N"], "instrument": {"graduation": "1 N"},
         "limit": {"min": "14 N", "max": "14.5 N"}})"},
    {"SeriesOutlier", "series",
     R"({"readings": ["20 N", "20.5 N", "20 N", "20.5 N", "21 N", "20 N", "20.5 N", "33 N", "20 N",
                      "20.5 N", "20 N", "20.5 N", "21 N", "20 N", "20.5 N", "20 N", "20.5 N",
                      "20 N", "20.5 N", "20 N", "20.5 N", "21 N", "20 N", "20.5 N", "20 N",
                      "20.5 N", "20 N", "20.5 N", "21 N", "20 N", "20.5 N", "20 N", "20.5 N"],
         "instrument": {"graduation": "0.5 N"}, "limit": {"min": "18 N", "max": "24 N"}})"},
    {"FiguresAgree", "compare-figures", R"({"first": "26.0 N m", "second": "19 lbf ft"})"},
    {"FiguresNothing", "compare-figures", R"({"first": "0 mm", "second": "0 in"})"},
    {"FiguresFarApart", "compare-figures", R"({"first": "61.00 N m", "second": "4.500 lbf ft"})"},
    {"LineLarge", "straight-line",
     R"({"points": [{"x": -100000, "y": 2000000}, {"x": 0, "y": -1500000},
                    {"x": 250000, "y": -8000000}, {"x": 300000, "y": -9000000}],
         "at": -200000, "reach": 0})"},
    {"LineExact", "straight-line",
     R"({"points": [{"x": 0, "y": 0}, {"x": 1, "y": 1}, {"x": 2, "y": 2}]})"},
    {"RunoutNone", "disc-runout",
     R"({"readings": ["0.02 mm", "0.02 mm", "0.02 mm", "0.02 mm"],
         "instrument": {"graduation": "0.01 mm"}})"},
    {"RunoutFarOver", "disc-runout",
     R"({"readings": ["0.9 mm", "0.1 mm", "0.4 mm", "-0.6 mm", "0.2 mm", "0.3 mm"],
         "instrument": {"graduation": "0.01 mm"}, "runout_limit": "0.02 mm"})"},
    {"RunoutFarWithin", "disc-runout",
     R"({"readings": ["0.001 mm", "0.002 mm", "0.001 mm", "0 mm", "0.001 mm"],
         "instrument": {"graduation": "0.001 mm"}, "runout_limit": "0.15 mm"})"},
    {"ThicknessBelowDiscard", "disc-thickness",
     R"({"gauge": "micrometer", "readings": ["19.98 mm", "19.97 mm", "19.96 mm", "19.99 mm"],
         "other_radius": ["20.02 mm", "20.01 mm", "20.03 mm", "20.02 mm"],
         "instrument": {"graduation": "0.01 mm", "permissible_error": "0.01 mm"},
         "discard": "20 mm"})"},
    {"ThicknessAlike", "disc-thickness",
     R"({"gauge": "caliper_over_lip", "readings": ["21 mm", "21 mm", "21 mm", "21 mm"],
         "instrument": {"graduation": "0.1 mm"}, "variation_limit": "0.02 mm"})"},
    {"WearNotProved", "disc-wear",
     R"({"visits": [{"odometer": "1000 km", "minimum": "23.91 mm", "uncertainty": "0.05 mm"},
                    {"odometer": "9000 km", "minimum": "23.90 mm", "uncertainty": "0.05 mm"}],
         "discard": "22 mm"})"},
    {"WearAtDiscard", "disc-wear",
     R"({"visits": [{"odometer": "61000 km", "minimum": "22.4 mm", "uncertainty": "0.01 mm"},
                    {"odometer": "91000 km", "minimum": "21.9 mm", "uncertainty": "0.01 mm"}],
         "discard": "22 mm"})"},
    {"IndexTwelveStuds", "disc-index",
     R"({"studs": 12, "hub": {"amount": "0.02 mm", "angle": "10 deg", "uncertainty": "0.001 mm"},
         "disc": {"amount": "0.021 mm", "angle": "190 deg", "uncertainty": "0.001 mm"},
         "runout_limit": "0.001 mm"})"},
    {"IndexThreeStuds", "disc-index",
     R"({"studs": 3, "hub": {"amount": "0.2 mm", "angle": "0 deg"},
         "disc": {"amount": "0.1 mm", "angle": "300 deg"}})"},
    {"DecisionCracks", "disc-decision",
     R"({"mounting": "outside_hub", "discard": "20 mm",
         "discs": [{"side": "left", "minimum": "20.4 mm", "minimum_uncertainty": "0.01 mm",
                    "condition": "cracks"},
                   {"side": "right", "minimum": "19.6 mm", "minimum_uncertainty": "0.01 mm",
                    "condition": "heavy_corrosion"}]})"},
    {"DecisionFarOver", "disc-decision",
     R"({"mounting": "outside_hub", "discard": "20 mm", "machine_to": "20.4 mm",
         "variation_limit": "0.01 mm", "runout_limit": "0.1 mm",
         "discs": [{"side": "right", "minimum": "23 mm", "minimum_uncertainty": "0.01 mm",
                    "variation": "0.4 mm", "variation_uncertainty": "0.001 mm",
                    "runout": "0.099 mm", "runout_uncertainty": "0.01 mm", "condition": "none"},
                   {"side": "left", "minimum": "23.1 mm", "minimum_uncertainty": "0.01 mm",
                    "variation": "0 mm", "variation_uncertainty": "0.001 mm",
                    "runout": "0.02 mm", "runout_uncertainty": "0.01 mm", "condition": "none"}]})"},
    {"TorqueManyOrders", "brake-torque-variation",
     R"({"thickness_variation": "0.1 mm", "stiffness": "30 kN/mm", "effective_radius": "140 mm",
         "order": 20})"},
    {"TorqueNone", "brake-torque-variation",
     R"({"thickness_variation": "0 mm", "stiffness": "30 kN/mm", "effective_radius": "140 mm"})"},
    {"TrackHub", "runout-at-track",
     R"({"fault": "hub_runout", "hub_runout": "0.04 mm", "hub_radius": "61 mm",
         "track_radius": "121 mm", "runout_limit": "0.05 mm"})"},
    {"TrackNothing", "runout-at-track",
     R"({"fault": "speck", "speck": "0 mm", "seat_diameter": "140 mm", "track_radius": "50 mm",
         "runout_limit": "0.05 mm"})"},
    {"StiffnessNoLoad", "bearing-stiffness",
     R"({"rollers": 18, "contact_angle": "15 deg", "roller_length": "12 mm", "load": "0 N"})"},
    {"StiffnessHeavy", "bearing-stiffness",
     R"({"rollers": 18, "contact_angle": "15 deg", "roller_length": "12 mm",
         "displacement": "0.2 mm"})"},
    {"PlayLimitsLeast", "play-limits", "{}"},
    {"PlayLimitsTwo", "play-limits",
     R"({"wheel_diameter": "700 mm", "steering_wheel_diameter": "400 mm"})"},
    {"RockNothing", "rock-test",
     R"({"brake_on": ["0 mm", "0 mm", "0 mm"], "brake_off": ["0 mm", "0 mm", "0 mm"],
         "instrument": {"graduation": "0.01 mm"}, "diameter": "420 mm"})"},
    {"RockSwivel", "rock-test",
     R"({"brake_on": ["6.1 mm", "6.3 mm", "6.2 mm"], "brake_off": ["6.2 mm", "6.3 mm", "6.1 mm"],
         "instrument": {"graduation": "0.1 mm"}, "diameter": "420 mm"})"},
    {"RockReversed", "rock-test",
     R"({"brake_on": ["2.1 mm", "2.2 mm", "2.1 mm"], "brake_off": ["0.4 mm", "0.5 mm", "0.4 mm"],
         "instrument": {"graduation": "0.1 mm"}, "diameter": "420 mm"})"},
    {"BearingPull", "wheel-bearing",
     R"({"kind": "preload_pull", "readings": ["21 N", "22 N", "21.5 N"],
         "instrument": {"graduation": "0.5 N"}, "limit": {"min": "1 N m", "max": "1.4 N m"},
         "radius": "57 mm"})"},
    {"BearingPlausible", "wheel-bearing",
     R"({"kind": "end_float", "readings": ["0.21 mm", "0.22 mm", "0.21 mm"],
         "instrument": {"graduation": "0.01 mm"}})"},
    {"StandsNotEnough", "stand-load",
     R"({"known_from": "mass_only", "vehicle_mass": "2310 kg", "stands": 4, "rating": "1.5 t",
         "rating_means": "per_pair"})"},
    {"StandsStrong", "stand-load",
     R"({"known_from": "weighed", "axle_load": "240 kg", "rating": "12 t",
         "rating_means": "each"})"},
    {"PullForTarget", "starting-force", R"({"arm": "212 mm", "target_torque": "3.7 N m"})"},
    {"PullAlongArm", "starting-force",
     R"({"arm": "212 mm", "force": "120 N", "off_square": "85 deg"})"},
    {"PullBackwards", "starting-force",
     R"({"arm": "212 mm", "force": "20 N", "off_square": "-40 deg", "off_square_within": "20 deg",
         "target_torque": "3.7 N m"})"},
    {"PackTilted", "first-pack",
     R"({"layout": "cap_flange", "method": "nip",
         "gaps": ["0.30 mm", "0.40 mm", "0.52 mm", "0.41 mm"],
         "shims": [{"thickness": "0.1 mm"}, {"thickness": "0.25 mm"}], "max_count": 5})"},
    {"PackOneBoltOff", "first-pack",
     R"({"layout": "cap_flange", "method": "nip",
         "gaps": ["0.40 mm", "0.41 mm", "0.40 mm", "0.40 mm", "0.62 mm", "0.41 mm", "0.40 mm",
                  "0.40 mm", "0.41 mm", "0.40 mm", "0.40 mm", "0.41 mm"],
         "shims": [{"thickness": "0.05 mm"}], "max_count": 20})"},
    {"PackTwoBolts", "first-pack",
     R"({"layout": "cap_flange", "method": "nip", "gaps": ["0.40 mm", "0.40 mm"],
         "shims": [{"thickness": "0.4 mm"}], "max_count": 1})"},
    {"PackFloat", "first-pack",
     R"({"layout": "cap_flange", "method": "end_float", "end_float": ["0.13 mm", "0.12 mm"],
         "pack_found": "0.85 mm", "allowance": "0.05 mm",
         "shims": [{"thickness": "0.1 mm"}, {"thickness": "0.25 mm"}], "max_count": 5})"},
    {"PackFloatInner", "first-pack",
     R"({"layout": "inner", "method": "end_float", "end_float": ["0.02 mm"],
         "pack_found": "1.05 mm", "shims": [{"thickness": "0.1 mm"}, {"thickness": "0.25 mm"}],
         "max_count": 8})"},
});

class PartPictures : public ::testing::TestWithParam<EdgeInput> {
 protected:
  void SetUp() override { testing::ensureGui(); }
};

TEST_P(PartPictures, AreGoodAtTheEdgesToo) {
  const EdgeInput& edge = GetParam();
  const auto calculation = compute::findCalculation(edge.calculation);
  ASSERT_TRUE(calculation);
  const auto input = model::parseJson(edge.input);
  ASSERT_TRUE(input) << edge.input;
  const auto answer = compute::answerTo(*calculation, *input);
  ASSERT_TRUE(answer) << answer.error().key << " " << answer.error().field;
  ASSERT_TRUE(answer->draw);
  testing::expectGoodPicture(answer->draw, std::string("edge-") + edge.name);
}

INSTANTIATE_TEST_SUITE_P(Edges, PartPictures, ::testing::ValuesIn(kEdges),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace sw
