// SPDX-License-Identifier: GPL-3.0-or-later
#include "finished_job.h"

#include <algorithm>

namespace sw::test {

namespace {

using model::Entry;

bool isOpen(model::LedgerState state) {
  return state == model::LedgerState::Off || state == model::LedgerState::On ||
         state == model::LedgerState::HandTight;
}

}  // namespace

FinishedJob::FinishedJob(Shop& shop) : m_shop(shop), m_complete(shop.state()) {
  const auto against = workshop::againstSignOff(m_complete);
  EXPECT_TRUE(against.empty()) << listed(against);
}

/// The job's facts with withdrawals of some of them appended, derived afresh.
std::vector<workshop::Refusal> FinishedJob::refusals(const std::vector<model::EntryId>& without) {
  auto entries = m_complete.entries;
  for (const model::EntryId entry : without) {
    Entry withdrawal;
    withdrawal.id = {entries.back()->id.value + 1};
    withdrawal.job = entries.back()->job;
    withdrawal.replaces = entry;
    withdrawal.payload = model::Withdrawal{};
    withdrawal.doneAt = withdrawal.enteredAt = m_shop.clock.now();
    entries.push_back(std::make_shared<const Entry>(std::move(withdrawal)));
  }
  const auto lookup = [&](const std::string& hash) {
    for (const auto& run : m_complete.runs) {
      if (run.fact.hash == hash) return run.procedure;
    }
    return std::shared_ptr<const procedures::Procedure>{};
  };
  const auto shopNow = m_shop.workshop->shop();
  auto state = workshop::deriveJob(std::move(entries), **shopNow, lookup, m_shop.clock.now());
  EXPECT_TRUE(state);
  return state ? workshop::againstSignOff(*state) : std::vector<workshop::Refusal>{};
}

template <class T>
std::optional<model::EntryId> FinishedJob::newest(std::size_t step) const {
  std::optional<model::EntryId> found;
  for (const Entry* entry : m_complete.valid) {
    if (model::as<T>(*entry) != nullptr && m_complete.belongsTo(*entry, step)) found = entry->id;
  }
  return found;
}

/// Every answer to the statement: on another day it was given again.
std::vector<model::EntryId> FinishedJob::answersOf(std::size_t step,
                                                   const std::string& statement) const {
  std::vector<model::EntryId> answers;
  for (const Entry* entry : m_complete.valid) {
    const auto* answer = model::as<model::HoldAnswer>(*entry);
    if (answer != nullptr && answer->statement == statement && m_complete.belongsTo(*entry, step)) {
      answers.push_back(entry->id);
    }
  }
  EXPECT_FALSE(answers.empty()) << statement;
  return answers;
}

/// Every move that ended the item: wheel nuts are torqued again after the drive.
std::vector<model::EntryId> FinishedJob::endsOf(const workshop::LedgerView& item) const {
  std::vector<model::EntryId> ends;
  for (const Entry* entry : m_complete.valid) {
    const auto* move = model::as<model::LedgerMove>(*entry);
    if (move == nullptr || move->item != item.item || entry->side != item.side) continue;
    if (!isOpen(move->state)) ends.push_back(entry->id);
  }
  return ends;
}

std::size_t FinishedJob::missEveryStatement() {
  std::size_t cases = 0;
  for (const auto& hold : m_complete.holds) {
    if (m_complete.steps[hold.step].step->optional || m_complete.steps[hold.step].superseded) {
      continue;
    }
    for (const auto& statement : hold.statements) {
      const auto against = refusals(answersOf(hold.step, statement.statement->key));
      EXPECT_TRUE(names(against, "hold_open", m_complete.stepName(hold.step)))
          << statement.statement->key << "\n"
          << listed(against);
      ++cases;
    }
  }
  return cases;
}

std::size_t FinishedJob::missEveryLedgerItem() {
  for (const auto& item : m_complete.ledger) {
    const auto against = refusals(endsOf(item));
    EXPECT_TRUE(std::any_of(against.begin(), against.end(),
                            [&](const auto& refusal) {
                              return refusal.key == "ledger" && !refusal.step.empty() &&
                                     refusal.what.starts_with(item.name);
                            }))
        << item.item << "\n"
        << listed(against);
  }
  return m_complete.ledger.size();
}

std::size_t FinishedJob::missEverySingleUsePart() {
  std::size_t cases = 0;
  for (std::size_t i = 0; i < m_complete.steps.size(); ++i) {
    const auto& view = m_complete.steps[i];
    const auto facts = workshop::factsOf(m_complete, m_complete.runs[view.run].fact.round);
    for (const auto& part : view.step->parts) {
      if (!part.singleUse || view.superseded) continue;
      if (!procedures::holds(part.when, facts, view.side)) continue;
      std::optional<model::EntryId> used;
      for (const Entry* entry : m_complete.valid) {
        const auto* fact = model::as<model::PartUsed>(*entry);
        if (fact != nullptr && fact->key == part.key && entry->side == view.side) used = entry->id;
      }
      EXPECT_TRUE(used) << part.key;
      if (!used) continue;
      EXPECT_TRUE(names(refusals({*used}), "single_use", m_complete.stepName(i), part.name))
          << part.key;
      ++cases;
    }
  }
  return cases;
}

std::size_t FinishedJob::missEverySafetyReading() {
  std::size_t cases = 0;
  for (std::size_t i = 0; i < m_complete.steps.size(); ++i) {
    const auto& view = m_complete.steps[i];
    if (!view.step->measure || !view.step->measure->safety || view.superseded) continue;
    const std::string step = m_complete.stepName(i);
    const auto series = newest<model::Series>(i);
    const auto verdict = newest<model::VerdictGiven>(i);
    EXPECT_TRUE(series && verdict) << step;
    if (!series || !verdict) continue;
    EXPECT_TRUE(names(refusals({*series}), "not_proved", step));
    EXPECT_TRUE(names(refusals({*verdict}), "not_proved", step));
    ++cases;
  }
  return cases;
}

std::size_t FinishedJob::missEveryStep() {
  std::size_t cases = 0;
  for (std::size_t i = 0; i < m_complete.steps.size(); ++i) {
    const auto& view = m_complete.steps[i];
    if (!view.mark || view.step->optional || view.superseded) continue;
    EXPECT_TRUE(names(refusals({*view.mark}), "step_open", m_complete.stepName(i)))
        << m_complete.stepName(i);
    ++cases;
  }
  return cases;
}

bool names(const std::vector<workshop::Refusal>& refusals, const std::string& key,
           const std::string& step, const std::string& what) {
  return std::any_of(refusals.begin(), refusals.end(), [&](const auto& refusal) {
    return refusal.key == key && refusal.step == step &&
           refusal.what.find(what) != std::string::npos;
  });
}

std::string listed(const std::vector<workshop::Refusal>& refusals) {
  std::string text;
  for (const auto& refusal : refusals) {
    text += refusal.key + "|" + refusal.step + "|" + refusal.what + "\n";
  }
  return text;
}

}  // namespace sw::test
