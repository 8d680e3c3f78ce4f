// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/program_run.h"

namespace sw::test {
namespace {

using model::Json;

TEST(ComputeStartingForce, MomentOfASquarePull) {
  // 18.9 N (u 0.40) at 180 mm (+-1 mm rectangular): 3.402 N m, u 0.0728222 N m; plane statics and
  // JCGM 100:2008 5.1, computed apart from this program.
  const Json result =
      computed("starting-force", R"({"force": "18.9 N", "arm": "180 mm", "force_uncertainty": 0.4,
                                     "arm_uncertainty": "0.577350269189626 mm"})")
          .at("result");
  EXPECT_NEAR(amount(result.at("torque"), "N m"), 3.402, 1e-9);
  EXPECT_NEAR(amount(result.at("standard_uncertainty"), "N m"), 0.0728222, 1e-6);
  EXPECT_EQ(result.at("degrees_of_freedom"), "infinity");
  EXPECT_NEAR(result.at("coverage_factor").get<double>(), 1.959964, 1e-6);  // normal, 95 %
  EXPECT_FALSE(result.contains("pull_for_target"));
}

TEST(ComputeStartingForce, APullOffSquareCountsLess) {
  const Json result =
      computed("starting-force", R"({"force": "25 N", "arm": "0.2 m", "off_square": "20 deg"})")
          .at("result");
  // 25 cos 20 deg
  EXPECT_NEAR(amount(result.at("square_force"), "N"), 23.4923, 1e-4);
}

TEST(ComputeStartingForce, ATargetTorqueGivesThePull) {
  const Json result = computed("starting-force", R"({"arm": "200 mm", "off_square": "-60 deg",
                                                     "target_torque": "5 N m"})")
                          .at("result");
  // 5 N m / (0.2 m cos 60 deg) = 50 N
  EXPECT_NEAR(amount(result.at("pull_for_target"), "N"), 50.0, 1e-9);
  EXPECT_FALSE(result.contains("torque"));
}

TEST(ComputeStartingForce, InfinityComesOutAndGoesIn) {
  const std::string head = R"({"force": "20 N", "arm": "150 mm", "force_uncertainty": "1 N")";
  const Json first = computed("starting-force", head + "}").at("result");
  const std::string again =
      head + R"(, "degrees_of_freedom": )" + first.at("degrees_of_freedom").dump() + "}";
  EXPECT_EQ(computed("starting-force", again).at("result"), first);
}

TEST(ComputeStartingForce, BadInputsNameTheField) {
  const auto fieldOf = [](const std::string& input) {
    return refused("starting-force", input).at("field").get<std::string>();
  };
  EXPECT_EQ(fieldOf(R"({"arm": "150 mm"})"), "/force");
  EXPECT_EQ(fieldOf(R"({"force": "20 N"})"), "/arm");
  EXPECT_EQ(fieldOf(R"({"force": "20 N", "arm": 0})"), "/arm");
  EXPECT_EQ(fieldOf(R"({"force": "-20 N", "arm": 150})"), "/force");
  EXPECT_EQ(fieldOf(R"({"force": "20 N", "arm": 150, "off_square": "90 deg"})"), "/off_square");
  EXPECT_EQ(fieldOf(R"({"force": "20 N", "arm": 150, "off_square_within": "90 deg"})"),
            "/off_square_within");
  EXPECT_EQ(fieldOf(R"({"force": "20 N", "arm": 150, "degrees_of_freedom": 0})"),
            "/degrees_of_freedom");
  EXPECT_EQ(fieldOf(R"({"force": "20 N", "arm": 150, "options": {"confidence": 0}})"),
            "/options/confidence");
}

}  // namespace
}  // namespace sw::test
