// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>

#include "compute/output.h"
#include "compute/wheels/balance_picture.h"
#include "compute/wheels/vector_reading.h"
#include "compute/wheels/wheels.h"
#include "mechanics/wheels/balance_four_run.h"
#include "mechanics/wheels/value_checks.h"

namespace sw::compute {

namespace {

constexpr std::size_t kTrialRuns = 3;
/// Beyond this share the linear propagation is no longer good (simulation).
constexpr double kLargeShare = 0.2;

void readTrials(InputReader& reader, mechanics::FourRuns& runs) {
  reader.requireKey("with_trial");
  const auto readings =
      reader.quantities("with_trial", {.kind = QuantityKind::Number, .sign = Sign::NotNegative});
  if (!reader.fields().ok()) return;
  if (readings.size() != kTrialRuns) {
    reader.fail(mechanics::outOfRange("/with_trial", "three readings"));
    return;
  }
  std::copy(readings.begin(), readings.end(), runs.withTrial.begin());
}

Result<mechanics::FourRuns> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  mechanics::FourRuns runs;
  reader.requireKey("initial");
  runs.initial = reader.number("initial", kPositiveNumber).value_or(0);
  readTrials(reader, runs);
  runs.trialWeight =
      Mass::fromSi(reader.requiredQuantity("trial_weight", gramsSpec(Sign::Positive)));
  runs.readingUncertainty = reader.number("reading_uncertainty", kPositiveNumber);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return runs;
}

std::vector<FieldDescription> inputFields() {
  return {{.name = "initial",
           .kind = "number",
           .presence = Presence::Required,
           .range = "more than 0",
           .meaning = "vibration before any weight, in any unit"},
          {.name = "with_trial",
           .kind = "list of number",
           .presence = Presence::Required,
           .range = "three, 0 or more each",
           .meaning = "the same with the trial weight at 0, 120 and 240 degrees"},
          gramsField("trial_weight", "the same in all three",
                     {.presence = Presence::Required, .range = "more than 0"}),
          {.name = "reading_uncertainty",
           .kind = "number",
           .range = "more than 0",
           .meaning = "standard uncertainty of a reading, in its unit; gives those of the answer "
                      "and a sharper check of the runs"}};
}

std::vector<FieldDescription> outputFields() {
  return {{.name = "trial_effect",
           .kind = "number",
           .presence = Presence::Required,
           .meaning = "vibration that the trial weight alone would make"},
          weightField("unbalance", "the heavy spot: no weight belongs here"),
          weightField("correction", "the weight to fit, opposite the heavy spot"),
          {.name = "agreement",
           .kind = "number",
           .presence = Presence::Required,
           .meaning = "of the four runs; 1 where they fit each other"},
          gramsField("amount_uncertainty", "standard uncertainty of the correction's amount"),
          quantityField("angle_uncertainty", QuantityKind::Angle,
                        "standard uncertainty of the correction's angle")};
}

void noteRuns(const mechanics::FourRuns& runs, const mechanics::FourRunBalance& balance,
              std::vector<Note>& notes) {
  notes.push_back({"one_check",
                   "Four readings hold one check only: runs that agree are not yet "
                   "right. Same road, same speed, same load in all of them."});
  if (!runs.readingUncertainty) {
    notes.push_back({"uncertainty_unknown",
                     "Repeat a run unchanged and enter the spread as "
                     "reading_uncertainty to see how sure this is."});
  }
  if (!balance.amountUncertainty) return;
  if (*balance.amountUncertainty / balance.correction.amount <= kLargeShare) return;
  notes.push_back({"trial_too_small",
                   "The answer is only known to more than a fifth of itself: "
                   "use a heavier trial weight or a better reading."});
}

constexpr std::string_view kFormula =
    "T = √(mean of the squares of the three readings with the trial weight − initial "
    "reading²)\n"
    "unbalance = trial weight × initial reading ÷ T\n"
    "its angle: that of the sum of three arrows, the squares of the readings at 0°, 120° and "
    "240°; the correction goes opposite\n"
    "check: length of that sum = 3 × initial reading × T";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Road, speed and load are the same in all four runs; the readings are independent.",
    "All weights lie in one plane, and the vibration follows them in proportion.",
    "Four readings hold one check only: runs that agree prove little, runs that contradict "
    "are refused.",
    "The uncertainty holds to a few per cent while it stays below about a fifth of the "
    "answer.",
    "Not where the vibration depends on a couple or on anything that changes from run to run.",
});

}  // namespace

Description describeBalanceFourRun() {
  return {.title = "Balance in four runs without a phase mark",
          .method = "trial weight at 0, 120 and 240 degrees, squares of the readings",
          .source = "textbook (from memory); JCGM 100:2008 5.1.2 for the uncertainty",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields()),
          .outputs = outputFields(),
          .exampleInput = R"({"initial": 2.4, "with_trial": [1.36, 3.35, 2.89],
                              "trial_weight": "25 g", "reading_uncertainty": 0.05})",
          .exampleOutput = R"({
  "result": {
    "trial_effect": 1.17532974096634,
    "unbalance": {"amount": "51.0495037338789 g", "angle": "162.611076167031 deg"},
    "correction": {"amount": "51.0495037338789 g", "angle": "342.611076167031 deg"},
    "agreement": 0.982920494629003,
    "amount_uncertainty": "6.19327217211654 g",
    "angle_uncertainty": "2.5086120939169 deg"},
  "notes": [
    {
      "code": "one_check",
      "text": "Four readings hold one check only: runs that agree are not yet right. Same)"
                           R"( road, same speed, same load in all of them."},
    {
      "code": "same_speed",
      "text": "All runs at one speed, on clean wheels without old weights; each trial weight)"
                           R"( off again before the next."},
    {
      "code": "check_by_a_run",
      "text": "Fit the correction and run again: what is read then is the proof, not this)"
                           R"( figure."}],
  "method": {
    "name": "trial weight at 0, 120 and 240 degrees, squares of the readings",
    "source": "textbook (from memory); JCGM 100:2008 5.1.2 for the uncertainty",
    "options": {}}})"};
}

Result<Outcome> runBalanceFourRun(const Json& json) {
  Outcome outcome;
  const auto runs = read(json, outcome.notes);
  if (!runs) return failAs(runs);
  const auto balance = mechanics::balanceFourRuns(*runs);
  if (!balance) return asInputError(balance.error());
  outcome.result = {{"trial_effect", plainNumber(balance->trialEffect)},
                    {"unbalance", weightJson(balance->unbalance)},
                    {"correction", weightJson(balance->correction)},
                    {"agreement", plainNumber(balance->agreement)}};
  if (balance->amountUncertainty && balance->angleUncertainty) {
    outcome.result["amount_uncertainty"] = gramsText(*balance->amountUncertainty);
    outcome.result["angle_uncertainty"] = quantityText(*balance->angleUncertainty);
  }
  noteRuns(*runs, *balance, outcome.notes);
  noteBalancing(balance->correction.amount, outcome.notes);
  outcome.draw = [runs = *runs, balance = *balance](figure::Size size) {
    return fourRunPicture(runs, balance, size);
  };
  return outcome;
}

}  // namespace sw::compute
