// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <algorithm>
#include <set>

#include "shop_fixture.h"

// The checks that find a cause are each worked alone, from the first step to the last, by commands.

namespace sw::test {
namespace {

using model::Side;
using procedures::Step;

std::vector<std::string> checkProcedures() {
  std::vector<std::string> ids;
  const auto library = procedures::Library::load(std::string(SW_SOURCE_DIR) + "/resources");
  for (const auto& procedure : library.procedures()) {
    if (procedure.id.starts_with("check-")) ids.push_back(procedure.id);
  }
  return ids;
}

/// Which of the offered words is answered: the first stands for nothing out of place.
enum class Answer { First, Second };

std::string nameOf(const testing::TestParamInfo<std::string>& row) {
  std::string name = row.param;
  std::erase(name, '-');
  return name;
}

class CheckRuns : public testing::TestWithParam<std::string> {
 protected:
  void SetUp() override {
    shop.setUp();
    shop.ok(R"({"do":"start_procedure","procedure":")" + GetParam() + "\"}");
  }

  /// Every step that is offered, in its order, until none is left; optional readings are left out,
  /// so that the check must come to its end without them.
  void workThrough(Answer answer) {
    std::set<std::string> worked;
    for (bool more = true; more;) {
      more = false;
      const auto state = shop.state();
      for (std::size_t i = 0; i < state.steps.size() && !more; ++i) {
        if (!worked.insert(state.stepName(i)).second) continue;
        more = true;
        if (leftOut(*state.steps[i].step)) continue;
        workStep(*state.steps[i].step, state.steps[i].side, answer);
      }
    }
  }

  std::vector<std::string> openSteps() {
    std::vector<std::string> open;
    const auto state = shop.state();
    for (std::size_t i = 0; i < state.steps.size(); ++i) {
      if (!state.steps[i].done() && !leftOut(*state.steps[i].step))
        open.push_back(state.stepName(i));
    }
    return open;
  }

  static bool leftOut(const Step& step) { return step.optional && step.measure; }

  std::size_t offered(const std::string& step) {
    const auto state = shop.state();
    return static_cast<std::size_t>(
        std::count_if(state.steps.begin(), state.steps.end(),
                      [&](const auto& view) { return view.step->id == step; }));
  }

  Shop shop;

 private:
  void send(const Step& step, std::optional<Side> side, const std::string& rest) {
    std::string line = "{" + rest + R"(,"step":")" + GetParam() + "/" + step.id + "\"";
    if (side) line += R"(,"side":")" + std::string(wordOf(*side)) + "\"";
    shop.ok(line + "}");
  }

  void workStep(const Step& step, std::optional<Side> side, Answer answer) {
    for (const auto& question : step.observe) {
      const auto& word = question.choices.at(answer == Answer::First ? 0 : 1).word;
      send(step, side, R"("do":"observe","key":")" + question.key + R"(","value":")" + word + "\"");
    }
    if (step.measure) return read(step, side);
    if (step.torque) return send(step, side, R"("do":"torque","wrench":"large")");
    if (step.observe.empty()) send(step, side, R"("do":"do_step")");
  }

  void read(const Step& step, std::optional<Side> side) {
    const bool pressure = step.measure->quantity == QuantityKind::Pressure;
    const bool rule = step.measure->instruments.front() == model::InstrumentKind::SteelRule;
    const std::string one = pressure ? "2.1 bar" : "2 mm";
    const std::string instrument = pressure ? "gauge" : rule ? "rule" : "dial";
    std::string all;
    for (std::int64_t i = 0; i < step.measure->planned; ++i) all += one + " ";
    all.pop_back();
    send(step, side,
         R"("do":"take_readings","instrument":")" + instrument + R"(","readings":")" + all + "\"");
  }
};

// What was put on or taken off for the check is as it was before.
TEST_P(CheckRuns, ComeToTheirEndAndLeaveNothingOffOrOn) {
  workThrough(Answer::First);
  EXPECT_THAT(openSteps(), testing::IsEmpty());
  for (const auto& item : shop.state().ledger) {
    const auto end = item.type == model::LedgerKind::PutOn ? model::LedgerState::TakenOff
                                                           : model::LedgerState::Torqued;
    EXPECT_EQ(item.state, end) << item.item;
  }
}

INSTANTIATE_TEST_SUITE_P(Procedures, CheckRuns, testing::ValuesIn(checkProcedures()), nameOf);

class ChecksWithFaults : public CheckRuns {};

TEST_P(ChecksWithFaults, ComeToTheirEndToo) {
  workThrough(Answer::Second);
  EXPECT_THAT(openSteps(), testing::IsEmpty());
}

// Those in which a fault calls for another step.
INSTANTIATE_TEST_SUITE_P(Procedures, ChecksWithFaults,
                         testing::Values("check-walk-round", "check-brake-drag", "check-toe"),
                         nameOf);

class WalkRound : public CheckRuns {};

TEST_P(WalkRound, SaysNotToDriveOnlyWhereSomethingWasFoundOrNotSeen) {
  workThrough(Answer::First);
  EXPECT_EQ(offered("do_not_drive"), 0U);
  for (const char* word : {"fault", "not_all_seen"}) {
    shop.ok(R"({"do":"observe","step":"check-walk-round/outcome","key":"walk_outcome","value":")" +
            std::string(word) + "\"}");
    EXPECT_EQ(offered("do_not_drive"), 1U) << word;
  }
}

INSTANTIATE_TEST_SUITE_P(Procedure, WalkRound, testing::Values("check-walk-round"), nameOf);

class BrakeDrag : public CheckRuns {};

TEST_P(BrakeDrag, LooksForWhatHoldsOnlyTheWheelThatDrags) {
  EXPECT_EQ(offered("slides"), 0U);
  workThrough(Answer::Second);
  EXPECT_EQ(offered("slides"), 2U);
}

INSTANTIATE_TEST_SUITE_P(Procedure, BrakeDrag, testing::Values("check-brake-drag"), nameOf);

}  // namespace
}  // namespace sw::test
