// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "compute/diagnosis/cause_input.h"
#include "compute/diagnosis/causes_picture.h"
#include "compute/diagnosis/diagnosis.h"
#include "compute/output.h"
#include "diagnosis/shipped_causes.h"
#include "phrasing/cause_words.h"

namespace sw::compute {

namespace {

using diagnosis::CauseFile;
using diagnosis::RankedCause;

constexpr std::string_view kMethod = "weights and answers by Bayes' rule";
constexpr std::string_view kSource =
    "Heckerman, Breese and Rommelse, Comm. ACM 38 (1995); the numbers: starting values, common "
    "practice, no source";

std::string wordsOf(double probability) {
  return phrasing::likelihoodWords(probability).toStdString();
}

Json shiftsJson(const CauseFile& file, const KnownOfShake& known, const RankedCause& cause) {
  Json list = Json::array();
  for (const auto& shift : cause.shifts) {
    const auto& evidence = known.evidence[shift.evidence];
    list.push_back(
        {{"known", evidenceWords(file, evidence)},
         {"effect", phrasing::speaksWords(cause.probability, shift.without).toStdString()},
         {"without", plainNumber(shift.without)}});
  }
  return list;
}

/// The leading causes in a sentence.
Note leaders(const CauseFile& file, const diagnosis::Ranking& ranking) {
  std::string text = "Look first for ";
  const auto& first = ranking.causes[0];
  const auto& second = ranking.causes[1];
  text += file.table.causes[first.cause].name + ": " + wordsOf(first.probability) + ". Then " +
          file.table.causes[second.cause].name + ": " + wordsOf(second.probability) + ".";
  return {"leaders", text};
}

void putNotes(const CauseFile& file, const diagnosis::Ranking& ranking, const KnownOfShake& known,
              std::vector<Note>& notes) {
  notes.insert(notes.begin(), leaders(file, ranking));
  if (ranking.surprising) {
    notes.push_back({"surprising",
                     "These answers hardly go together. Ask again, or look whether two faults are "
                     "there at once."});
  }
  if (known.evidence.empty()) {
    notes.push_back({"nothing_known",
                     "Nothing was told yet: this is only how often each cause is met. Each answer "
                     "sharpens it."});
  }
  notes.push_back({"starting_values",
                   "The numbers behind this are starting values, common practice, no source; a "
                   "shop's own closed jobs make them better."});
  notes.push_back(
      {"not_excluded",
       "Likely is not found: a part is to blame when its own check shows it. Wheel nuts "
       "and the walk-round come before any drive."});
}

constexpr std::string_view kExampleInput = R"({
  "answers": {"braking": "only"}
})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "causes": [
      {
        "cause": "disc",
        "name": "a brake disc uneven or running out",
        "probability": 0.634328358208955,
        "in_words": "more likely than not",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks strongly for it",
            "without": 0.0829493087557604}]},
      {
        "cause": "arm_bush",
        "name": "worn leading or trailing arm bushes",
        "probability": 0.0398009950248756,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "hardly matters",
            "without": 0.0552995391705069}]},
      {
        "cause": "caliper",
        "name": "a brake that drags",
        "probability": 0.033167495854063,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks for it",
            "without": 0.0184331797235023}]},
      {
        "cause": "wheel_unbalance",
        "name": "a wheel out of balance",
        "probability": 0.0298507462686567,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks strongly against it",
            "without": 0.165898617511521}]},
      {
        "cause": "rod_joints",
        "name": "play in the track rod or drag link",
        "probability": 0.0290215588723051,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0645161290322581}]},
      {
        "cause": "swivel_preload",
        "name": "too little preload of the swivel bearings",
        "probability": 0.0232172470978441,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0645161290322581}]},
      {
        "cause": "tyre",
        "name": "a tyre out of round or damaged",
        "probability": 0.0223880597014925,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0829493087557604}]},
      {
        "cause": "wheel_bearing",
        "name": "float in a wheel bearing",
        "probability": 0.0207296849087894,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0460829493087558}]},
      {
        "cause": "swivel_wear",
        "name": "worn swivel bearings or pins",
        "probability": 0.0207296849087894,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0460829493087558}]},
      {
        "cause": "hub_face",
        "name": "dirt, rust or a spacer between wheel and hub",
        "probability": 0.0199004975124378,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "hardly matters",
            "without": 0.0276497695852535}]},
      {
        "cause": "other",
        "name": "something not in this list",
        "probability": 0.0199004975124378,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0368663594470046}]},
      {
        "cause": "wheel_fasteners",
        "name": "loose wheel nuts",
        "probability": 0.0165837479270315,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "hardly matters",
            "without": 0.0184331797235023}]},
      {
        "cause": "panhard",
        "name": "play in the panhard rod",
        "probability": 0.0165837479270315,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0460829493087558}]},
      {
        "cause": "damper",
        "name": "a weak steering damper",
        "probability": 0.0165837479270315,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0460829493087558}]},
      {
        "cause": "toe",
        "name": "toe out of its figure",
        "probability": 0.0099502487562189,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0276497695852535}]},
      {
        "cause": "pressure_or_mud",
        "name": "tyre pressure, mud in a rim or cupped tread",
        "probability": 0.00829187396351575,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks strongly against it",
            "without": 0.0460829493087558}]},
      {
        "cause": "shock_absorbers",
        "name": "worn shock absorbers",
        "probability": 0.00746268656716418,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0276497695852535}]},
      {
        "cause": "spring_clamps",
        "name": "loose spring clamps or axle bolts",
        "probability": 0.0066334991708126,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "hardly matters",
            "without": 0.00921658986175115}]},
      {
        "cause": "box_play",
        "name": "play inside the steering box",
        "probability": 0.0066334991708126,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0184331797235023}]},
      {
        "cause": "caster",
        "name": "caster out of its figure",
        "probability": 0.0066334991708126,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0184331797235023}]},
      {
        "cause": "propshaft",
        "name": "a front propshaft or its joints",
        "probability": 0.0066334991708126,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks strongly against it",
            "without": 0.0368663594470046}]},
      {
        "cause": "box_mounting",
        "name": "the steering box loose on its chassis",
        "probability": 0.00497512437810945,
        "in_words": "hardly",
        "because": [
          {
            "known": "And when you brake? Only then",
            "effect": "speaks against it",
            "without": 0.0138248847926267}]}],
    "surprising": false},
  "notes": [
    {
      "code": "leaders",
      "text": "Look first for a brake disc uneven or running out: more likely than not. Then worn leading or trailing arm bushes: hardly."},
    {
      "code": "starting_values",
      "text": "The numbers behind this are starting values, common practice, no source; a shop's own closed jobs make them better."},
    {
      "code": "not_excluded",
      "text": "Likely is not found: a part is to blame when its own check shows it. Wheel nuts and the walk-round come before any drive."}],
  "method": {
    "name": "weights and answers by Bayes' rule",
    "source": "Heckerman, Breese and Rommelse, Comm. ACM 38 (1995); the numbers: starting values, common practice, no source",
    "options": {"damping": 1}}})";

constexpr std::string_view kFormula =
    "likelihood of a cause = its weight × the chance of each answer where it is the cause × for a "
    "check that found nothing, the chance that it misses the cause\n"
    "probability = likelihood ÷ the sum of the likelihoods of all causes";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "One fault; where two are there at once, repair the one found and ask anew.",
    "Answers are independent of each other given the fault: related ones count double, which "
    "damping takes back.",
    "An answer that is not known is no answer; it is not taken for a no.",
    "Weights and chances are starting values, common practice, no source.",
    "Not a verdict: no part is cleared and none condemned by it.",
});

}  // namespace

Description describeRankCauses() {
  return {.title = "What makes it shake?",
          .method = kMethod,
          .source = kSource,
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(knownFields(diagnosis::shippedCauses()), {dampingField()}),
          .outputs =
              {{.name = "causes",
                .kind = "list of object",
                .presence = Presence::Required,
                .meaning = "the most likely first",
                .fields =
                    {{.name = "cause", .kind = "word", .presence = Presence::Required},
                     {.name = "name", .kind = "text", .presence = Presence::Required},
                     {.name = "probability",
                      .kind = "number",
                      .presence = Presence::Required,
                      .range = "0 to 1"},
                     {.name = "in_words", .kind = "text", .presence = Presence::Required},
                     {.name = "because",
                      .kind = "list of object",
                      .presence = Presence::Required,
                      .meaning = "what each answer and check did to it",
                      .fields = {{.name = "known", .kind = "text", .presence = Presence::Required},
                                 {.name = "effect", .kind = "text", .presence = Presence::Required},
                                 {.name = "without",
                                  .kind = "number",
                                  .presence = Presence::Required,
                                  .range = "0 to 1",
                                  .meaning = "probability if it were not known"}}}}},
               {.name = "surprising",
                .kind = "true or false",
                .presence = Presence::Required,
                .meaning = "the answers hardly go together"}},
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runRankCauses(const Json& json) {
  Outcome outcome;
  const CauseFile& file = diagnosis::shippedCauses();
  KnownOfShake known;
  InputReader reader(json, "", outcome.notes);
  readKnown(reader, file, known);
  reader.inObject("options", [&](InputReader& options) { known.damping = readDamping(options); });
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);

  const auto ranking = rank(file.table, known.evidence, known.damping);
  Json causes = Json::array();
  std::vector<CauseBar> bars;
  for (const RankedCause& one : ranking.causes) {
    const auto& cause = file.table.causes[one.cause];
    causes.push_back({{"cause", cause.key},
                      {"name", cause.name},
                      {"probability", plainNumber(one.probability)},
                      {"in_words", wordsOf(one.probability)},
                      {"because", shiftsJson(file, known, one)}});
    bars.push_back({cause.name, one.probability});
  }
  outcome.result = {{"causes", std::move(causes)}, {"surprising", ranking.surprising}};
  putNotes(file, ranking, known, outcome.notes);
  outcome.options = {{"damping", plainNumber(known.damping)}};
  outcome.draw = [bars = std::move(bars)](figure::Size size) { return causesPicture(bars, size); };
  return outcome;
}

}  // namespace sw::compute
