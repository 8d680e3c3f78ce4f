// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/procedure_check.h"

#include <algorithm>
#include <map>
#include <set>

#include "procedures/fact_words.h"
#include "procedures/instantiate.h"
#include "procedures/reading.h"

namespace sw::procedures {

using model::ObjectReader;

namespace {

constexpr std::size_t kMostStatementsAtOnce = 3;
constexpr std::size_t kMostCombinations = 20'000;

struct Block {
  StepKind kind;
  std::string_view key;
  bool present;
};

std::vector<Block> blocksOf(const Step& step) {
  return {{StepKind::Measure, "measure", step.measure.has_value()},
          {StepKind::Torque, "torque", step.torque.has_value()},
          {StepKind::Hold, "hold", step.hold.has_value()},
          {StepKind::Wait, "wait_minutes", step.waitMinutes.has_value()}};
}

bool movesLedger(const Step& step, const std::vector<model::LedgerState>& states) {
  return std::any_of(step.ledger.begin(), step.ledger.end(), [&](const LedgerEffect& effect) {
    return std::find(states.begin(), states.end(), effect.to) != states.end();
  });
}

/// Steps that take off or put on leave their trace in the ledger.
bool ledgerFitsKind(const Step& step) {
  using enum model::LedgerState;
  switch (step.kind) {
    case StepKind::Remove:
      return movesLedger(step, {Off});
    case StepKind::Refit:
      return movesLedger(step, {HandTight, Torqued, Back});
    case StepKind::PutOn:
      return movesLedger(step, {On});
    case StepKind::TakeOff:
      return movesLedger(step, {TakenOff});
    default:
      return true;
  }
}

/// Every combination of words the facts of a hold's conditions can have, one after the other.
class Combinations {
 public:
  void addFactsOf(const Condition& condition) {
    for (const auto& [fact, words] : condition) {
      std::set<std::string>& values = m_values[fact];
      if (const auto known = wordsOfFact(fact)) {
        values.insert(known->begin(), known->end());
      } else {
        values.insert(words.begin(), words.end());
        values.insert(std::string{});  // seen otherwise, or not at all
      }
    }
  }
  std::size_t count() const {
    std::size_t product = 1;
    for (const auto& [fact, values] : m_values) {
      product = std::min(product * values.size(), kMostCombinations + 1);
    }
    return product;
  }
  Facts facts(std::size_t index) const {
    std::map<std::string, std::string> chosen;
    for (const auto& [fact, values] : m_values) {
      const auto step = static_cast<std::ptrdiff_t>(index % values.size());
      chosen[fact] = *std::next(values.begin(), step);
      index /= values.size();
    }
    return [chosen](const std::string& fact, std::optional<model::Side>) {
      const auto found = chosen.find(fact);
      return found == chosen.end() ? std::nullopt : std::optional(found->second);
    };
  }

 private:
  std::map<std::string, std::set<std::string>> m_values;
};

void checkStatementKeys(ObjectReader& in, const Hold& hold) {
  std::set<std::string> keys;
  for (const Statement& statement : hold.statements) {
    if (keys.insert(statement.key).second) continue;
    return refuse(in, "hold", "procedure.duplicate_word", {{"text", statement.key}});
  }
}

void checkStatementCount(ObjectReader& in, const Step& step, const Facts& facts) {
  if (!holds(step.when, facts, std::nullopt)) return;
  const auto& all = step.hold->statements;
  const auto asked = static_cast<std::size_t>(std::count_if(
      all.begin(), all.end(),
      [&](const Statement& statement) { return holds(statement.when, facts, std::nullopt); }));
  if (asked == 0) refuse(in, "hold", "procedure.no_statement");
  if (asked > kMostStatementsAtOnce) refuse(in, "hold", "procedure.too_many_statements");
}

Error stepProblem(std::string what, std::size_t index, const Step& step, std::string_view key) {
  return {ErrorCode::InvalidInput,
          std::move(what),
          "/steps/" + std::to_string(index) + "/" + std::string(key),
          {{"step", step.id}}};
}

}  // namespace

void checkStep(ObjectReader& in, const Step& step) {
  const std::string kind(wordOf(step.kind));
  for (const Block& block : blocksOf(step)) {
    if (block.kind == step.kind && !block.present) {
      return refuse(in, block.key, "procedure.block_missing", {{"kind", kind}});
    }
    if (block.kind != step.kind && block.present) {
      return refuse(in, block.key, "procedure.block_not_of_kind", {{"kind", kind}});
    }
  }
  if (!ledgerFitsKind(step)) refuse(in, "ledger", "procedure.ledger_missing", {{"kind", kind}});
  if (step.raisesVehicle && step.lowersVehicle)
    refuse(in, "lowers_vehicle", "procedure.raises_and_lowers");
}

void checkHold(ObjectReader& in, const Step& step) {
  checkStatementKeys(in, *step.hold);
  Combinations combinations;
  combinations.addFactsOf(step.when);
  for (const Statement& statement : step.hold->statements) {
    combinations.addFactsOf(statement.when);
  }
  const std::size_t count = combinations.count();
  if (count > kMostCombinations) return refuse(in, "hold", "procedure.too_many_conditions");
  for (std::size_t i = 0; i < count && in.ok(); ++i) {
    checkStatementCount(in, step, combinations.facts(i));
  }
}

std::optional<Error> checkSteps(const std::vector<Step>& steps) {
  std::set<std::string> earlier;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Step& step = steps[i];
    for (const std::string& need : step.needs) {
      if (earlier.contains(need)) continue;
      Error error = stepProblem("procedure.need_not_earlier", i, step, "needs");
      error.details.emplace_back("text", need);
      return error;
    }
    if (!earlier.insert(step.id).second)
      return stepProblem("procedure.duplicate_step", i, step, "id");
  }
  return std::nullopt;
}

}  // namespace sw::procedures
