// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "compute/calculation.h"
#include "diagnosis/shipped_causes.h"
#include "support/answer.h"

// What rank-causes makes of its input, against Bayes' rule over the shipped table written out here.

namespace sw::test {
namespace {

using model::Json;

std::map<std::string, double> ranked(const std::string& input) {
  std::map<std::string, double> chances;
  const Json result = resultOf("rank-causes", input);
  for (const Json& one : result.at("causes")) {
    chances[one.at("cause")] = one.at("probability");
  }
  return chances;
}

/// weight times `likelihood(cause)`, brought to a sum of one.
template <class Likelihood>
std::map<std::string, double> byHand(const Likelihood& likelihood) {
  const auto& table = diagnosis::shippedCauses().table;
  std::map<std::string, double> chances;
  double sum = 0;
  for (const auto& cause : table.causes) {
    chances[cause.key] = cause.weight * likelihood(cause);
    sum += chances[cause.key];
  }
  for (auto& [key, chance] : chances) chance /= sum;
  return chances;
}

void expectSame(const std::map<std::string, double>& found,
                const std::map<std::string, double>& expected) {
  ASSERT_EQ(found.size(), expected.size());
  for (const auto& [key, chance] : expected) EXPECT_NEAR(found.at(key), chance, 1e-12) << key;
}

TEST(ComputeRankCauses, ATraceOfARoadLogCountsByItsRatio) {
  const auto& table = diagnosis::shippedCauses().table;
  const auto feature = *table.feature("follows_speed");
  const auto yes = *table.features[feature].answer("yes");
  // Soft evidence with a ratio of 4: q is replaced by 4 q + (1 - q).
  const auto expected = byHand([&](const diagnosis::Cause& cause) {
    const double q = cause.answers[feature][yes];
    return 4 * q + (1 - q);
  });
  expectSame(ranked(R"({"traces": [{"question": "follows_speed", "answer": "yes", "times": 4}]})"),
             expected);
  // A ratio of one says nothing.
  expectSame(ranked(R"({"traces": [{"question": "follows_speed", "answer": "yes", "times": 1}]})"),
             byHand([](const diagnosis::Cause&) { return 1.0; }));
}

TEST(ComputeRankCauses, AnswersAreDampedAndChecksAreNot) {
  const auto& table = diagnosis::shippedCauses().table;
  const auto& file = diagnosis::shippedCauses();
  const auto feature = *table.feature("braking");
  const auto only = *table.features[feature].answer("only");
  const auto& check = file.checks[*file.check("panhard")];
  const auto expected = byHand([&](const diagnosis::Cause& cause) {
    double clear = 1 - check.falseAlarm;
    for (const auto& one : check.finds) {
      if (table.causes[one.cause].key == cause.key) clear = 1 - one.chance;
    }
    return std::sqrt(std::max(1e-6, cause.answers[feature][only])) * clear;
  });
  expectSame(ranked(R"({"answers": {"braking": "only"}, "options": {"damping": 0.5},
                        "checks": [{"check": "panhard", "result": "nothing"}]})"),
             expected);
}

TEST(ComputeRankCauses, WhatATraceLacksIsNamed) {
  const auto field = [](const std::string& input) {
    return refused("rank-causes", input).at("field").get<std::string>();
  };
  EXPECT_EQ(field(R"({"traces": [{"question": "moon", "answer": "yes", "times": 2}]})"),
            "/traces/0/question");
  EXPECT_EQ(field(R"({"traces": [{"question": "pulls", "answer": "only", "times": 2}]})"),
            "/traces/0/answer");
  EXPECT_EQ(field(R"({"traces": [{"question": "pulls", "answer": "yes", "times": 0}]})"),
            "/traces/0/times");
  EXPECT_EQ(field(R"({"traces": [{"question": "pulls", "answer": "yes"}]})"), "/traces/0/times");
}

}  // namespace
}  // namespace sw::test
