// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "compute/diagnosis/cause_input.h"
#include "compute/diagnosis/diagnosis.h"
#include "compute/diagnosis/plan_picture.h"
#include "compute/output.h"
#include "diagnosis/questions.h"
#include "diagnosis/shipped_causes.h"
#include "phrasing/cause_words.h"

namespace sw::compute {

namespace {

using diagnosis::CauseFile;
using diagnosis::CheckPlan;

constexpr std::string_view kMethod = "dynamic programming over sets of checks and set-up states";
constexpr std::string_view kSource =
    "Held and Karp 1962; Heckerman, Breese and Rommelse, Comm. ACM 38 (1995); the numbers: "
    "starting "
    "values, common practice, no source";
constexpr double kSecondsAMinute = 60;

struct NextCheckInput {
  KnownOfShake known;
  diagnosis::Circumstances here;
};

std::string time(double minutes) {
  return quantityText(minutes * kSecondsAMinute, QuantityKind::Duration);
}

std::string about(double minutes) {
  return phrasing::workTime(minutes).toStdString();
}

void readHere(InputReader& reader, const CauseFile& file, NextCheckInput& input) {
  auto& here = input.here;
  const auto preset = reader.fields().oneOf("shop", keysOf(file.presets));
  const auto& shop = file.presetOrFirst(preset.value_or(""));
  here.support = shop.support;
  here.equipment = shop.equipment;
  here.support = reader.choice<model::SupportKind>("support").value_or(here.support);
  here.discMount = reader.choice<model::DiscMount>("disc_mount");
  const auto setup = reader.fields().oneOf("set_up", keysOf(file.setups));
  here.setup = setup ? file.setup(*setup).value_or(0) : 0;
  here.fallbackMinutes =
      reader.quantity("giving_up", {.kind = QuantityKind::Duration, .sign = Sign::NotNegative})
          .value_or(file.fallbackMinutes * kSecondsAMinute) /
      kSecondsAMinute;
  reader.eachObject("left_out", [&](InputReader& one) {
    const std::string key = one.requiredWord("check", keysOf(file.checks));
    if (const auto check = file.check(key)) here.leftOut.push_back(*check);
  });
  const auto& made = input.known.made;
  here.leftOut.insert(here.leftOut.end(), made.begin(), made.end());
}

Result<NextCheckInput> read(const Json& json, const CauseFile& file, std::vector<Note>& notes) {
  NextCheckInput input;
  InputReader reader(json, "", notes);
  readKnown(reader, file, input.known);
  readHere(reader, file, input);
  reader.inObject("options",
                  [&](InputReader& options) { input.known.damping = readDamping(options); });
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Json planJson(const CauseFile& file, const diagnosis::PlanProblem& problem, const CheckPlan& plan) {
  Json list = Json::array();
  for (const auto& step : plan.steps) {
    list.push_back({{"check", file.checks[step.check].key},
                    {"name", file.checks[step.check].name},
                    {"set_up", file.setups[step.setup].key},
                    {"set_up_time", time(step.moveMinutes)},
                    {"time", time(problem.checks[step.check].minutes)},
                    {"still_looking", plainNumber(step.notFound)}});
  }
  return list;
}

Json otherBeginnings(const CauseFile& file, const CheckPlan& plan) {
  Json list = Json::array();
  for (const auto& one : plan.beginnings) {
    list.push_back({{"check", file.checks[one.check].key}, {"expected_time", time(one.minutes)}});
  }
  return list;
}

/// What to do now, in a sentence or two.
Note whatNow(const CauseFile& file, const diagnosis::PlanProblem& problem, const CheckPlan& plan) {
  if (plan.steps.empty()) {
    return {"hand_on",
            "No check left is worth its time: hand it on, or look again where the signs point."};
  }
  const auto& first = plan.steps.front();
  std::string text = file.checks[first.check].name + " comes next: about " +
                     about(problem.checks[first.check].minutes);
  if (first.moveMinutes > 0) {
    text += ", after " + about(first.moveMinutes) + " of set-up (" + file.setups[first.setup].name +
            ")";
  }
  text += ". Until it is found, or given up, about " + about(plan.minutes) + " on average.";
  return {"next", text};
}

constexpr std::string_view kExampleInput = R"({
  "answers": {"after_bump": "yes", "goes_on_slower": "yes", "wanders": "no"},
  "shop": "no_balancer",
  "checks": [{"check": "walk_round", "result": "nothing"}, {"check": "joints", "result": "nothing"}],
  "giving_up": "200 min",
  "left_out": [{"check": "swap_wheels"}, {"check": "discs"}, {"check": "hub_faces"},
    {"check": "tyre_runout"}, {"check": "spin_wheels"}, {"check": "propshaft"}]
})";
constexpr std::string_view kExampleOutput = R"({
  "result": {
    "plan": [
      {
        "check": "rock_wheels",
        "name": "Rock the wheels, brake on and off",
        "set_up": "lifted",
        "set_up_time": "10 min",
        "time": "9 min",
        "still_looking": 1},
      {
        "check": "swivel_pull",
        "name": "Starting force of the swivels, rods off",
        "set_up": "rods_off",
        "set_up_time": "12 min",
        "time": "14 min",
        "still_looking": 0.875649974941022},
      {
        "check": "panhard",
        "name": "Panhard rod ends while the steering is rocked",
        "set_up": "ground",
        "set_up_time": "17 min",
        "time": "4 min",
        "still_looking": 0.574363789471503},
      {
        "check": "arm_bushes",
        "name": "Arm bushes under a lever bar",
        "set_up": "ground",
        "set_up_time": "0 min",
        "time": "8 min",
        "still_looking": 0.541895050017713},
      {
        "check": "damper",
        "name": "Steering damper by hand",
        "set_up": "ground",
        "set_up_time": "0 min",
        "time": "12 min",
        "still_looking": 0.490697283841889},
      {
        "check": "shock_absorbers",
        "name": "Shock absorbers",
        "set_up": "ground",
        "set_up_time": "0 min",
        "time": "5 min",
        "still_looking": 0.298729727147479}],
    "expected_time": "132.905416429821 min",
    "not_found": 0.262817244468363,
    "beginnings": [
      {"check": "rock_wheels", "expected_time": "132.905416429821 min"},
      {"check": "panhard", "expected_time": "133.1344719481 min"},
      {"check": "shock_absorbers", "expected_time": "135.734119554107 min"},
      {"check": "spring_clamps", "expected_time": "136.543666204654 min"},
      {"check": "arm_bushes", "expected_time": "138.094568774223 min"},
      {"check": "steering_box", "expected_time": "140.845561875616 min"},
      {"check": "tyres_and_rims", "expected_time": "143.376202969241 min"},
      {"check": "toe", "expected_time": "145.064334547712 min"}],
    "question": {
      "answer": "bounces",
      "ask": "After a dip, does the front end go on bouncing?",
      "saves": "3.51948742208347 min"}},
  "notes": [
    {
      "code": "next",
      "text": "Rock the wheels, brake on and off comes next: about 9 min, after 10 min of set-up (front axle up, wheels on). Until it is found, or given up, about 2 h 15 min on average."},
    {
      "code": "question",
      "text": "Worth asking first: After a dip, does the front end go on bouncing? The answer saves about 4 min on average."},
    {
      "code": "any_order",
      "text": "Take them in any order that suits the hands: the plan follows. After a repair, drive, ask anew and plan anew."},
    {
      "code": "starting_values",
      "text": "The minutes and chances are starting values, common practice, no source."}],
  "method": {
    "name": "dynamic programming over sets of checks and set-up states",
    "source": "Held and Karp 1962; Heckerman, Breese and Rommelse, Comm. ACM 38 (1995); the numbers: starting values, common practice, no source",
    "options": {"damping": 1}}})";

constexpr std::string_view kFormula =
    "expected time of an order = the sum over its checks of (the chance that it is still looked "
    "for) "
    "× (time to change the set-up + time of the check) + (the chance of a false alarm) × (its "
    "time) "
    "+ (the chance that it is never found) × (what giving up costs)\n"
    "plan = the order with the least expected time, over all orders and all places to stop\n"
    "worth of a question = expected time now − mean expected time after its answers";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "One fault; after a repair that did not cure it, plan anew.",
    "A check finds its cause with its chance and misses it otherwise; looks are independent.",
    "What is opened for a check is closed again where the next one needs it closed.",
    "The walk-round comes before all others, whatever it costs.",
    "Damper and caster wait until play was looked for: both can mask a fault.",
    "Minutes, chances and weights are starting values, common practice, no source.",
});

std::vector<FieldDescription> inputFields(const CauseFile& file) {
  auto fields = knownFields(file);
  const auto add = [&](FieldDescription field) { fields.push_back(std::move(field)); };
  add({.name = "shop",
       .kind = "word",
       .defaultValue = R"("full_shop")",
       .range = "full_shop | no_balancer | driveway",
       .meaning = "how it is equipped"});
  add({.name = "support",
       .kind = "word",
       .range = "stands | two_post | four_post | pit",
       .meaning = "where it differs from the shop's"});
  add({.name = "disc_mount",
       .kind = "word",
       .range = "outside | behind_hub",
       .meaning = "a disc behind the hub asks for the hub to come off"});
  add({.name = "set_up",
       .kind = "word",
       .defaultValue = R"("ground")",
       .range = "ground | lifted | wheels_off | at_balancer | hub_off | rods_off | turn_plates",
       .meaning = "how it stands now: already under the wheel?"});
  add(quantityField("giving_up", QuantityKind::Duration,
                    "what it costs not to find it: when to stop looking",
                    {.range = "0 or more", .defaultValue = R"("240 min")"}));
  add({.name = "left_out",
       .kind = "list of object",
       .meaning = "checks that cannot or shall not be made",
       .fields = {{.name = "check",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = checkChoices()}}});
  return withEnvelope(std::move(fields), {dampingField()});
}

std::vector<FieldDescription> outputFields() {
  const FieldNotes required{.presence = Presence::Required};
  return {{.name = "plan",
           .kind = "list of object",
           .presence = Presence::Required,
           .meaning = "in this order, as long as nothing is found",
           .fields = {{.name = "check", .kind = "word", .presence = Presence::Required},
                      {.name = "name", .kind = "text", .presence = Presence::Required},
                      {.name = "set_up", .kind = "word", .presence = Presence::Required},
                      quantityField("set_up_time", QuantityKind::Duration, "before it", required),
                      quantityField("time", QuantityKind::Duration, "of the check", required),
                      {.name = "still_looking",
                       .kind = "number",
                       .presence = Presence::Required,
                       .range = "0 to 1",
                       .meaning = "chance that it comes to this check"}}},
          quantityField("expected_time", QuantityKind::Duration,
                        "on average, until it is found or given up", required),
          {.name = "not_found",
           .kind = "number",
           .presence = Presence::Required,
           .range = "0 to 1",
           .meaning = "chance that the plan does not find it"},
          {.name = "beginnings",
           .kind = "list of object",
           .presence = Presence::Required,
           .meaning = "what it costs to begin with another check",
           .fields = {{.name = "check", .kind = "word", .presence = Presence::Required},
                      quantityField("expected_time", QuantityKind::Duration, "", required)}},
          {.name = "question",
           .kind = "object",
           .meaning = "the one worth asking first",
           .fields = {{.name = "answer", .kind = "word", .presence = Presence::Required},
                      {.name = "ask", .kind = "text", .presence = Presence::Required},
                      quantityField("saves", QuantityKind::Duration, "on average", required)}}};
}

/// The question whose answer shortens the plan most, where one does by half a minute or more.
Result<void> putQuestion(const CauseFile& file, const NextCheckInput& input,
                         const diagnosis::PlanProblem& problem, Outcome& outcome) {
  constexpr double kWorthAsking = 0.5;  // minutes
  std::vector<std::size_t> open;
  for (std::size_t feature = 0; feature < file.table.features.size(); ++feature) {
    const auto& asked = input.known.asked;
    if (std::find(asked.begin(), asked.end(), feature) == asked.end()) open.push_back(feature);
  }
  const auto values = diagnosis::questionValues(file.table, input.known.evidence, problem, open,
                                                input.known.damping);
  if (!values) return asInputError(values.error());
  if (values->empty() || values->front().minutes < kWorthAsking) return {};
  const auto& best = values->front();
  const auto& feature = file.table.features[best.feature];
  outcome.result["question"] = {
      {"answer", feature.key}, {"ask", feature.ask}, {"saves", time(best.minutes)}};
  outcome.notes.push_back({"question", "Worth asking first: " + feature.ask +
                                           " The answer saves about " + about(best.minutes) +
                                           " on average."});
  return {};
}

}  // namespace

Description describeNextCheck() {
  return {.title = "Which check next?",
          .method = kMethod,
          .source = kSource,
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(diagnosis::shippedCauses()),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runNextCheck(const Json& json) {
  Outcome outcome;
  const CauseFile& file = diagnosis::shippedCauses();
  const auto input = read(json, file, outcome.notes);
  if (!input) return failAs(input);
  auto problem = diagnosis::problemFor(file, input->here);
  problem.causes = probabilities(file.table, input->known.evidence, input->known.damping);
  const auto plan = diagnosis::bestPlan(problem);
  if (!plan) return asInputError(plan.error());
  outcome.result = {{"plan", planJson(file, problem, *plan)},
                    {"expected_time", time(plan->minutes)},
                    {"not_found", plainNumber(plan->notFound)},
                    {"beginnings", otherBeginnings(file, *plan)}};
  outcome.notes.insert(outcome.notes.begin(), whatNow(file, problem, *plan));
  if (auto put = putQuestion(file, *input, problem, outcome); !put) return failAs(put);
  outcome.notes.push_back({"any_order",
                           "Take them in any order that suits the hands: the plan follows. After a "
                           "repair, drive, ask anew and plan anew."});
  outcome.notes.push_back({"starting_values",
                           "The minutes and chances are starting values, common practice, no "
                           "source."});
  outcome.options = {{"damping", plainNumber(input->known.damping)}};
  std::vector<PlanBar> bars;
  for (const auto& step : plan->steps) {
    bars.push_back({file.checks[step.check].name, step.moveMinutes,
                    problem.checks[step.check].minutes, step.notFound});
  }
  outcome.draw = [bars = std::move(bars)](figure::Size size) { return planPicture(bars, size); };
  return outcome;
}

}  // namespace sw::compute
