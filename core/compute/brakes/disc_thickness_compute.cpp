// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/brakes/brakes.h"
#include "compute/brakes/gauge_input.h"
#include "compute/brakes/orders_output.h"
#include "compute/brakes/turn_parts.h"
#include "compute/brakes/turn_picture.h"
#include "compute/picture_parts.h"
#include "mechanics/brakes/disc_thickness.h"

namespace sw::compute {

namespace {

using mechanics::DiscThickness;
using mechanics::DiscThicknessInput;
using mechanics::ThicknessGauge;

Result<DiscThicknessInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  DiscThicknessInput input;
  input.gauge = reader.requiredChoice<ThicknessGauge>("gauge").value_or(input.gauge);
  reader.requireKey("readings");
  input.readings = reader.list<Length>("readings", Sign::Positive);
  input.otherRadius = reader.list<Length>("other_radius", Sign::Positive);
  input.instrument = readGauge(reader, QuantityKind::Length);
  reader.inObject("repeatability", [&](InputReader& inner) {
    input.repeatability = readPooledScatter(inner, QuantityKind::Length);
  });
  input.discard = reader.optional<Length>("discard", Sign::Positive);
  input.variationLimit = reader.optional<Length>("variation_limit", Sign::Positive);
  input.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  constexpr FieldNotes kPositive{.range = "more than 0"};
  return withEnvelope(
      {{.name = "gauge",
        .kind = "word",
        .presence = Presence::Required,
        .range = "micrometer | caliper_over_lip",
        .meaning = "what touched the disc; a caliper that spans a lip of rust or wear reads thick"},
       {.name = "readings",
        .kind = "list of length",
        .unit = "mm",
        .presence = Presence::Required,
        .range = "at least 4, each more than 0",
        .meaning = "thickness at even steps round the disc, all at one radius: 12 usual, 8 the "
                   "least where a brake judders, 4 enough for wear; 11 hide no order"},
       {.name = "other_radius",
        .kind = "list of length",
        .unit = "mm",
        .range = "at least 4, each more than 0",
        .meaning = "the same at a second radius, for taper; counts for minimum and variation"},
       gaugeField(QuantityKind::Length),
       {.name = "repeatability",
        .kind = "object",
        .meaning = "scatter of readings repeated at one spot",
        .fields = {quantityField("amount", QuantityKind::Length,
                                 "standard deviation of single readings",
                                 {.presence = Presence::Required, .range = "more than 0"}),
                   {.name = "readings",
                    .kind = "whole number",
                    .presence = Presence::Required,
                    .range = "2 to 1000000",
                    .meaning = "how many it comes from"}}},
       quantityField("discard", QuantityKind::Length,
                     "least thickness a disc may be used with; not the one to machine to",
                     kPositive),
       quantityField("variation_limit", QuantityKind::Length, "largest thickness variation",
                     kPositive)},
      {confidenceField()});
}

std::vector<FieldDescription> outputFields() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {{.name = "points",
           .kind = "whole number",
           .presence = Presence::Required,
           .meaning = "of the first radius"},
          quantityField("mean", QuantityKind::Length, "of the first radius", kAlways),
          {.name = "thinnest_point",
           .kind = "whole number",
           .presence = Presence::Required,
           .meaning = "its number at the first radius, counted from 1"},
          judgedField("minimum", QuantityKind::Length,
                      "smallest reading of all, against discard; within only where it is proved"),
          judgedField("variation", QuantityKind::Length,
                      "largest less smallest reading of one radius, against variation_limit"),
          {.name = "variation_decision",
           .kind = "word",
           .presence = Presence::Required,
           .range = "within | outside | undecided | no_limit",
           .meaning = "by probability alone, before what points and gauge cannot show"},
          ordersField(),
          judgedField("taper", QuantityKind::Length,
                      "mean of other_radius less mean of readings; without a limit",
                      Presence::Optional)};
}

void noteGauge(const DiscThicknessInput& input, const DiscThickness& disc,
               std::vector<Note>& notes) {
  if (input.gauge == ThicknessGauge::CaliperOverLip) {
    notes.push_back({"gauge_over_lip",
                     "A caliper over a rusty lip reads thick: no minimum is proved by it, and the "
                     "lip may be what varies. Use a micrometer with pointed or disc anvils."});
  }
  if (!disc.instrumentErrorKnown) {
    notes.push_back({"instrument_error_unknown",
                     "The instrument's own error is not known: a minimum is not proved by it. "
                     "Check it on a gauge block and give permissible_error."});
  }
  if (disc.variation.verdict == Verdict::InstrumentTooCoarse) {
    notes.push_back(
        {"too_coarse", "A graduation of " + shown(Length::fromSi(input.instrument.graduation)) +
                           " cannot prove a variation below " + shown(*input.variationLimit) +
                           ": it only shows one well beyond. Read with 0.001 mm."});
  }
}

void noteVerdicts(const DiscThicknessInput& input, const DiscThickness& disc,
                  std::vector<Note>& notes) {
  if (input.variationLimit && *input.variationLimit > mechanics::kLargeVariationLimit) {
    notes.push_back({"variation_limit_large",
                     "A variation limit above 0.05 mm is unusual: books give about 0.01 to 0.02 "
                     "mm, and a slipped decimal has been printed. Check the figure."});
  }
  const bool held = disc.variationDecision == Verdict::Within &&
                    disc.variation.verdict == Verdict::Undecided &&
                    input.gauge == ThicknessGauge::Micrometer;
  if (held) {
    notes.push_back({"too_few_points",
                     "Fewer than 8 points do not show a variation within its "
                     "limit; they do for wear. Read 12."});
  }
  if (disc.variation.verdict == Verdict::Outside) {
    notes.push_back({"variation_outside",
                     "The variation is proved over its limit: decide for "
                     "both discs of the axle (disc-decision)."});
  }
  if (disc.minimum.verdict == Verdict::Undecided) {
    notes.push_back({"minimum_not_proved",
                     "The minimum is not proved above discard: not a disc to keep on this "
                     "reading. Measure again with a finer or checked micrometer."});
  }
  if (disc.minimum.verdict == Verdict::Outside) {
    notes.push_back({"below_discard",
                     "Below discard: both discs of the axle are renewed, with "
                     "their pads."});
  }
}

/// Where it is thinnest, and by how much it varies.
void noteWhatWasRead(const DiscThicknessInput& input, const DiscThickness& disc,
                     std::vector<Note>& notes) {
  const Thinnest thinnest = thinnestOf(input);
  std::string text = "Thinnest " + shown(thinnest.thickness) + " at " +
                     degreesLabel(degrees(thinnest.place), 0) + "; the thickness varies by " +
                     shown(disc.variation.value) + ".";
  if (!input.variationLimit) {
    text += " The sheet has no limit on the variation: books give about 0.01 to 0.02 mm.";
  }
  notes.push_back({"read", text});
}

constexpr std::string_view kExampleInput = R"({
  "gauge": "micrometer",
  "readings": ["22.413 mm", "22.411 mm", "22.409 mm", "22.404 mm", "22.401 mm", "22.399 mm",
               "22.398 mm", "22.400 mm", "22.403 mm", "22.405 mm", "22.410 mm", "22.412 mm"],
  "instrument": {"graduation": "0.001 mm", "permissible_error": "0.003 mm"},
  "discard": "21.5 mm",
  "variation_limit": "0.012 mm"
})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "points": 12,
    "mean": "22.4054166666667 mm",
    "thinnest_point": 7,
    "minimum": {
      "value": "22.398 mm",
      "standard_uncertainty": "0.00175594229214212 mm",
      "degrees_of_freedom": "infinity",
      "coverage_factor": 1.95996398454005,
      "expanded_uncertainty": "0.00344158365152927 mm",
      "verdict": "within",
      "side": "none",
      "conformance_probability": 1},
    "variation": {
      "value": "0.0150000000000011 mm",
      "standard_uncertainty": "0.000408248290463863 mm",
      "degrees_of_freedom": "infinity",
      "coverage_factor": 1.95996398454005,
      "expanded_uncertainty": "0.000800151946059218 mm",
      "verdict": "outside",
      "side": "above",
      "conformance_probability": 1.00244804011952e-13},
    "variation_decision": "outside",
    "orders": [
      {
        "order": 1,
        "captured_share": 0.965925826289068,
        "amplitude": "0.00725469147236674 mm",
        "phase": "353.936273346984 deg"},
      {
        "order": 2,
        "captured_share": 0.866025403784439,
        "amplitude": "0.0002886751345951 mm",
        "phase": "29.9999999998854 deg"},
      {
        "order": 3,
        "captured_share": 0.707106781186548,
        "amplitude": "0.000166666666665676 mm",
        "phase": "270.000000000198 deg"},
      {
        "order": 4,
        "captured_share": 0.75,
        "amplitude": "0.000440958551843013 mm",
        "phase": "199.106605350869 deg"}]},
  "notes": [
    {
      "code": "variation_outside",
      "text": "The variation is proved over its limit: decide for both discs of the axle (disc-decision)."},
    {
      "code": "read",
      "text": "Thinnest 22.398 mm at 180°; the thickness varies by 0.015 mm."},
    {
      "code": "captured",
      "text": "12 points show at least 71 % of each order up to 4. 11 even steps show 98 % of every order up to 10."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "smallest, variation and orders of even samples, conformance probability",
    "source": "JCGM 100:2008; JCGM 106:2012; 8 to 12 points common practice, no source",
    "options": {"confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "minimum = smallest reading; variation = largest − smallest reading\n"
    "taper = mean at the other radius − mean at the first\n"
    "uncertainty of one reading = √(graduation² ÷ 12 + error² ÷ 3 + repeatability²)\n"
    "uncertainty of the variation: graduation² and repeatability² count twice, the gauge's "
    "own error drops out, a stated local error stays\n"
    "n thick places a turn: amplitude = √(C² + S²), C and S = 2 ÷ number of points × sum of "
    "(reading × cos or sin of (n × its place on the turn))\n"
    "within: the probability that the true value keeps the limit is at least the confidence";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The faces are clean and bright, the points lie at even steps and one radius, and the "
    "anvils reach the worn track.",
    "Four points or more; eight to twelve are common practice, no source.",
    "With fewer than 8 points the variation is never called within: they are blind to more "
    "than one thick place a turn.",
    "A caliper that stands on a lip of rust or wear reads thick: it can condemn a disc, "
    "never pass it.",
    "Where the gauge's error is not known the minimum stays undecided.",
    "Scatter of the readings makes the variation read high, few points make it read low, and "
    "a thin spot between two points is not seen.",
});

}  // namespace

Description describeDiscThickness() {
  return {.title = "Thickness of a brake disc round the turn",
          .method = "smallest, variation and orders of even samples, conformance probability",
          .source = "JCGM 100:2008; JCGM 106:2012; 8 to 12 points common practice, no source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runDiscThickness(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto disc = mechanics::discThickness(*input);
  if (!disc) return asInputError(disc.error());
  outcome.result = {{"points", input->readings.size()},
                    {"mean", quantityText(disc->extent.mean)},
                    {"thinnest_point", disc->extent.leastAt + 1},
                    {"minimum", judgedJson(disc->minimum)},
                    {"variation", judgedJson(disc->variation)},
                    {"variation_decision", word(disc->variationDecision)},
                    {"orders", ordersJson(disc->orders)}};
  if (disc->taper) outcome.result["taper"] = judgedJson(*disc->taper);
  noteVerdicts(*input, *disc, outcome.notes);
  noteWhatWasRead(*input, *disc, outcome.notes);
  noteGauge(*input, *disc, outcome.notes);
  for (auto& note : captureNotes(input->readings.size(), disc->orders)) {
    outcome.notes.push_back(std::move(note));
  }
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->confidence);
  outcome.draw = [input = *input, disc = *disc](figure::Size size) {
    return thicknessPicture(input, disc, size);
  };
  return outcome;
}

}  // namespace sw::compute
