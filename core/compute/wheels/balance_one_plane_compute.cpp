// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/wheels/balance_picture.h"
#include "compute/wheels/vector_reading.h"
#include "compute/wheels/wheels.h"

namespace sw::compute {

namespace {

struct OnePlaneInput {
  mechanics::OnePlaneRuns runs;
  std::optional<mechanics::WeightVector> fitted;
};

Result<OnePlaneInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  OnePlaneInput input;
  input.runs.initial = readReading(reader, "initial");
  input.runs.trialWeight = readWeight(reader, "trial_weight");
  input.runs.withTrial = readReading(reader, "with_trial");
  if (reader.fields().has("fitted")) input.fitted = readWeight(reader, "fitted", Sign::NotNegative);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

constexpr std::string_view kFormula =
    "readings and weights are arrows with an amount and an angle\n"
    "effect = (reading with the trial weight − initial reading) ÷ trial weight\n"
    "correction = − initial reading ÷ effect\n"
    "left with weights on = initial reading + effect × weights\n"
    "to divide arrows: divide the amounts and subtract the angles; a minus turns an arrow by "
    "180°";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The vibration follows the weights in proportion, at one and the same speed in all runs.",
    "The trial weight is taken off again before the next run.",
    "Marks, weights and readings count angles in one sense.",
    "Put the correction in and run again: the angle of the unbalance is not that of the "
    "correction, and weights put there double the vibration.",
    "Not with a trial weight that changes little: less than 30 % in amount and 30 degrees in "
    "angle is too little (common practice, no source).",
});

}  // namespace

Description describeBalanceOnePlane() {
  return {
      .title = "Balance in one plane from a trial weight",
      .method = "influence coefficient; correction = -initial / influence",
      .source = "textbook method of influence coefficients, from memory",
      .formula = kFormula,
      .assumptions = kAssumptions,
      .inputs = withEnvelope(
          {readingField("initial", "vibration before any weight"),
           weightField("trial_weight", "fitted for the second run"),
           readingField("with_trial", "vibration with the trial weight"),
           weightField("fitted", "weight to be fitted instead of the exact one; gives what is left",
                       Presence::Optional, Sign::NotNegative)}),
      .outputs = {readingField("influence", "vibration for one gram"),
                  weightField("unbalance", "the heavy spot: no weight belongs here",
                              Presence::Required, Sign::NotNegative),
                  weightField("correction", "the weight to fit, opposite the heavy spot",
                              Presence::Required, Sign::NotNegative),
                  readingField("residual", "what is left with fitted on", Presence::Optional)},
      .exampleInput = R"({"initial": {"amount": 4.2, "angle": "112 deg"},
                          "trial_weight": {"amount": "25 g", "angle": "40 deg"},
                          "with_trial": {"amount": 2.9, "angle": "161 deg"},
                          "fitted": {"amount": "35 g", "angle": "95 deg"}})",
      .exampleOutput = R"({
  "result": {
    "influence": {"amount": 0.126922981709642, "angle": "208.388938929387 deg"},
    "unbalance": {"amount": "33.0909339146179 g", "angle": "263.611061070613 deg"},
    "correction": {"amount": "33.0909339146179 g", "angle": "83.6110610706127 deg"},
    "residual": {"amount": 0.890772896786211, "angle": "11.9901210482091 deg"}},
  "notes": [
    {
      "code": "same_speed",
      "text": "All runs at one speed, on clean wheels without old weights; each trial weight)"
                       R"( off again before the next."},
    {
      "code": "check_by_a_run",
      "text": "Fit the correction and run again: what is read then is the proof, not this)"
                       R"( figure."}],
  "method": {
    "name": "influence coefficient; correction = -initial / influence",
    "source": "textbook method of influence coefficients, from memory",
    "options": {}}})"};
}

Result<Outcome> runBalanceOnePlane(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto balance = mechanics::balanceOnePlane(input->runs);
  if (!balance) return asInputError(balance.error());
  outcome.result = {{"influence", influenceJson(balance->influence)},
                    {"unbalance", weightJson(balance->unbalance)},
                    {"correction", weightJson(balance->correction)}};
  if (input->fitted) {
    outcome.result["residual"] =
        readingJson(mechanics::residual(input->runs.initial, balance->influence, *input->fitted));
  }
  if (balance->trialTooSmall) {
    outcome.notes.push_back(
        {"trial_too_small",
         "The trial weight changed the reading by less than 30 % and 30 degrees: "
         "a heavier one gives a surer answer (common practice)."});
  }
  noteBalancing(balance->correction.amount, outcome.notes);
  outcome.draw = [input = *input, balance = *balance](figure::Size size) {
    return onePlanePicture(input.runs, balance, input.fitted, size);
  };
  return outcome;
}

}  // namespace sw::compute
