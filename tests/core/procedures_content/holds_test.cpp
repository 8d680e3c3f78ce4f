// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "plan_walk.h"
#include "shipped.h"

// Challenge and answer: the answer is the state or the value seen, never "checked" (Degani and
// Wiener 1993, guidelines 1 to 3, from memory); few holds, since each repeat is noticed less.

namespace sw::test {
namespace {

using procedures::AnswerType;
using procedures::Procedure;
using procedures::Statement;
using procedures::Step;

void eachStatement(
    const std::function<void(const std::string& place, const Statement& statement)>& visit) {
  eachStep([&](const Procedure& procedure, const Step& step) {
    if (!step.hold) return;
    for (const Statement& statement : step.hold->statements) {
      visit(placeOf(procedure, step) + "/" + statement.key, statement);
    }
  });
}

TEST(Holds, AreAtMostFiveAJob) {
  for (const auto& plan : shippedLibrary().plans()) {
    std::set<std::string> keys;
    for (const std::string& id : plan.procedures) {
      for (const Step& step : shippedLibrary().procedure(id)->steps) {
        if (step.hold) keys.insert(step.hold->key);
      }
    }
    EXPECT_LE(keys.size(), 5U) << plan.id;
    EXPECT_GE(keys.size(), 4U) << plan.id;
  }
}

TEST(Holds, AskAtMostThreeThingsOnEverySupport) {
  const std::vector<model::Side> both{model::Side::Left, model::Side::Right};
  for (const char* support : {"stands", "two_post", "four_post", "pit"}) {
    for (const Procedure& procedure : shippedLibrary().procedures()) {
      for (const auto& walked : walk({{procedure.id}}, {{"support", support}}, both)) {
        if (!walked.step->hold) continue;
        const auto& all = walked.step->hold->statements;
        const auto asked = std::count_if(all.begin(), all.end(), [&](const Statement& statement) {
          return procedures::holds(statement.when, walked.facts, std::nullopt);
        });
        EXPECT_GE(asked, 2) << placeOf(procedure, *walked.step) << " " << support;
        EXPECT_LE(asked, 3) << placeOf(procedure, *walked.step) << " " << support;
      }
    }
  }
}

TEST(Holds, ChoicesArePlausibleAndMostlyFail) {
  eachStatement([](const std::string& place, const Statement& statement) {
    EXPECT_FALSE(statement.why.empty()) << place;
    if (statement.answer != AnswerType::Choice) return;
    const auto passing = std::count_if(statement.choices.begin(), statement.choices.end(),
                                       [](const auto& choice) { return choice.passes; });
    EXPECT_GE(statement.choices.size(), 3U) << place;
    EXPECT_EQ(passing, 1) << place;
  });
}

TEST(Holds, AnswersAreStatesNotAssurances) {
  const std::set<std::string> assurances{"yes", "no", "ok", "done", "checked", "good", "fine"};
  eachStatement([&](const std::string& place, const Statement& statement) {
    for (const auto& choice : statement.choices) {
      EXPECT_FALSE(assurances.contains(choice.word)) << place;
      EXPECT_GE(std::count(choice.text.begin(), choice.text.end(), ' '), 1)
          << place << ": " << choice.text;
    }
  });
}

TEST(Holds, NumbersAreJudgedByARule) {
  int counts = 0;
  int quantities = 0;
  eachStatement([&](const std::string& place, const Statement& statement) {
    if (statement.answer == AnswerType::Count) {
      ++counts;
      EXPECT_GE(statement.atLeast.value_or(0), 1) << place;
    }
    if (statement.answer == AnswerType::Quantity) {
      ++quantities;
      EXPECT_TRUE(statement.quantity.has_value()) << place;
      EXPECT_FALSE(statement.check.empty()) << place;
    }
  });
  EXPECT_GE(counts, 3);
  EXPECT_GE(quantities, 5);
}

TEST(Holds, AreNeverOptionalExceptBeforeADriveThatIs) {
  eachStep([](const Procedure& procedure, const Step& step) {
    if (!step.hold) return;
    EXPECT_EQ(step.optional, procedure.id == "road-test-before") << placeOf(procedure, step);
  });
}

TEST(Holds, ReachEveryDriveThroughWalkRoundAndGoNoGo) {
  for (const Procedure& procedure : shippedLibrary().procedures()) {
    const auto& steps = procedure.steps;
    const auto drive = std::find_if(steps.begin(), steps.end(),
                                    [](const Step& step) { return step.roadTest.has_value(); });
    if (drive == steps.end()) continue;
    std::set<std::string> before;
    for (auto it = steps.begin(); it != drive; ++it) {
      if (it->hold) before.insert(it->hold->key);
    }
    EXPECT_EQ(before, (std::set<std::string>{"walk_round", "go_no_go"})) << procedure.id;
  }
}

TEST(Holds, AskTheWheelNutsAgainAfterTheDrive) {
  const auto* procedure = shippedLibrary().procedure("road-test-after");
  ASSERT_NE(procedure, nullptr);
  bool driven = false;
  bool torqued = false;
  bool asked = false;
  for (const Step& step : procedure->steps) {
    if (step.roadTest) driven = true;
    if (driven && step.torque && step.torque->item == "wheel") torqued = true;
    if (torqued && step.hold && step.hold->key == "wheel_nuts") asked = true;
  }
  EXPECT_TRUE(asked);
}

}  // namespace
}  // namespace sw::test
