// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/brakes/brakes.h"
#include "compute/brakes/decision_texts.h"
#include "compute/brakes/disc_decision_picture.h"
#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

using mechanics::DiscDecision;
using mechanics::DiscFigures;
using mechanics::JudgedDisc;
using mechanics::MeasuredLength;

std::optional<MeasuredLength> measured(InputReader& reader, std::string_view key,
                                       std::string_view uncertainty) {
  const auto read = readWithUncertainty(reader, key, uncertainty);
  if (!read) return std::nullopt;
  return MeasuredLength{read->value, read->standardUncertainty};
}

DiscFigures readDisc(InputReader& reader) {
  DiscFigures disc;
  reader.requireKey("minimum");
  disc.minimum = measured(reader, "minimum", "minimum_uncertainty").value_or(MeasuredLength{});
  disc.variation = measured(reader, "variation", "variation_uncertainty");
  disc.runout = measured(reader, "runout", "runout_uncertainty");
  disc.residual = measured(reader, "residual", "residual_uncertainty");
  disc.firstOrder = reader.optional<Length>("first_order", Sign::NotNegative);
  disc.cutPerSide = reader.optional<Length>("cut_per_side", Sign::NotNegative);
  disc.condition =
      reader.requiredChoice<mechanics::DiscCondition>("condition").value_or(disc.condition);
  return disc;
}

void readDiscs(InputReader& reader, DecisionInput& input) {
  reader.requireKey("discs");
  std::size_t count = 0;
  reader.eachObject("discs", [&](InputReader& inner) {
    const std::string side = inner.requiredWord("side", {"left", "right"});
    const DiscFigures disc = readDisc(inner);
    if (count < mechanics::kDiscsOfAnAxle) {
      input.sides[count] = side;
      input.decision.discs[count] = disc;
    }
    ++count;
  });
  if (!reader.fields().has("discs")) return;
  const bool pair = count == mechanics::kDiscsOfAnAxle && input.sides[0] != input.sides[1];
  if (!pair) reader.fail({ErrorCode::OutOfRange, "disc_decision.two_discs", "/discs", {}});
}

Result<DecisionInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  DecisionInput input;
  const std::string mounting = reader.requiredWord("mounting", {"outside_hub", "behind_hub"});
  input.behindHub = mounting == "behind_hub";
  readDiscs(reader, input);
  mechanics::DiscLimits& limits = input.decision.limits;
  limits.discard = reader.required<Length>("discard", Sign::Positive);
  limits.machineTo = reader.optional<Length>("machine_to", Sign::Positive);
  limits.variation = reader.optional<Length>("variation_limit", Sign::Positive);
  limits.runout = reader.optional<Length>("runout_limit", Sign::Positive);
  limits.differenceAfter =
      reader.optional<Length>("difference_limit", Sign::Positive).value_or(limits.differenceAfter);
  input.decision.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> discFields() {
  const FieldNotes required{.presence = Presence::Required, .range = "more than 0"};
  const FieldNotes optional{.range = "0 or more"};
  return {
      {.name = "side", .kind = "word", .presence = Presence::Required, .range = "left | right"},
      quantityField("minimum", QuantityKind::Length, "smallest thickness", required),
      quantityField("minimum_uncertainty", QuantityKind::Length, "standard uncertainty", required),
      quantityField("variation", QuantityKind::Length, "of the thickness", optional),
      quantityField("variation_uncertainty", QuantityKind::Length,
                    "standard uncertainty; needed with variation", optional),
      quantityField("runout", QuantityKind::Length, "total at the track (TIR)", optional),
      quantityField("runout_uncertainty", QuantityKind::Length,
                    "standard uncertainty; needed with runout", optional),
      quantityField("residual", QuantityKind::Length, "runout without its first order", optional),
      quantityField("residual_uncertainty", QuantityKind::Length,
                    "standard uncertainty; needed with residual", optional),
      quantityField("first_order", QuantityKind::Length, "R1 of the runout", optional),
      quantityField("cut_per_side", QuantityKind::Length,
                    "what machining takes off each face; needed for resurfacing", optional),
      {.name = "condition",
       .kind = "word",
       .presence = Presence::Required,
       .range = "none | cracks | blue_spots | heavy_corrosion",
       .meaning = "seen on the disc; the worst there is"}};
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes positive{.range = "more than 0"};
  return withEnvelope(
      {{.name = "mounting",
        .kind = "word",
        .presence = Presence::Required,
        .range = "outside_hub | behind_hub",
        .meaning = "behind_hub: bolted to the hub, which must come off with it"},
       {.name = "discs",
        .kind = "list of object",
        .presence = Presence::Required,
        .range = "two: left and right of one axle",
        .fields = discFields()},
       quantityField("discard", QuantityKind::Length, "least thickness a disc may be used with",
                     {.presence = Presence::Required, .range = "more than 0"}),
       quantityField("machine_to", QuantityKind::Length,
                     "least thickness after machining, another limit than discard; leave it out "
                     "where the documentation forbids machining",
                     {.range = "discard or more"}),
       quantityField("variation_limit", QuantityKind::Length, "of the thickness", positive),
       quantityField("runout_limit", QuantityKind::Length,
                     "on the total at the track; the residual is held against it, too", positive),
       quantityField("difference_limit", QuantityKind::Length,
                     "between left and right after machining",
                     {.range = "more than 0", .defaultValue = R"("0.5 mm")"})},
      {confidenceField()});
}

std::vector<FieldDescription> outputFields() {
  constexpr auto kOptional = Presence::Optional;
  return {
      {.name = "decision",
       .kind = "word",
       .presence = Presence::Required,
       .range = "keep | clean_and_index | resurface | replace | not_decided",
       .meaning = "for both discs of the axle"},
      {.name = "reasons",
       .kind = "list of object",
       .presence = Presence::Required,
       .meaning = "what was found, each with its figure",
       .fields = {{.name = "reason",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = "condition | below_discard | minimum_not_proved | variation_outside | "
                            "not_flat | seat_tilted | not_machinable | machining_not_proved | "
                            "machining_unknown | difference_too_large | difference_not_proved | "
                            "variation_undecided | flatness_undecided | runout_undecided | "
                            "variation_missing | runout_missing | all_within"},
                  {.name = "side", .kind = "word", .range = "left | right"},
                  quantityField("value", QuantityKind::Length, ""),
                  quantityField("limit", QuantityKind::Length, ""),
                  {.name = "text", .kind = "text", .presence = Presence::Required}}},
      {.name = "discs",
       .kind = "list of object",
       .presence = Presence::Required,
       .fields = {{.name = "side", .kind = "word", .presence = Presence::Required},
                  judgedField("minimum", QuantityKind::Length, "against discard"),
                  judgedField("variation", QuantityKind::Length, "", kOptional),
                  judgedField("runout", QuantityKind::Length, "", kOptional),
                  judgedField("residual", QuantityKind::Length, "against runout_limit", kOptional),
                  quantityField("tilt", QuantityKind::Length, "2 R1: the seat's part"),
                  judgedField("after_machining", QuantityKind::Length, "against machine_to",
                              kOptional)}},
      judgedField("difference_after", QuantityKind::Length,
                  "left against right after machining, against difference_limit", kOptional)};
}

void putJudged(Json& object, const char* key,
               const std::optional<mechanics::Judged<Length>>& judged) {
  if (judged) object[key] = judgedJson(*judged);
}

Json discJson(const JudgedDisc& disc, const std::string& side) {
  Json object = {{"side", side}, {"minimum", judgedJson(disc.minimum)}};
  putJudged(object, "variation", disc.variation);
  putJudged(object, "runout", disc.runout);
  putJudged(object, "residual", disc.residual);
  if (disc.tilt) object["tilt"] = quantityText(*disc.tilt);
  putJudged(object, "after_machining", disc.afterMachining);
  return object;
}

Json reasonsJson(const DecisionInput& input, const DiscDecision& decision) {
  Json reasons = Json::array();
  for (const mechanics::DiscFinding& finding : decision.findings) {
    Json object = {{"reason", word(finding.reason)}, {"text", reasonText(finding, input)}};
    if (finding.disc) object["side"] = input.sides[*finding.disc];
    if (finding.value) object["value"] = quantityText(*finding.value);
    if (finding.limit) object["limit"] = quantityText(*finding.limit);
    reasons.push_back(std::move(object));
  }
  return reasons;
}

constexpr std::string_view kExampleInput = R"({
  "mounting": "behind_hub",
  "discs": [
    {"side": "left", "minimum": "15.124 mm", "minimum_uncertainty": "0.003 mm",
     "variation": "0.031 mm", "variation_uncertainty": "0.0006 mm",
     "runout": "0.06 mm", "runout_uncertainty": "0.004 mm",
     "residual": "0.022 mm", "residual_uncertainty": "0.004 mm", "first_order": "0.024 mm",
     "cut_per_side": "0.12 mm", "condition": "none"},
    {"side": "right", "minimum": "15.208 mm", "minimum_uncertainty": "0.003 mm",
     "variation": "0.008 mm", "variation_uncertainty": "0.0006 mm",
     "runout": "0.05 mm", "runout_uncertainty": "0.004 mm",
     "residual": "0.018 mm", "residual_uncertainty": "0.004 mm", "first_order": "0.019 mm",
     "cut_per_side": "0.12 mm", "condition": "none"}],
  "discard": "13.8 mm",
  "machine_to": "14.3 mm",
  "variation_limit": "0.014 mm",
  "runout_limit": "0.09 mm"
})";

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "decision": "resurface",
    "reasons": [
      {
        "reason": "variation_outside",
        "text": "left: the thickness varies more than allowed, 0.031 mm against 0.014 mm",
        "side": "left", "value": "0.031 mm", "limit": "0.014 mm"}],
    "discs": [
      {
        "side": "left",
        "minimum": {
          "value": "15.124 mm", "standard_uncertainty": "0.003 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00587989195362016 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1},
        "variation": {
          "value": "0.031 mm", "standard_uncertainty": "0.0006 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00117597839072403 mm", "verdict": "outside",
          "side": "above", "conformance_probability": 6.71573480187465e-177},
        "runout": {
          "value": "0.06 mm", "standard_uncertainty": "0.004 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00783985593816022 mm", "verdict": "within",
          "side": "none", "conformance_probability": 0.999999999999968},
        "residual": {
          "value": "0.022 mm", "standard_uncertainty": "0.004 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00783985593816022 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1},
        "tilt": "0.048 mm",
        "after_machining": {
          "value": "14.884 mm", "standard_uncertainty": "0.003 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00587989195362016 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1}},
      {
        "side": "right",
        "minimum": {
          "value": "15.208 mm", "standard_uncertainty": "0.003 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00587989195362016 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1},
        "variation": {
          "value": "0.008 mm", "standard_uncertainty": "0.0006 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00117597839072403 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1},
        "runout": {
          "value": "0.05 mm", "standard_uncertainty": "0.004 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00783985593816022 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1},
        "residual": {
          "value": "0.018 mm", "standard_uncertainty": "0.004 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00783985593816022 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1},
        "tilt": "0.038 mm",
        "after_machining": {
          "value": "14.968 mm", "standard_uncertainty": "0.003 mm",
          "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
          "expanded_uncertainty": "0.00587989195362016 mm", "verdict": "within",
          "side": "none", "conformance_probability": 1}}],
    "difference_after": {
      "value": "0.0840000000000007 mm", "standard_uncertainty": "0.00424264068711928 mm",
      "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
      "expanded_uncertainty": "0.00831542294609807 mm", "verdict": "within", "side": "none",
      "conformance_probability": 1}},
  "notes": [
    {
      "code": "next",
      "text": "Cut both sides of both discs alike, then measure thickness and runout )"
    R"(again; new pads."},
    {
      "code": "hub_comes_off",
      "text": "The disc is bolted behind the hub: the hub comes off with it. Allow more )"
    R"(time, fit a new seal, and set the wheel bearing anew."},
    {"code": "pair", "text": "The two discs of an axle share one fate: unequal discs pull."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "limits of wear, machining, variation and runout, each proved",
    "source": "common practice, no source; JCGM 106:2012",
    "options": {"confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "1. cracks, blue spots, heavy corrosion or a minimum proved below discard, on either "
    "disc: replace both\n"
    "2. variation or residual runout of either proved over its limit: cut both sides of both "
    "discs, if minimum − 2 × cut per side is proved at least machine-to on both; proved "
    "below on either: replace; else not decided\n"
    "3. minimum, variation or residual undecided or missing: not decided, measure again\n"
    "4. total runout over its limit: clean and index; undecided: not decided\n"
    "5. else keep\n"
    "proved: the probability is at least the confidence, from figure, limit and standard "
    "uncertainty";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The figures of both discs were taken the same way, at the thinnest place found.",
    "Discard and machine-to are two limits: between them a disc may be used, not machined.",
    "After machining left and right differ by less than a limit, 0.5 mm unless told "
    "otherwise; else it is not decided.",
    "A disc is never kept whose minimum is not proved above discard.",
    "A variation or runout without a limit is not judged, and is named as such.",
    "The order of the rules is common practice, no source.",
    "Where the vehicle's documentation forbids machining, leave machine-to out.",
});

}  // namespace

Description describeDiscDecision() {
  return {.title = "What becomes of the two discs of an axle",
          .method = "limits of wear, machining, variation and runout, each proved",
          .source = "common practice, no source; JCGM 106:2012",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runDiscDecision(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto decision = mechanics::discDecision(input->decision);
  if (!decision) return asInputError(decision.error());
  Json discs = Json::array();
  for (std::size_t at = 0; at < mechanics::kDiscsOfAnAxle; ++at) {
    discs.push_back(discJson(decision->discs[at], input->sides[at]));
  }
  outcome.result = {{"decision", word(decision->action)},
                    {"reasons", reasonsJson(*input, *decision)},
                    {"discs", std::move(discs)}};
  putJudged(outcome.result, "difference_after", decision->differenceAfter);
  for (auto& note : decisionNotes(*input, *decision)) outcome.notes.push_back(std::move(note));
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->decision.confidence);
  outcome.draw = [input = *input, decision = *decision](figure::Size size) {
    return discDecisionPicture(input, decision, size);
  };
  return outcome;
}

}  // namespace sw::compute
