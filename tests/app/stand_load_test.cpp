// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/program_run.h"

// Rule: each stand is rated for more than half of what stands on the axle (common practice, no
// source).

namespace sw::test {
namespace {

using model::Json;

TEST(ComputeStandLoad, EachMustCarryMoreThanHalf) {
  const auto verdict = [](const std::string& rating) {
    return computed("stand-load", R"({"known_from": "weighed", "axle_load": "900 kg",
                                      "rating_means": "each", "rating": ")" +
                                      rating + "\"}")
        .at("result")
        .at("verdict");
  };
  EXPECT_EQ(verdict("450 kg"), "not_enough");
  EXPECT_EQ(verdict("450.1 kg"), "enough");
  EXPECT_EQ(verdict("2 t"), "enough");
}

TEST(ComputeStandLoad, ARatingPerPairIsHalved) {
  const Json result = computed("stand-load", R"({"known_from": "mass_and_share",
      "vehicle_mass": "2000 kg", "axle_share": 0.5, "rating_means": "per_pair", "rating": "1.5 t"})")
                          .at("result");
  EXPECT_NEAR(amount(result.at("axle_load"), "kg"), 1000, 1e-9);
  EXPECT_NEAR(amount(result.at("needed_each"), "kg"), 500, 1e-9);
  EXPECT_NEAR(amount(result.at("rated_each"), "kg"), 750, 1e-9);
  EXPECT_NEAR(result.at("margin").get<double>(), 0.5, 1e-12);
}

TEST(ComputeStandLoad, WithoutASplitTheWholeVehicleIsTaken) {
  const Json result = computed("stand-load", R"({"known_from": "mass_only",
      "vehicle_mass": "2000 kg", "rating_means": "each", "rating": "1 t"})")
                          .at("result");
  EXPECT_NEAR(amount(result.at("needed_each"), "kg"), 1000, 1e-9);
  EXPECT_EQ(result.at("verdict"), "not_enough");
}

TEST(ComputeStandLoad, ItNeverSaysMoreThanTheRatings) {
  const Json answer = computed("stand-load", R"({"known_from": "weighed", "axle_load": 900,
                                                 "rating_means": "each", "rating": "3 t"})");
  EXPECT_EQ(answer.at("notes")[0].at("code"), "rating_only");
  EXPECT_EQ(answer.dump().find("safe"), std::string::npos);
}

TEST(ComputeStandLoad, BadInputsNameTheField) {
  const auto error = [](const std::string& fields) {
    return refused("stand-load", "{" + fields + R"(, "rating_means": "each"})");
  };
  const std::string weighed = R"("known_from": "weighed", )";
  EXPECT_EQ(error(weighed + R"("rating": "1 t")").at("field"), "/axle_load");
  EXPECT_EQ(error(weighed + R"("axle_load": "900 N", "rating": "1 t")").at("code"), "wrong_kind");
  EXPECT_EQ(error(weighed + R"("axle_load": 900, "rating": 0)").at("field"), "/rating");
  EXPECT_EQ(error(weighed + R"("axle_load": 900, "rating": 900, "stands": 1)").at("code"),
            "out_of_range");
  EXPECT_EQ(error(R"("known_from": "guess", "rating": 900)").at("field"), "/known_from");
  EXPECT_EQ(error(R"("known_from": "mass_and_share", "vehicle_mass": 2000, "axle_share": 1.2,
                     "rating": 900)")
                .at("field"),
            "/axle_share");
  EXPECT_EQ(refused("stand-load", R"({"known_from": "weighed",
                "axle_load": 900, "rating": 900})")
                .at("field"),
            "/rating_means");
}

}  // namespace
}  // namespace sw::test
