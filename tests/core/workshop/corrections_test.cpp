// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop_fixture.h"
#include "store/check_book.h"
#include "workshop/check_verdicts.h"

namespace sw::test {
namespace {

class Corrections : public testing::Test {
 protected:
  void SetUp() override {
    shop.setUp();
    addBigScale();
    shop.ok(R"({"do":"start_procedure","procedure":"as-found-pull"})");
    for (const char* side : {"left", "right"}) {
      shop.ok(std::string(R"({"do":"override","rule":"order","step":"as-found-pull/pull_ahead",)") +
              R"("side":")" + side + R"(","why":"only the readings matter here"})");
    }
    shop.ok(R"({"do":"take_readings","step":"as-found-pull/pull_ahead","side":"left",)"
            R"("readings":"22 19.0 91.0 19.4","instrument":"big scale"})");
  }

  void addBigScale() {
    shop.ok(R"({"do":"set_instrument","name":"big scale","type":"spring_scale",)"
            R"("graduation":"0.2 N","permissible_error":"0.2 N"})");
  }

  /// The entry id of the reading typed as `number`.
  std::int64_t readingTyped(const std::string& number) {
    const auto state = shop.state();
    for (const auto& reading : state.series.front().readings) {
      if (reading.fact.value.number == number) return reading.entry.value;
    }
    ADD_FAILURE() << number;
    return 0;
  }

  void expectSoundBook() {
    const std::array<store::BookCheck, 1> more{&workshop::checkVerdicts};
    const auto report = store::checkBook(shop.path, shop.clock, more);
    ASSERT_TRUE(report) << report.error().key;
    EXPECT_TRUE(report->sound()) << report->summary().key << " "
                                 << (report->findings.empty() ? "" : report->findings.front().key);
  }

  Shop shop;
};

TEST_F(Corrections, ATypingSlipBecomesAChainAndANewVerdict) {
  const auto slip = readingTyped("91.0");
  const auto outcome = shop.ok(R"({"do":"correct","entry":)" + std::to_string(slip) +
                               R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  EXPECT_EQ(Shop::value(outcome, "verdict", "verdict"), "within");
  const auto chain = shop.book->history({slip});
  ASSERT_TRUE(chain);
  ASSERT_EQ(chain->size(), 2U);
  EXPECT_EQ(std::get<model::Reading>(chain->front().payload).value.number, "91.0");
  EXPECT_EQ(std::get<model::Reading>(chain->back().payload).value.number, "19.1");
  EXPECT_EQ(chain->back().reason, model::CorrectionReason::TypingSlip);
  // The corrected pull keeps its place in the series.
  const auto state = shop.state();
  EXPECT_EQ(state.series.front().readings[2].fact.value.number, "19.1");
  EXPECT_TRUE(state.series.front().readings[2].corrected);
  expectSoundBook();
}

TEST_F(Corrections, AWrongUnitIsCorrectedAsTyped) {
  const auto slip = readingTyped("91.0");
  shop.ok(R"({"do":"correct","entry":)" + std::to_string(slip) +
          R"(,"reason":"wrong_unit","field":"value","value":"1.95 kgf"})");
  const auto state = shop.state();
  EXPECT_EQ(state.series.front().readings[2].fact.value.text(), "1.95 kgf");
}

TEST_F(Corrections, ABadPullIsLeftOutAndStaysOnRecord) {
  const auto slip = readingTyped("91.0");
  shop.ok(R"({"do":"correct","entry":)" + std::to_string(slip) +
          R"(,"reason":"bad_pull","field":"use","value":"not_used"})");
  const auto state = shop.state();
  EXPECT_EQ(state.series.front().readings.size(), 4U);
  EXPECT_EQ(state.series.front().usedCount(), 2U);
  EXPECT_EQ(state.series.front().verdict->verdict, "provisional");
  expectSoundBook();
}

TEST_F(Corrections, AWholeSeriesMovesInOneAction) {
  const auto series = shop.state().series.front().id;
  const auto outcome =
      shop.ok(R"({"do":"move_series","series":)" + std::to_string(series.value) + "}");
  EXPECT_TRUE(Shop::told(outcome, "series_moved"));
  const auto state = shop.state();
  ASSERT_EQ(state.series.size(), 1U);
  EXPECT_EQ(state.series.front().side, model::Side::Right);
  EXPECT_EQ(state.series.front().readings.size(), 4U);
  ASSERT_TRUE(state.series.front().verdict.has_value());
  // Every entry of the move is in one transaction and each old one stays on record.
  std::size_t moved = 0;
  for (const auto& entry : state.entries) {
    if (entry->reason == model::CorrectionReason::WrongSide) ++moved;
  }
  EXPECT_EQ(moved, 1U + 4U + 1U);  // the series, its four pulls, the verdict that went
  expectSoundBook();
}

TEST_F(Corrections, ASeriesIsFoundByAnyOfItsReadings) {
  const auto reading = readingTyped("19.4");
  shop.ok(R"({"do":"move_series","series":)" + std::to_string(reading) + "}");
  EXPECT_EQ(shop.state().series.front().side, model::Side::Right);
}

TEST_F(Corrections, UndoIsAWithdrawalAndTheVerdictFollows) {
  const auto reading = readingTyped("91.0");
  shop.ok(R"({"do":"withdraw","entry":)" + std::to_string(reading) + "}");
  const auto state = shop.state();
  EXPECT_EQ(state.series.front().readings.size(), 3U);
  EXPECT_EQ(state.series.front().verdict->verdict, "provisional");
  expectSoundBook();
}

TEST_F(Corrections, AnEntryIsReplacedOnce) {
  const std::string slip = std::to_string(readingTyped("91.0"));
  shop.ok(R"({"do":"correct","entry":)" + slip +
          R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  shop.refused(R"({"do":"correct","entry":)" + slip +
                   R"(,"reason":"typing_slip","field":"value","value":"19.2"})",
               "workshop.already_replaced");
}

TEST_F(Corrections, ACorrectionThatChangesNothingLeavesNoTrace) {
  const auto before = shop.book->nextEntryId()->value;
  shop.refused(R"({"do":"correct","entry":)" + std::to_string(readingTyped("91.0")) +
                   R"(,"reason":"other","field":"value","value":"91.0 N"})",
               "workshop.nothing_changes");
  EXPECT_EQ(shop.book->nextEntryId()->value, before);
}

TEST_F(Corrections, VerdictsAndAnswersAreNotTypedOver) {
  const auto state = shop.state();
  const auto verdict = state.series.front().verdictEntry->value;
  shop.refused(R"({"do":"correct","entry":)" + std::to_string(verdict) +
                   R"(,"reason":"other","field":"verdict","value":"within"})",
               "workshop.not_corrected_so");
  shop.refused(R"({"do":"withdraw","entry":)" + std::to_string(verdict) + "}",
               "workshop.not_withdrawn_so");
}

TEST_F(Corrections, AfterClosingTheRecordCanStillBeCorrected) {
  shop.ok(R"({"do":"close","outcome":"closed_without_sign_off","reason":"owner took it home"})");
  shop.refused(R"({"do":"labour","time":"1 h"})", "workshop.job_closed");
  shop.ok(R"({"do":"correct","entry":)" + std::to_string(readingTyped("91.0")) +
          R"(,"reason":"typing_slip","field":"value","value":"19.1"})");
  EXPECT_TRUE(shop.state().closed.has_value());
}

TEST_F(Corrections, UndoingAStepPutsTheLedgerBack) {
  shop.ok(R"({"do":"start_procedure","procedure":"wheels-off"})");
  shop.ok(R"({"do":"do_step","step":"wheels-off/wheel_off","side":"left"})");
  auto state = shop.state();
  ASSERT_EQ(state.ledger.size(), 1U);
  ASSERT_EQ(state.ledger.front().state, model::LedgerState::Off);
  const auto step = state.findStep(state.runs.size() - 1, "wheel_off", model::Side::Left);
  ASSERT_TRUE(step);
  shop.ok(R"({"do":"withdraw","entry":)" + std::to_string(state.steps[*step].mark->value) + "}");
  EXPECT_TRUE(shop.state().ledger.empty());
}

}  // namespace
}  // namespace sw::test
