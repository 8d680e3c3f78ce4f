// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan_walk.h"

#include "procedures/fact_words.h"
#include "shipped.h"

namespace sw::test {

namespace {

procedures::Facts factsOf(FactWords words, std::string round) {
  words["round"] = std::move(round);
  return [words = std::move(words)](const std::string& fact, std::optional<model::Side>) {
    const auto found = words.find(fact);
    return found == words.end() ? std::nullopt : std::optional(found->second);
  };
}

bool describesTheVehicle(const std::string& fact) {
  return !procedures::isObserved(fact) && fact != "round" && fact != "side";
}

void collect(const procedures::Condition& condition, std::map<std::string, int>& facts) {
  for (const auto& [fact, words] : condition) {
    if (describesTheVehicle(fact)) facts[fact] = 1;
  }
}

std::map<std::string, int> factsAskedForByWork() {
  std::map<std::string, int> facts{{"drag_link_side", 1}};
  eachStep([&](const procedures::Procedure&, const procedures::Step& step) {
    if (step.ledger.empty() && !step.torque) return;
    collect(step.when, facts);
    for (const auto& effect : step.ledger) collect(effect.when, facts);
  });
  return facts;
}

}  // namespace

std::vector<PlannedRun> runsOfPlan(const std::string& plan, const std::string& round) {
  std::vector<PlannedRun> runs;
  if (const auto* found = shippedLibrary().plan(plan)) {
    for (const std::string& id : found->procedures) runs.push_back({id, round});
  }
  EXPECT_FALSE(runs.empty()) << "no plan " << plan;
  return runs;
}

std::vector<WalkedStep> walk(const std::vector<PlannedRun>& runs, const FactWords& words,
                             const std::vector<model::Side>& sides) {
  std::vector<WalkedStep> steps;
  for (const PlannedRun& run : runs) {
    const auto* procedure = shippedLibrary().procedure(run.procedure);
    if (procedure == nullptr) {
      ADD_FAILURE() << "no procedure " << run.procedure;
      continue;
    }
    const auto facts = factsOf(words, run.round);
    for (const auto& instance : procedures::instantiate(*procedure, sides, facts)) {
      steps.push_back({procedure, instance.step, instance.side, facts});
    }
  }
  return steps;
}

std::vector<FactWords> manyFactWords() {
  // A stride without a common factor with any number of words meets every pair of words.
  constexpr std::size_t kStride = 61;
  std::vector<std::pair<std::string, std::vector<std::string_view>>> facts;
  std::size_t count = 1;
  for (const auto& [fact, unused] : factsAskedForByWork()) {
    facts.emplace_back(fact, procedures::wordsOfFact(fact).value());
    count *= facts.back().second.size();
  }
  std::vector<FactWords> all;
  for (std::size_t index = 0; index < count; index += kStride) {
    FactWords words;
    std::size_t rest = index;
    for (const auto& [fact, choices] : facts) {
      words[fact] = std::string(choices[rest % choices.size()]);
      rest /= choices.size();
    }
    all.push_back(std::move(words));
  }
  return all;
}

std::string describe(const FactWords& words) {
  std::string text;
  for (const auto& [fact, word] : words) text += fact + "=" + word + " ";
  return text;
}

}  // namespace sw::test
