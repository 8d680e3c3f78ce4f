// SPDX-License-Identifier: GPL-3.0-or-later
// What an undo leaves is compared with the state before the action, field by field: a path of its
// own, which knows nothing of how the undo was done.
#include <gmock/gmock.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/entry_json.h"
#include "shop_fixture.h"
#include "store/check_book.h"
#include "workshop/check_verdicts.h"
#include "workshop/last_action.h"
#include "workshop/step_status.h"

namespace sw::test {
namespace {

using model::Json;
using model::Side;
using workshop::JobState;

/// The first entry of a chain of corrections.
std::int64_t rootOf(const JobState& state, std::int64_t id) {
  const auto* entry = state.findEntry({id});
  return entry != nullptr && entry->replaces ? rootOf(state, entry->replaces->value) : id;
}

/// A valid fact with everything that is recorded of it. What is only given again gets new numbers
/// and, verdicts, a new time: references go by the root of their chain.
std::string factText(const JobState& state, const model::Entry& entry) {
  Json json = Json::object();
  json["kind"] = std::string(model::kindOf(entry.payload));
  json["run"] = entry.run ? entry.run->value : 0;
  json["step"] = entry.step;
  json["side"] = entry.side ? std::string(wordOf(*entry.side)) : "";
  json["by"] = entry.by ? entry.by->value : 0;
  json["fact"] = model::payloadJson(entry.payload);
  if (json["fact"].contains("series")) {
    json["fact"]["series"] = rootOf(state, json["fact"]["series"].get<std::int64_t>());
  }
  if (model::as<model::VerdictGiven>(entry) == nullptr) json["done_at"] = toIso(entry.doneAt);
  return json.dump();
}

std::vector<std::string> factsOf(const JobState& state) {
  std::vector<std::string> facts;
  for (const auto* entry : state.valid) facts.push_back(factText(state, *entry));
  std::sort(facts.begin(), facts.end());
  return facts;
}

/// The job as it is worked on: steps, ledger, packs and the readings in their order.
std::vector<std::string> standOf(const JobState& state, Timestamp now) {
  std::vector<std::string> lines;
  const auto steps = workshop::stepLines(state, now);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    lines.push_back(state.stepName(i) + ": " + std::string(wordOf(steps[i].status)));
  }
  for (const auto& item : state.ledger) {
    lines.push_back(item.item + ": " + std::string(wordOf(item.state)));
  }
  for (const auto& pack : state.packs) lines.push_back(pack.fact.shims);
  for (const auto& series : state.series) {
    std::string line = series.side ? std::string(wordOf(*series.side)) : "";
    for (const auto& reading : series.readings) line += " " + reading.fact.value.text();
    lines.push_back(line + (series.verdict ? " " + series.verdict->verdict : ""));
  }
  return lines;
}

class UndoTest : public testing::Test {
 protected:
  void SetUp() override {
    shop.setUp();
    shop.ok(R"({"do":"set_instrument","name":"big scale","type":"spring_scale",)"
            R"("graduation":"0.2 N","permissible_error":"0.2 N"})");
  }

  /// A minute later, as hands do it.
  workshop::Outcome act(const std::string& json) {
    shop.clock.advanceMilliseconds(60'000);
    return shop.ok(json);
  }
  void start(const std::string& procedure) {
    act(R"({"do":"start_procedure","procedure":")" + procedure + "\"}");
  }
  void allow(const std::string& step, const std::string& side = "left") {
    act(R"({"do":"override","rule":"order","step":")" + step + R"(","side":")" + side +
        R"(","why":"only this step matters here"})");
  }
  workshop::Outcome pull(const std::string& readings, const std::string& more = {}) {
    return act(R"({"do":"take_readings","step":"as-found-pull/pull_ahead","side":"left",)"
               R"("instrument":"big scale","readings":")" +
               readings + "\"" + more + "}");
  }
  /// As-found pulls may be taken on both sides.
  void readyToPull() {
    start("as-found-pull");
    for (const char* side : {"left", "right"}) allow("as-found-pull/pull_ahead", side);
  }
  std::string readingTyped(const std::string& number) {
    const auto state = shop.state();
    for (const auto& series : state.series) {
      for (const auto& reading : series.readings) {
        if (reading.fact.value.number == number) return std::to_string(reading.entry.value);
      }
    }
    ADD_FAILURE() << number;
    return "0";
  }

  /// Remembers the state as it is now: what the undo of the next action must bring back.
  void remember() { m_before.push_back(shop.state()); }
  /// One undo brings the state remembered last back, and nothing leaves the record.
  void expectUndone(const std::string& more = {}) {
    const auto stood = shop.state();
    shop.clock.advanceMilliseconds(60'000);
    const auto outcome = shop.ok(R"({"do":"undo")" + more + "}");
    EXPECT_TRUE(Shop::told(outcome, "undone"));
    expectAsRemembered(stood);
  }
  void expectAsRemembered(const JobState& stood) {
    const auto now = shop.state();
    const JobState before = std::move(m_before.back());
    m_before.pop_back();
    EXPECT_EQ(factsOf(now), factsOf(before));
    EXPECT_EQ(standOf(now, shop.clock.now()), standOf(before, shop.clock.now()));
    EXPECT_NE(factsOf(stood), factsOf(before)) << "nothing was there to undo";
    ASSERT_GT(now.entries.size(), stood.entries.size());
    for (std::size_t i = 0; i < stood.entries.size(); ++i) {
      EXPECT_EQ(model::toJson(*now.entries[i]), model::toJson(*stood.entries[i]));
    }
  }
  void expectNothingToUndo(const std::string& more = {}) {
    const auto next = shop.book->nextEntryId()->value;
    shop.refused(R"({"do":"undo")" + more + "}", "workshop.nothing_to_undo");
    EXPECT_EQ(shop.book->nextEntryId()->value, next);
  }
  void expectSoundBook() {
    const std::array<store::BookCheck, 1> more{&workshop::checkVerdicts};
    const auto report = store::checkBook(shop.path, shop.clock, more);
    ASSERT_TRUE(report) << report.error().key;
    EXPECT_TRUE(report->sound()) << report->summary().key << " "
                                 << (report->findings.empty() ? "" : report->findings.front().key);
  }
  static std::string named(const workshop::Outcome& outcome) {
    return R"(,"from":)" + std::to_string(outcome.entries.front().value) + R"(,"to":)" +
           std::to_string(outcome.entries.back().value);
  }

  Shop shop;

 private:
  std::vector<JobState> m_before;
};

TEST_F(UndoTest, ALineOfReadingsGoesWithTheMarkOfItsStep) {
  readyToPull();
  remember();
  pull("22 19.0 19.2 19.4");
  const auto state = shop.state();
  const auto step = state.findStep(0, "pull_ahead", Side::Left);
  ASSERT_TRUE(state.steps[*step].done());
  expectUndone();
  EXPECT_TRUE(shop.state().series.empty());
  expectSoundBook();
}

TEST_F(UndoTest, ReadingsThatContinueASeriesLeaveTheVerdictBefore) {
  readyToPull();
  pull("22 19.0 19.2 19.4");
  remember();
  pull("25.0");
  expectUndone();
  EXPECT_EQ(shop.state().series.front().verdict->used, 3);
  expectSoundBook();
}

TEST_F(UndoTest, TheRunThatFollowedFromAPullGoesWithIt) {
  start("fit-shims-and-pull");
  allow("fit-shims-and-pull/fit_pack");
  allow("fit-shims-and-pull/pull");
  act(R"({"do":"shim_pack","role":"fitted","step":"fit-shims-and-pull/fit_pack","side":"left",)"
      R"("shims":"0.50 + 0.25"})");
  remember();
  const auto outcome =
      act(R"({"do":"take_readings","step":"fit-shims-and-pull/pull","side":"left",)"
          R"("readings":"11 10.0 10.2 10.0","instrument":"big scale"})");
  ASSERT_TRUE(Shop::told(outcome, "next_pack"));
  ASSERT_EQ(shop.state().runs.size(), 2U);
  expectUndone();
  EXPECT_EQ(shop.state().runs.size(), 1U);
  expectSoundBook();
}

TEST_F(UndoTest, TheOldValueOfACorrectionStandsAgain) {
  readyToPull();
  pull("22 19.0 91.0 19.4");
  remember();
  act(R"({"do":"correct","entry":)" + readingTyped("91.0") +
      R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  expectUndone();
  EXPECT_EQ(shop.state().series.front().readings[2].fact.value.text(), "91.0 N");
  expectSoundBook();
}

TEST_F(UndoTest, ACorrectionOfASeriesIsUndoneWhole) {
  readyToPull();
  pull("22 19.0 19.2 19.4", R"(,"angle_within":"10 deg")");
  remember();
  const auto series = shop.state().series.front().id.value;
  act(R"({"do":"correct","entry":)" + std::to_string(series) +
      R"(,"reason":"typing_slip","field":"angle_within","value":"25 deg"})");
  expectUndone();
  expectSoundBook();
}

TEST_F(UndoTest, AMovedSeriesIsBackOnItsSideWithItsVerdict) {
  readyToPull();
  pull("22 19.0 19.2 19.4");
  remember();
  act(R"({"do":"move_series","series":)" + readingTyped("19.4") + "}");
  ASSERT_EQ(shop.state().series.front().side, Side::Right);
  expectUndone();
  const auto state = shop.state();
  ASSERT_EQ(state.series.size(), 1U);
  EXPECT_EQ(state.series.front().side, Side::Left);
  ASSERT_TRUE(state.series.front().verdict);
  EXPECT_EQ(state.series.front().verdict->verdict, "within");
  expectSoundBook();
}

TEST_F(UndoTest, AStepMarkGoesWithWhatItMovedInTheLedger) {
  start("wheels-off");
  remember();
  act(R"({"do":"do_step","step":"wheels-off/wheel_off","side":"left"})");
  ASSERT_EQ(shop.state().ledger.size(), 1U);
  remember();
  act(R"({"do":"do_step","step":"wheels-off/wheel_off","side":"right"})");
  expectUndone();
  ASSERT_EQ(shop.state().ledger.size(), 1U);
  expectUndone();
  EXPECT_TRUE(shop.state().ledger.empty());
}

TEST_F(UndoTest, ATorqueCheckGoesWithTheMarkAndTheLedger) {
  start("caliper-refit");
  allow("caliper-refit/caliper_on");
  allow("caliper-refit/caliper_torque");
  act(R"({"do":"do_step","step":"caliper-refit/caliper_on","side":"left"})");
  remember();
  act(R"({"do":"torque","step":"caliper-refit/caliper_torque","side":"left","wrench":"large"})");
  EXPECT_EQ(shop.state().ledger.front().state, model::LedgerState::Torqued);
  expectUndone();
  EXPECT_EQ(shop.state().ledger.front().state, model::LedgerState::HandTight);
  expectSoundBook();
}

TEST_F(UndoTest, AnAnswerAtAHoldOpensItAgain) {
  start("make-safe-and-lift");
  act(R"({"do":"do_step","step":"make-safe-and-lift/defer"})");
  act(R"({"do":"choose_support","support":"stands","step":"make-safe-and-lift/choose_support"})");
  for (const char* step : {"quiet", "chock", "lift_stands"}) {
    act(R"({"do":"do_step","step":"make-safe-and-lift/)" + std::string(step) + "\"}");
  }
  const auto answer = [&](const std::string& statement, const std::string& what) {
    return act(R"({"do":"answer","step":"make-safe-and-lift/support","statement":")" + statement +
               R"(","answer":")" + what + "\"}");
  };
  answer("stand_rating", "900 kg");
  answer("rear_chocks", "both_both_ways");
  remember();
  ASSERT_TRUE(Shop::told(answer("stand_push", "did_not_move"), "hold_passed"));
  ASSERT_TRUE(shop.state().vehicleUp);
  expectUndone();
  EXPECT_FALSE(shop.state().holds.front().passed());
  // A second answer to the same question: the first one stands again.
  answer("stand_push", "did_not_move");
  remember();
  answer("stand_push", "shifted");
  expectUndone();
  EXPECT_TRUE(shop.state().holds.front().passed());
}

TEST_F(UndoTest, UndoAfterUndoGoesBackStepByStep) {
  readyToPull();
  remember();
  pull("22 19.0 91.0 19.4");
  remember();
  act(R"({"do":"correct","entry":)" + readingTyped("91.0") +
      R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  remember();
  act(R"({"do":"move_series","series":)" + readingTyped("19.1") + "}");
  remember();
  act(R"({"do":"note","text":"left hub wet"})");
  for (int i = 0; i < 4; ++i) expectUndone();
  EXPECT_TRUE(shop.state().series.empty());
  expectSoundBook();
}

TEST_F(UndoTest, BackToTheOpeningAndNoFurther) {
  expectNothingToUndo();
  remember();
  act(R"({"do":"complaint","words":"shakes"})");
  remember();
  act(R"({"do":"start_plan","plan":"swivel-pull-only"})");
  expectUndone();
  expectUndone();
  expectNothingToUndo();
  const auto opened = shop.state().entries.front()->id.value;
  expectNothingToUndo(R"(,"from":)" + std::to_string(opened));
  expectNothingToUndo(R"(,"from":)" + std::to_string(opened + 1000));
}

TEST_F(UndoTest, ActionsWithinOneTickOfTheClockAreTakenBackOneByOne) {
  readyToPull();
  remember();
  shop.ok(R"({"do":"take_readings","step":"as-found-pull/pull_ahead","side":"left",)"
          R"("instrument":"big scale","readings":"22 19.0"})");
  remember();
  shop.ok(R"({"do":"take_readings","step":"as-found-pull/pull_ahead","side":"left",)"
          R"("instrument":"big scale","readings":"19.2 19.4"})");
  remember();
  shop.ok(R"({"do":"note","text":"left hub wet"})");
  for (int i = 0; i < 3; ++i) expectUndone();
  expectSoundBook();
}

TEST_F(UndoTest, AClosingIsNeverUndone) {
  act(R"({"do":"note","text":"left hub wet"})");
  act(R"({"do":"close","outcome":"closed_without_sign_off","reason":"owner took it home"})");
  EXPECT_TRUE(workshop::lastAction(shop.state()).empty());
  shop.refused(R"({"do":"undo"})", "workshop.job_closed");
  EXPECT_TRUE(shop.state().closed);
}

TEST_F(UndoTest, AnEarlierActionIsNamedByItsEntries) {
  readyToPull();
  const auto pulled = pull("22 19.0 19.2 19.4");
  act(R"({"do":"note","text":"left hub wet"})");
  const auto stood = shop.state();
  shop.clock.advanceMilliseconds(60'000);
  shop.ok(R"({"do":"undo")" + named(pulled) + "}");
  const auto now = shop.state();
  EXPECT_TRUE(now.series.empty());
  // All else is as it was: every fact of before but those of the pull.
  std::vector<std::string> others;
  for (const auto* entry : stood.valid) {
    const bool ofThePull =
        entry->id >= pulled.entries.front() && entry->id <= pulled.entries.back();
    if (!ofThePull) others.push_back(factText(stood, *entry));
  }
  std::sort(others.begin(), others.end());
  EXPECT_EQ(factsOf(now), others);
  expectNothingToUndo(named(pulled));
  expectSoundBook();
}

TEST_F(UndoTest, AnActionWhoseCorrectionWasUndoneIsTakenWhole) {
  readyToPull();
  pull("22 19.0 19.2 19.4");
  remember();
  const auto more = pull("91.0");
  const auto slip = readingTyped("91.0");
  remember();
  const auto corrected = act(R"({"do":"correct","entry":)" + slip +
                             R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  expectUndone(named(corrected));
  expectUndone(named(more));
  EXPECT_EQ(shop.state().series.front().readings.size(), 4U);
  expectSoundBook();
}

TEST_F(UndoTest, SeveralActionsFromOneEntryOn) {
  readyToPull();
  pull("22 19.0 91.0 19.4");
  remember();
  const auto first = act(R"({"do":"correct","entry":)" + readingTyped("91.0") +
                         R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  act(R"({"do":"correct","entry":)" + readingTyped("19.1") +
      R"(,"reason":"typing_slip","field":"value","value":"19.3"})");
  expectUndone(R"(,"from":)" + std::to_string(first.entries.front().value));
  EXPECT_EQ(shop.state().series.front().readings[2].fact.value.text(), "91.0 N");
  expectSoundBook();
}

TEST_F(UndoTest, WhatIsTakenBackIsNamedBefore) {
  act(R"({"do":"note","text":"left hub wet"})");
  const auto state = shop.state();
  const auto taken = workshop::lastAction(state);
  ASSERT_EQ(taken.size(), 1U);
  EXPECT_EQ(model::as<model::Note>(*taken.front())->text, "left hub wet");
  const auto outcome = act(R"({"do":"undo","reason_text":"wrong job"})");
  EXPECT_EQ(Shop::value(outcome, "undone", "kind"), "note");
  EXPECT_EQ(Shop::value(outcome, "undone", "count"), "1");
  EXPECT_EQ(shop.state().entries.back()->reasonText, "wrong job");
}

TEST_F(UndoTest, TheReasonOfAnUndoIsNotForCorrections) {
  act(R"({"do":"note","text":"left hub wet"})");
  const auto note = shop.state().entries.back()->id.value;
  shop.refused(R"({"do":"correct","entry":)" + std::to_string(note) +
                   R"(,"reason":"withdrawn","field":"text","value":"right hub wet"})",
               "json.not_one_of");
}

}  // namespace
}  // namespace sw::test
