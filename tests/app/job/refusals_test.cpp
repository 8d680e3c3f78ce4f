// SPDX-License-Identifier: GPL-3.0-or-later
// Generated from the procedure files: a complete job without one hold answer, one ledger end, one
// single-use part or one safety reading is refused by name; with all of them it is accepted.
#include <algorithm>

#include "complete_job.h"

namespace sw::test {
namespace {

using model::Entry;

/// The job's facts with withdrawals of some of them appended, derived afresh.
class WithoutOne {
 public:
  WithoutOne(Shop& shop, const workshop::JobState& complete) : m_shop(shop), m_complete(complete) {}

  std::vector<workshop::Refusal> refusals(model::EntryId entry) {
    return refusals(std::vector{entry});
  }
  std::vector<workshop::Refusal> refusals(const std::vector<model::EntryId>& without) {
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

 private:
  Shop& m_shop;
  const workshop::JobState& m_complete;
};

bool names(const std::vector<workshop::Refusal>& refusals, const std::string& key,
           const std::string& step, const std::string& what = {}) {
  return std::any_of(refusals.begin(), refusals.end(), [&](const auto& refusal) {
    return refusal.key == key && refusal.step == step &&
           refusal.what.find(what) != std::string::npos;
  });
}

class Refusals : public testing::TestWithParam<const char*> {
 protected:
  void SetUp() override {
    shop.setUp(GetParam());
    app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 3);
    workWholePlan(shop, mechanic, situation(), "swivel-preload");
    complete = shop.state();
    const auto refusals = workshop::againstSignOff(complete);
    ASSERT_TRUE(refusals.empty()) << listed(refusals);
  }

  template <class T>
  std::optional<model::EntryId> newest(std::size_t step) {
    std::optional<model::EntryId> found;
    for (const Entry* entry : complete.valid) {
      const auto& view = complete.steps[step];
      if (model::as<T>(*entry) != nullptr && entry->run == complete.runs[view.run].id &&
          entry->step == view.step->id && entry->side == view.side) {
        found = entry->id;
      }
    }
    return found;
  }

  /// Every answer to the statement: on another day it was given again.
  std::vector<model::EntryId> answersOf(std::size_t step, const std::string& statement) {
    std::vector<model::EntryId> answers;
    for (const Entry* entry : complete.valid) {
      const auto* answer = model::as<model::HoldAnswer>(*entry);
      const auto& view = complete.steps[step];
      if (answer != nullptr && answer->statement == statement &&
          entry->run == complete.runs[view.run].id && entry->step == view.step->id) {
        answers.push_back(entry->id);
      }
    }
    EXPECT_FALSE(answers.empty()) << statement;
    return answers;
  }

  /// Every move that ended the item: wheel nuts are torqued again after the drive.
  std::vector<model::EntryId> endsOf(const workshop::LedgerView& item) {
    std::vector<model::EntryId> ends;
    for (const Entry* entry : complete.valid) {
      const auto* move = model::as<model::LedgerMove>(*entry);
      if (move == nullptr || move->item != item.item || entry->side != item.side) continue;
      const bool open = move->state == model::LedgerState::Off ||
                        move->state == model::LedgerState::On ||
                        move->state == model::LedgerState::HandTight;
      if (!open) ends.push_back(entry->id);
    }
    return ends;
  }

  Shop shop;
  workshop::JobState complete;
};

TEST_P(Refusals, EveryStatementOfEveryHold) {
  WithoutOne without(shop, complete);
  std::size_t cases = 0;
  for (const auto& hold : complete.holds) {
    if (complete.steps[hold.step].step->optional) continue;
    for (const auto& statement : hold.statements) {
      const auto refusals = without.refusals(answersOf(hold.step, statement.statement->key));
      EXPECT_TRUE(names(refusals, "hold_open", complete.stepName(hold.step)))
          << statement.statement->key << "\n"
          << listed(refusals);
      ++cases;
    }
  }
  // Support, wheel nuts twice, brakes and steering, walk-round, go / no-go: three statements each.
  EXPECT_GE(cases, 5U * 3U);
}

TEST_P(Refusals, EveryLedgerItem) {
  WithoutOne without(shop, complete);
  std::size_t cases = 0;
  for (const auto& item : complete.ledger) {
    const auto refusals = without.refusals(endsOf(item));
    EXPECT_TRUE(std::any_of(refusals.begin(), refusals.end(),
                            [&](const auto& refusal) {
                              return refusal.key == "ledger" && !refusal.step.empty() &&
                                     refusal.what.starts_with(item.name);
                            }))
        << item.item << "\n"
        << listed(refusals);
    ++cases;
  }
  EXPECT_GE(cases, 15U);
}

TEST_P(Refusals, EverySingleUsePart) {
  WithoutOne without(shop, complete);
  std::size_t cases = 0;
  for (std::size_t i = 0; i < complete.steps.size(); ++i) {
    const auto& view = complete.steps[i];
    const auto facts = workshop::factsOf(complete, complete.runs[view.run].fact.round);
    for (const auto& part : view.step->parts) {
      if (!part.singleUse || view.superseded) continue;
      if (!procedures::holds(part.when, facts, view.side)) continue;
      std::optional<model::EntryId> used;
      for (const Entry* entry : complete.valid) {
        const auto* fact = model::as<model::PartUsed>(*entry);
        if (fact != nullptr && fact->key == part.key && entry->side == view.side) used = entry->id;
      }
      ASSERT_TRUE(used) << part.key;
      EXPECT_TRUE(names(without.refusals(*used), "single_use", complete.stepName(i), part.name))
          << part.key;
      ++cases;
    }
  }
  EXPECT_GE(cases, 3U);  // both track-rod pins and the drag-link pin
}

TEST_P(Refusals, EverySafetyReading) {
  WithoutOne without(shop, complete);
  std::size_t cases = 0;
  for (std::size_t i = 0; i < complete.steps.size(); ++i) {
    const auto& view = complete.steps[i];
    if (!view.step->measure || !view.step->measure->safety || view.superseded) continue;
    const auto series = newest<model::Series>(i);
    ASSERT_TRUE(series) << complete.stepName(i);
    EXPECT_TRUE(names(without.refusals(*series), "not_proved", complete.stepName(i)));
    const auto verdict = newest<model::VerdictGiven>(i);
    ASSERT_TRUE(verdict);
    EXPECT_TRUE(names(without.refusals(*verdict), "not_proved", complete.stepName(i)));
    ++cases;
  }
  EXPECT_GE(cases, 2U);  // the pull of each side
}

TEST_P(Refusals, EveryStepThatIsNotOptional) {
  WithoutOne without(shop, complete);
  std::size_t cases = 0;
  for (std::size_t i = 0; i < complete.steps.size(); ++i) {
    const auto& view = complete.steps[i];
    if (!view.mark || view.step->optional || view.superseded) continue;
    EXPECT_TRUE(names(without.refusals(*view.mark), "step_open", complete.stepName(i)))
        << complete.stepName(i);
    ++cases;
  }
  EXPECT_GE(cases, 60U);
}

TEST_P(Refusals, TheCommandItselfRefusesAndThenAccepts) {
  const auto& answer = complete.holds.back().statements.back();
  shop.ok(R"({"do":"withdraw","entry":)" + std::to_string(answer.entry->value) + "}");
  const auto error = shop.refused(R"({"do":"sign_off"})", "workshop.sign_off_refused");
  EXPECT_TRUE(error.detail("refusal").starts_with("hold_open|"));
  const auto state = shop.state();
  const auto& step = state.steps[state.holds.back().step];
  shop.ok(R"({"do":"answer","step":")" + state.runs[step.run].fact.procedure + "/" + step.step->id +
          R"(","statement":")" + answer.statement->key + R"(","answer":")" + answer.answer->answer +
          "\"}");
  shop.ok(R"({"do":"sign_off"})");
}

INSTANTIATE_TEST_SUITE_P(Axles, Refusals,
                         testing::Values("", R"(,"shim_layout":"inner","lubricant":"oil",)"
                                             R"("steering_arm_on_cap":"yes")"));

TEST(RefusalsByVerdict, UndecidedNeverPassesAndAnOverrideIsPrintedAsNotProved) {
  Shop shop;
  shop.setUp();
  auto what = situation();
  what.left.interferenceMillimetres = 0.402;  // close to the lower limit: undecided
  what.scatterNewtons = 0.45;
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 21);
  workWholePlan(shop, mechanic, what, "swivel-preload");
  auto state = shop.state();
  const auto run = state.newestRun("fit-shims-and-pull", model::Side::Left);
  ASSERT_TRUE(run);
  const auto step = state.findStep(*run, "pull", model::Side::Left);
  ASSERT_TRUE(step);
  const auto refusals = workshop::againstSignOff(state);
  ASSERT_TRUE(names(refusals, "not_proved", state.stepName(*step), "undecided"))
      << listed(refusals);
  shop.ok(R"({"do":"override","rule":"not_proved","step":"fit-shims-and-pull/pull","side":"left",)"
          R"("why":"the scale is too coarse, owner informed"})");
  shop.ok(R"({"do":"sign_off"})");
}

}  // namespace
}  // namespace sw::test
