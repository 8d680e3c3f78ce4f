// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "shipped.h"

// The checks of the causes as shipped and the procedures that make them: what a check concludes
// from must be something its procedure asks.

namespace sw::test {
namespace {

using nlohmann::json;
using procedures::Procedure;
using procedures::Step;

/// Calls `visit(check, procedure)` for every check of every file.
void eachCheck(const std::function<void(const json& check, const Procedure& procedure)>& visit) {
  int checks = 0;
  for (const auto& [name, file] : shippedFiles("causes")) {
    for (const json& check : file.at("checks")) {
      ++checks;
      const std::string id = check.at("procedure");
      const Procedure* procedure = shippedLibrary().procedure(id);
      ASSERT_NE(procedure, nullptr) << name << ": " << id;
      visit(check, *procedure);
    }
  }
  EXPECT_GE(checks, 20);
}

std::set<std::string> wordsAsked(const Procedure& procedure, const std::string& key) {
  std::set<std::string> words;
  for (const Step& step : procedure.steps) {
    for (const auto& question : step.observe) {
      if (question.key != key) continue;
      for (const auto& choice : question.choices) words.insert(choice.word);
    }
  }
  return words;
}

std::set<std::string> limitsMeasured(const Procedure& procedure) {
  std::set<std::string> limits;
  for (const Step& step : procedure.steps) {
    if (step.measure && !step.measure->limit.empty()) limits.insert(step.measure->limit);
  }
  return limits;
}

/// The words of each observation in a list of findings or of what speaks against them.
std::map<std::string, std::set<std::string>> wordsOf(const json& entries) {
  std::map<std::string, std::set<std::string>> words;
  for (const json& entry : entries) {
    if (!entry.contains("observed")) continue;
    const auto named = entry.at("words").get<std::set<std::string>>();
    words[entry.at("observed")].insert(named.begin(), named.end());
  }
  return words;
}

TEST(CauseChecks, ConcludeOnlyFromWhatTheirProcedureRecords) {
  eachCheck([](const json& check, const Procedure& procedure) {
    const auto limits = limitsMeasured(procedure);
    for (const char* list : {"findings", "clear"}) {
      for (const auto& [key, words] : wordsOf(check.at(list))) {
        const auto asked = wordsAsked(procedure, key);
        EXPECT_FALSE(asked.empty()) << procedure.id << " does not ask " << key;
        EXPECT_THAT(words, testing::Each(testing::Truly(
                               [&](const std::string& word) { return asked.contains(word); })))
            << procedure.id << " " << key;
      }
      for (const json& entry : check.at(list)) {
        if (!entry.contains("limit")) continue;
        EXPECT_TRUE(limits.contains(entry.at("limit"))) << procedure.id << " " << entry;
      }
    }
  });
}

TEST(CauseChecks, FindEachCauseTheyAreMadeForAndNoOther) {
  eachCheck([](const json& check, const Procedure&) {
    std::set<std::string> found;
    for (const json& finding : check.at("findings")) found.insert(finding.at("cause"));
    std::set<std::string> made;
    for (const auto& [cause, chance] : check.at("finds").items()) made.insert(cause);
    EXPECT_EQ(found, made) << check.at("key");
  });
}

TEST(CauseChecks, NoWordMeansFoundAndNothingFound) {
  eachCheck([](const json& check, const Procedure&) {
    const auto findings = wordsOf(check.at("findings"));
    for (const auto& [key, words] : wordsOf(check.at("clear"))) {
      const auto found = findings.find(key);
      if (found == findings.end()) continue;
      for (const std::string& word : words) {
        EXPECT_FALSE(found->second.contains(word)) << check.at("key") << " " << key << " " << word;
      }
    }
  });
}

TEST(CauseChecks, WhatCouldNotBeToldIsNeither) {
  const std::set<std::string> open{"cannot_tell", "not_seen",   "not_tried",   "no_figure",
                                   "too_coarse",  "not_driven", "not_all_seen"};
  eachCheck([&](const json& check, const Procedure&) {
    for (const char* list : {"findings", "clear"}) {
      for (const auto& [key, words] : wordsOf(check.at(list))) {
        for (const std::string& word : words) {
          EXPECT_FALSE(open.contains(word)) << check.at("key") << " " << key << " " << word;
        }
      }
    }
  });
}

// Or the check would wait for an answer that is never asked for.
TEST(CauseChecks, NothingFoundRestsOnStepsThatAreAlwaysAsked) {
  eachCheck([](const json& check, const Procedure& procedure) {
    if (procedure.id == "swap-wheels") return;  // asked after a drive, which may not be made
    for (const auto& [key, words] : wordsOf(check.at("clear"))) {
      const bool always =
          std::any_of(procedure.steps.begin(), procedure.steps.end(), [&](const Step& step) {
            return !step.optional && step.when.empty() &&
                   std::any_of(step.observe.begin(), step.observe.end(),
                               [&](const auto& question) { return question.key == key; });
          });
      EXPECT_TRUE(always) << procedure.id << " " << key;
    }
  });
}

// By convention the first answer offered stands for nothing out of place.
TEST(CauseChecks, TheFirstAnswerOfferedIsNeverAFinding) {
  eachCheck([](const json& check, const Procedure& procedure) {
    const auto findings = wordsOf(check.at("findings"));
    for (const Step& step : procedure.steps) {
      for (const auto& question : step.observe) {
        const auto found = findings.find(question.key);
        if (found == findings.end() || procedure.id == "swap-wheels") continue;
        EXPECT_FALSE(found->second.contains(question.choices.front().word))
            << procedure.id << " " << question.key;
      }
    }
  });
}

// A pull above its figure is no lack of preload.
TEST(CauseChecks, TooLittlePreloadIsAPullBelowItsFigure) {
  int pulls = 0;
  eachCheck([&](const json& check, const Procedure&) {
    for (const json& finding : check.at("findings")) {
      if (finding.value("limit", "") != "swivel.starting_force") continue;
      ++pulls;
      EXPECT_EQ(finding.value("beyond", ""), "below");
      EXPECT_EQ(finding.at("cause"), "swivel_preload");
    }
  });
  EXPECT_EQ(pulls, 1);
}

// A check that is made by itself drags nobody into a repair: nothing is renewed or set.
TEST(CauseChecks, ChangeNothingButWhatTheyPutBack) {
  eachCheck([](const json&, const Procedure& procedure) {
    if (!procedure.id.starts_with("check-")) return;
    std::map<std::string, model::LedgerState> last;
    for (const Step& step : procedure.steps) {
      EXPECT_FALSE(step.hold || step.shimPack || step.roadTest) << placeOf(procedure, step);
      EXPECT_FALSE(step.raisesVehicle || step.lowersVehicle) << placeOf(procedure, step);
      for (const auto& part : step.parts) EXPECT_FALSE(part.singleUse) << placeOf(procedure, step);
      for (const auto& effect : step.ledger) last[effect.item] = effect.to;
      if (step.torque) last[step.torque->item] = model::LedgerState::Torqued;
    }
    for (const auto& [item, state] : last) {
      EXPECT_TRUE(state == model::LedgerState::TakenOff || state == model::LedgerState::Torqued)
          << procedure.id << " " << item;
    }
  });
}

TEST(CauseRepairs, NamePlansThatRunWhatPutsTheCauseRight) {
  int repairs = 0;
  for (const auto& [name, file] : shippedFiles("causes")) {
    for (const json& repair : file.at("repairs")) {
      ++repairs;
      const auto* plan = shippedLibrary().plan(repair.at("plan").get<std::string>());
      ASSERT_NE(plan, nullptr) << repair.at("plan");
      for (const json& procedure : repair.at("done_by")) {
        EXPECT_THAT(plan->procedures, testing::Contains(procedure.get<std::string>()))
            << repair.at("cause");
      }
    }
  }
  EXPECT_GE(repairs, 9);
}

TEST(CauseChecks, DeferToTheVehiclesDocumentation) {
  for (const auto& [name, file] : shippedFiles("procedures")) {
    if (!name.starts_with("check-")) continue;
    const std::string text = file.dump();
    const bool defers = text.find("documentation") != std::string::npos ||
                        text.find("vehicle's own figure") != std::string::npos;
    EXPECT_TRUE(defers) << name;
  }
}

}  // namespace
}  // namespace sw::test
