// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "compute/output.h"
#include "compute/wheels/balance_picture.h"
#include "compute/wheels/vector_reading.h"
#include "compute/wheels/wheels.h"

namespace sw::compute {

namespace {

/// Readings known to 2 % then leave a fifth of the vibration at worst (own rule).
constexpr double kHardToSeparate = 10;
constexpr std::array<const char*, 2> kPlanes{"inner", "outer"};
constexpr std::array<const char*, 2> kTrials{"trial_inner", "trial_outer"};

struct TwoPlaneInput {
  mechanics::TwoPlaneRuns runs;
  std::optional<mechanics::WeightPair> fitted;
};

mechanics::PlanePair readPair(InputReader& reader) {
  return {readReading(reader, kPlanes[0]), readReading(reader, kPlanes[1])};
}

Result<TwoPlaneInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  TwoPlaneInput input;
  reader.requireKey("initial");
  reader.inObject("initial", [&](InputReader& inner) { input.runs.initial = readPair(inner); });
  for (std::size_t run = 0; run < 2; ++run) {
    reader.requireKey(kTrials[run]);
    reader.inObject(kTrials[run], [&](InputReader& inner) {
      input.runs.trialWeights[run] = readWeight(inner, "weight");
      input.runs.withTrial[run] = readPair(inner);
    });
  }
  reader.inObject("fitted", [&](InputReader& inner) {
    input.fitted = {readWeight(inner, kPlanes[0], Sign::NotNegative),
                    readWeight(inner, kPlanes[1], Sign::NotNegative)};
  });
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Json readingsJson(const mechanics::PlanePair& pair) {
  return {{kPlanes[0], readingJson(pair[0])}, {kPlanes[1], readingJson(pair[1])}};
}

Json weightsJson(const mechanics::WeightPair& pair) {
  return {{kPlanes[0], weightJson(pair[0])}, {kPlanes[1], weightJson(pair[1])}};
}

Json influencesJson(const std::array<mechanics::PlanePair, 2>& influence) {
  Json list = Json::array();
  for (std::size_t plane = 0; plane < 2; ++plane) {
    for (std::size_t weight = 0; weight < 2; ++weight) {
      list.push_back({{"read", kPlanes[plane]}, {"weight", kPlanes[weight]}});
      list.back().update(influenceJson(influence[plane][weight]));
    }
  }
  return list;
}

FieldDescription pairField(std::string_view name, std::string_view meaning,
                           std::vector<FieldDescription> fields,
                           Presence presence = Presence::Required) {
  return {.name = name,
          .kind = "object",
          .presence = presence,
          .meaning = meaning,
          .fields = std::move(fields)};
}

std::vector<FieldDescription> readings() {
  return {readingField("inner", "at the inner plane"), readingField("outer", "at the outer plane")};
}
std::vector<FieldDescription> weights() {
  return {weightField("inner", "in the inner plane", Presence::Required, Sign::NotNegative),
          weightField("outer", "in the outer plane", Presence::Required, Sign::NotNegative)};
}

std::vector<FieldDescription> trial() {
  std::vector<FieldDescription> fields = readings();
  fields.insert(fields.begin(), weightField("weight", "the trial weight"));
  return fields;
}

FieldDescription influenceField() {
  FieldDescription field = readingField("influence", "vibration for one gram, four in all");
  field.kind = "list of object";
  for (const char* name : {"weight", "read"}) {
    field.fields.insert(field.fields.begin(), {.name = name,
                                               .kind = "word",
                                               .presence = Presence::Required,
                                               .range = "inner | outer",
                                               .meaning = "the plane of it"});
  }
  return field;
}

constexpr std::string_view kExampleInput = R"({
  "initial": {"inner": {"amount": 5.1, "angle": "24 deg"},
              "outer": {"amount": 3.8, "angle": "171 deg"}},
  "trial_inner": {"weight": {"amount": "20 g", "angle": "0 deg"},
                  "inner": {"amount": 7.0, "angle": "51 deg"},
                  "outer": {"amount": 3.1, "angle": "158 deg"}},
  "trial_outer": {"weight": {"amount": "20 g", "angle": "0 deg"},
                  "inner": {"amount": 4.4, "angle": "37 deg"},
                  "outer": {"amount": 5.9, "angle": "139 deg"}},
  "fitted": {"inner": {"amount": "25 g", "angle": "120 deg"},
             "outer": {"amount": "20 g", "angle": "250 deg"}}})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "influence": [
      {
        "read": "inner",
        "weight": "inner",
        "amount": 0.168761178688632,
        "angle": "94.3130932648977 deg"},
      {
        "read": "inner",
        "weight": "outer",
        "amount": 0.064036542154434,
        "angle": "153.391476738113 deg"},
      {
        "read": "outer",
        "weight": "inner",
        "amount": 0.0522934334706533,
        "angle": "32.817848172505 deg"},
      {
        "read": "outer",
        "weight": "outer",
        "amount": 0.167507636903112,
        "angle": "102.053069144781 deg"}],
    "unbalance": {
      "inner": {
        "amount": "43.5542987322761 g",
        "angle": "292.367604317671 deg"},
      "outer": {
        "amount": "35.4240119738011 g",
        "angle": "59.3250576812826 deg"}},
    "correction": {
      "inner": {
        "amount": "43.5542987322761 g",
        "angle": "112.367604317671 deg"},
      "outer": {
        "amount": "35.4240119738011 g",
        "angle": "239.325057681283 deg"}},
    "condition": 2.04901169416163,
    "residual": {
      "inner": {"amount": 2.18231889593155, "angle": "15.3002191817271 deg"},
      "outer": {"amount": 1.75638950091835, "angle": "155.495402568244 deg"}}},
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
    "name": "influence coefficients of two planes; correction solves initial + a B = 0",
    "source": "textbook method of influence coefficients, from memory",
    "options": {}}})";

constexpr std::string_view kFormula =
    "readings and weights are arrows with an amount and an angle\n"
    "effect of a plane on a side = (reading of that side with the trial weight in the plane "
    "− its initial reading) ÷ trial weight; four in all\n"
    "corrections solve, for either side: initial reading + effect of inner × inner weight + "
    "effect of outer × outer weight = 0\n"
    "left with weights on = the same sum\n"
    "to divide arrows: divide the amounts and subtract the angles";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The vibration follows the weights in proportion, at one and the same speed in all runs.",
    "Each trial weight is taken off again before the next run.",
    "Marks, weights and readings count angles in one sense.",
    "Planes that act much alike make small errors of a reading grow; alike altogether they "
    "have no answer.",
    "The angle of the unbalance is not that of the correction: weights put there double the "
    "vibration.",
    "Not with a trial weight that changes little: less than 30 % in amount and 30 degrees in "
    "angle is too little (common practice, no source).",
});

}  // namespace

Description describeBalanceTwoPlane() {
  return {.title = "Balance in two planes from two trial weights",
          .method = "influence coefficients of two planes; correction solves initial + a B = 0",
          .source = "textbook method of influence coefficients, from memory",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(
              {pairField("initial", "vibration before any weight", readings()),
               pairField("trial_inner", "the run with a trial weight in the inner plane", trial()),
               pairField("trial_outer", "the run with a trial weight in the outer plane", trial()),
               pairField("fitted",
                         "weights to be fitted instead of the exact ones; gives what is "
                         "left",
                         weights(), Presence::Optional)}),
          .outputs = {influenceField(),
                      pairField("unbalance", "the heavy spots: no weight belongs here", weights()),
                      pairField("correction", "the weights to fit, opposite the heavy spots",
                                weights()),
                      {.name = "condition",
                       .kind = "number",
                       .presence = Presence::Required,
                       .range = "1 or more",
                       .meaning = "by how much at most relative errors of the readings grow"},
                      pairField("residual", "what is left with fitted on", readings(),
                                Presence::Optional)},
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runBalanceTwoPlane(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto balance = mechanics::balanceTwoPlanes(input->runs);
  if (!balance) return asInputError(balance.error());
  outcome.result = {{"influence", influencesJson(balance->influence)},
                    {"unbalance", weightsJson(balance->unbalance)},
                    {"correction", weightsJson(balance->correction)},
                    {"condition", plainNumber(balance->condition)}};
  if (input->fitted) {
    outcome.result["residual"] =
        readingsJson(mechanics::residual(input->runs.initial, balance->influence, *input->fitted));
  }
  if (balance->condition > kHardToSeparate) {
    outcome.notes.push_back({"planes_hard_to_separate",
                             "The two planes act much alike here, so small errors of a reading "
                             "grow: repeat the runs before fitting much."});
  }
  noteBalancing(std::max(balance->correction[0].amount, balance->correction[1].amount),
                outcome.notes);
  outcome.draw = [balance = *balance, fitted = input->fitted](figure::Size size) {
    return twoPlanePicture(balance, fitted, size);
  };
  return outcome;
}

}  // namespace sw::compute
