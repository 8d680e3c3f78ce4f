// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/procedure.h"
#include <gmock/gmock.h>

#include "sample.h"

// What a sound file says is what the structs hold. The file format is our own: the expectations
// here are written from its description, one field at a time.

namespace sw::procedures {
namespace {

const std::string kMeasureStep = R"({
  "id": "pull", "kind": "measure", "side": "each", "title": "Pull", "text": "How.",
  "caution": "Mind the toes.", "needs": [], "minutes": 6.5,
  "tools": [{"name": "Spring scale", "instead": ["Luggage scale", "Weights and a pulley"]}],
  "parts": [{"key": "split_pin", "name": "Split pin", "quantity": 2, "single_use": true,
             "when": {"drag_link_fixes_to": ["steering_arm"]}}],
  "consumables": [{"name": "Grease", "amount": "a little"}],
  "needs_two": {"one_person": "Film the scale."},
  "when": {"swivel_bearing": ["taper", "bush"]},
  "ledger": [{"item": "wire", "name": "Wire", "type": "put_on", "to": "on"}],
  "measure": {"quantity": "force", "limit": "swivel.pull", "planned": 5, "settling": 1,
              "state": {"seal": "off", "rods": "on", "damper": "off", "sealant": "wet",
                        "grease": "fresh", "movement": "steady", "position": "left_15"},
              "angle_within": "10 deg", "instruments": ["spring_scale", "other"],
              "safety": true, "drives_rounds": true},
  "observe": [{"key": "feel", "ask": "How does it turn?",
               "choices": [{"word": "smooth", "text": "Smooth"},
                           {"word": "gritty", "text": "Gritty", "means": "worn"}]}],
  "road_test": {"when": "before"}, "shim_pack": {"role": "fitted"},
  "raises_vehicle": true, "optional": true, "bench": ["shim-pack", "starting-force"]})";

class MeasureStep : public testing::Test {
 protected:
  void SetUp() override {
    const auto procedure = read(kMeasureStep);
    ASSERT_TRUE(procedure.has_value()) << procedure.error().key << " " << procedure.error().field;
    step = procedure->steps.at(0);
  }
  Step step;
};

TEST_F(MeasureStep, WordsAndPeople) {
  EXPECT_EQ(step.id, "pull");
  EXPECT_EQ(step.kind, StepKind::Measure);
  EXPECT_EQ(step.side, StepSide::Each);
  EXPECT_EQ(step.title, "Pull");
  EXPECT_EQ(step.text, "How.");
  EXPECT_EQ(step.caution, "Mind the toes.");
  EXPECT_TRUE(step.needs.empty());
  EXPECT_EQ(step.minutes, 6.5);
  EXPECT_TRUE(step.needsTwo);
  EXPECT_EQ(step.onePerson, "Film the scale.");
  EXPECT_TRUE(step.raisesVehicle);
  EXPECT_FALSE(step.lowersVehicle);
  EXPECT_TRUE(step.optional);
}

TEST_F(MeasureStep, ToolsPartsAndLedger) {
  ASSERT_EQ(step.tools.size(), 1U);
  EXPECT_EQ(step.tools[0].name, "Spring scale");
  EXPECT_THAT(step.tools[0].instead, testing::ElementsAre("Luggage scale", "Weights and a pulley"));
  ASSERT_EQ(step.parts.size(), 1U);
  EXPECT_EQ(step.parts[0].key, "split_pin");
  EXPECT_EQ(step.parts[0].quantity, 2);
  EXPECT_TRUE(step.parts[0].singleUse);
  EXPECT_EQ(step.parts[0].when, (Condition{{"drag_link_fixes_to", {"steering_arm"}}}));
  ASSERT_EQ(step.consumables.size(), 1U);
  EXPECT_EQ(step.consumables[0].amount, "a little");
  ASSERT_EQ(step.ledger.size(), 1U);
  EXPECT_EQ(step.ledger[0].type, model::LedgerKind::PutOn);
  EXPECT_EQ(step.ledger[0].to, model::LedgerState::On);
  EXPECT_FALSE(step.ledger[0].fastened);
  EXPECT_EQ(step.when, (Condition{{"swivel_bearing", {"taper", "bush"}}}));
}

TEST_F(MeasureStep, MeasureAndState) {
  ASSERT_TRUE(step.measure && step.measure->state);
  EXPECT_EQ(step.measure->quantity, QuantityKind::Force);
  EXPECT_EQ(step.measure->limit, "swivel.pull");
  EXPECT_EQ(step.measure->planned, 5);
  EXPECT_EQ(step.measure->settling, 1);
  EXPECT_EQ(step.measure->angleWithin, "10 deg");
  EXPECT_THAT(step.measure->instruments, testing::ElementsAre(model::InstrumentKind::SpringScale,
                                                              model::InstrumentKind::Other));
  EXPECT_TRUE(step.measure->safety);
  EXPECT_TRUE(step.measure->drivesRounds);
  const model::PullState expected{model::OnOff::Off,
                                  model::OnOff::On,
                                  model::OnOff::Off,
                                  model::Sealant::Wet,
                                  model::Grease::Fresh,
                                  model::Movement::Steady,
                                  model::RestPosition::LeftFifteen};
  EXPECT_EQ(*step.measure->state, expected);
}

TEST_F(MeasureStep, WhatServesTheBench) {
  EXPECT_THAT(step.bench, testing::ElementsAre("shim-pack", "starting-force"));
  EXPECT_FALSE(step.measure->reads);
  const auto round = read(R"({"id": "thickness", "kind": "measure", "title": "T", "measure":
      {"quantity": "length", "reads": "disc_thickness_round", "planned": 12}})");
  ASSERT_TRUE(round);
  EXPECT_EQ(round->steps.at(0).measure->reads, Reads::DiscThicknessRound);
  EXPECT_TRUE(round->steps.at(0).bench.empty());
}

TEST_F(MeasureStep, ObservationsRoadTestAndPack) {
  ASSERT_EQ(step.observe.size(), 1U);
  ASSERT_EQ(step.observe[0].choices.size(), 2U);
  EXPECT_EQ(step.observe[0].choices[0].means, "");
  EXPECT_EQ(step.observe[0].choices[1].means, "worn");
  ASSERT_TRUE(step.roadTest && step.shimPack);
  EXPECT_EQ(step.roadTest->when, model::RoadTestWhen::Before);
  EXPECT_EQ(step.shimPack->role, model::PackRole::Fitted);
}

TEST(ProcedureFile, HoldStatementsAreRead) {
  const auto procedure = read(R"({"id": "stands", "kind": "hold", "title": "On stands", "hold": {
    "key": "support", "title": "Support", "statements": [
      {"key": "rating", "ask": "What does the plate say?", "why": "It carries the axle.",
       "answer": {"type": "quantity", "quantity": "mass", "check": "stand_rating_each"},
       "when": {"support": ["stands"]}},
      {"key": "wheels", "ask": "How many wheels are chocked?", "why": "It rolls.",
       "answer": {"type": "count", "at_least": 2}},
      {"key": "push", "ask": "What did the push do?", "why": "Better now than later.",
       "answer": {"type": "choice", "choices": [
         {"word": "still", "text": "Nothing moved"},
         {"word": "rocked", "text": "It rocked", "passes": false}]}}]}})");
  ASSERT_TRUE(procedure.has_value()) << procedure.error().key << " " << procedure.error().field;
  const Hold& hold = procedure->steps[0].hold.value();
  EXPECT_EQ(hold.key, "support");
  ASSERT_EQ(hold.statements.size(), 3U);
  EXPECT_EQ(hold.statements[0].answer, AnswerType::Quantity);
  EXPECT_EQ(hold.statements[0].quantity, QuantityKind::Mass);
  EXPECT_EQ(hold.statements[0].check, "stand_rating_each");
  EXPECT_EQ(hold.statements[1].answer, AnswerType::Count);
  EXPECT_EQ(hold.statements[1].atLeast, 2);
  EXPECT_EQ(hold.statements[2].answer, AnswerType::Choice);
  EXPECT_TRUE(hold.statements[2].choices[0].passes);
  EXPECT_FALSE(hold.statements[2].choices[1].passes);
}

TEST(ProcedureFile, TorqueAndWaitAreRead) {
  const auto procedure = read(R"({"id": "bolts", "kind": "torque", "title": "Tighten", "torque": {
    "fasteners": "cap_bolts", "name": "cap bolts", "stages": [0.5, 1], "item": "cap",
    "castellated": true}}, {"id": "cure", "kind": "wait", "title": "Wait", "wait_minutes": 90})");
  ASSERT_TRUE(procedure.has_value()) << procedure.error().key << " " << procedure.error().field;
  const TorqueSpec& torque = procedure->steps[0].torque.value();
  EXPECT_EQ(torque.fasteners, "cap_bolts");
  EXPECT_THAT(torque.stages, testing::ElementsAre(0.5, 1.0));
  EXPECT_EQ(torque.item, "cap");
  EXPECT_TRUE(torque.castellated);
  EXPECT_EQ(procedure->steps[1].waitMinutes, 90.0);
}

TEST(ProcedureFile, NeedsNotGivenMeanTheStepBefore) {
  const auto procedure =
      read(doStep("a") + "," + doStep("b") + "," + doStep("c", R"("needs": [])") + "," +
           doStep("d", R"("needs": ["a", "c"])"));
  ASSERT_TRUE(procedure.has_value());
  EXPECT_TRUE(procedure->steps[0].needs.empty());
  EXPECT_THAT(procedure->steps[1].needs, testing::ElementsAre("a"));
  EXPECT_TRUE(procedure->steps[2].needs.empty());
  EXPECT_THAT(procedure->steps[3].needs, testing::ElementsAre("a", "c"));
}

TEST(ProcedureFile, HashIsOfTheBytesAsTheyAre) {
  const std::string text = fileWith(doStep("a"));
  const auto procedure = parseProcedure(text, "sample.json");
  ASSERT_TRUE(procedure.has_value());
  EXPECT_EQ(procedure->text, text);
  // sha256sum (GNU coreutils) of these bytes.
  EXPECT_EQ(procedure->hash, "03e3127e1dd498c08159d526f5bab6db845c2af149f43e155d817872b9055bb6");
  const auto spaced = parseProcedure(text + "\n", "sample.json");
  ASSERT_TRUE(spaced.has_value());
  EXPECT_NE(spaced->hash, procedure->hash);
}

TEST(ProcedureFile, PlanNamesItsProceduresInOrder) {
  const auto plan = parsePlan(
      R"({"schema": 1, "id": "short", "title": "Short", "procedures": ["b", "a"]})", "short.json");
  ASSERT_TRUE(plan.has_value());
  EXPECT_EQ(plan->id, "short");
  EXPECT_EQ(plan->title, "Short");
  EXPECT_THAT(plan->procedures, testing::ElementsAre("b", "a"));
}

}  // namespace
}  // namespace sw::procedures
