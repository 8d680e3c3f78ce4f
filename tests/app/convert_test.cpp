// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/program_run.h"

// Check values: exact definitions (inch 25.4 mm, pound 0.45359237 kg, gravity 9.80665 m/s2) and
// GNU units 2.22.

namespace sw::test {
namespace {

using model::Json;

Json convert(const std::string& value, const std::string& to, const std::string& more = "") {
  return computed("convert", R"({"value": ")" + value + R"(", "to": ")" + to + "\"" + more + "}");
}

Json refusal(const std::string& value, const std::string& to, const std::string& more = "") {
  return refused("convert", R"({"value": ")" + value + R"(", "to": ")" + to + "\"" + more + "}");
}

TEST(ComputeConvert, ExactFactors) {
  struct Row {
    const char* value;
    const char* to;
    const char* kind;
    double amount;
    const char* unit;
  };
  for (const Row& row : {
           Row{"1 in", "mm", "length", 25.4, "mm"},
           Row{"20 thou", "mm", "length", 0.508, "mm"},
           Row{"1 lbf", "N", "force", 4.4482216152605, "N"},
           Row{"1 kgf", "N", "force", 9.80665, "N"},
           // You have: 18 lbf ft  You want: newton m  -> 24.404723
           Row{"18 ft-lb", "Nm", "torque", 24.404723, "N m"},
           Row{"100 Nm", "lbf ft", "torque", 73.756215, "lbf ft"},
           Row{"50 mph", "km/h", "speed", 80.4672, "km/h"},
           Row{"180 deg", "rad", "angle", 3.14159265358979, "rad"},
           Row{"1 lb", "kg", "mass", 0.45359237, "kg"},
           Row{"30 psi", "bar", "pressure", 2.0684272, "bar"},
       }) {
    const Json result = convert(row.value, row.to).at("result");
    EXPECT_NEAR(amount(result.at("value"), row.unit), row.amount, 5e-7) << row.value;
    EXPECT_EQ(result.at("kind"), row.kind);
  }
}

TEST(ComputeConvert, AMassBesideAForceIsReadAsAForceAndSaysSo) {
  const Json asForce = convert("4.6 kg", "N");
  EXPECT_NEAR(amount(asForce.at("result").at("value"), "N"), 45.11059, 1e-9);
  EXPECT_EQ(asForce.at("result").at("read_as"), "4.6 kgf");
  EXPECT_EQ(asForce.at("notes")[0].at("code"), "mass_read_as_force");
  const Json asMass = convert("4,6 kg", "lb");
  EXPECT_EQ(asMass.at("result").at("kind"), "mass");
  EXPECT_EQ(asMass.at("notes")[0].at("code"), "comma_as_decimal");
  EXPECT_EQ(convert("4.6 kg", "lb", R"(, "kind": "force")").at("result").at("kind"), "force");
}

TEST(ComputeConvert, BadInputsNameTheField) {
  EXPECT_EQ(refusal("3 mm", "N").at("field"), "/value");
  EXPECT_EQ(refusal("3 mm", "N").at("code"), "wrong_kind");
  EXPECT_EQ(refusal("3", "N").at("field"), "/value");
  EXPECT_EQ(refusal("", "N").at("field"), "/value");
  EXPECT_EQ(refusal("3 N", "parsec").at("field"), "/to");
  EXPECT_EQ(refusal("3 N", "").at("field"), "/to");
  EXPECT_EQ(refusal("3 N", "5 lbf").at("field"), "/to");
  EXPECT_EQ(refusal("3 N", "lbf", R"(, "kind": "weight")").at("field"), "/kind");
  EXPECT_EQ(refusal("3 N", "lbf", R"(, "kind": "torque")").at("code"), "wrong_kind");
  EXPECT_EQ(refused("convert", R"({"value": 3, "to": "N"})").at("field"), "/value");
  EXPECT_EQ(refused("convert", R"({"value": "3 N"})").at("code"), "missing_field");
}

TEST(ComputeConvert, ThereAndBackIsTheSameText) {
  for (const char* value : {"31.7 N m", "0.0001234 N m", "987654321 N m", "-3 N m"}) {
    const Json there = convert(value, "lbf ft").at("result");
    EXPECT_EQ(convert(there.at("value").get<std::string>(), "N m").at("result").at("value"), value);
  }
}

}  // namespace
}  // namespace sw::test
