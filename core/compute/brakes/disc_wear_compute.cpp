// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/brakes/brakes.h"
#include "compute/brakes/disc_wear_picture.h"
#include "compute/brakes/gauge_input.h"
#include "mechanics/brakes/disc_wear.h"
#include "units/format.h"

namespace sw::compute {

namespace {

using mechanics::DiscWear;
using mechanics::DiscWearInput;
using mechanics::WearVisit;

constexpr std::string_view kRoad = "km";
constexpr double kFarAhead = 2;  // times the road the visits span

Unit roadUnit() {
  return findUnit(QuantityKind::Length, kRoad).value_or(defaultUnit(QuantityKind::Length));
}

std::string roadText(Length distance) {
  return exactText(distance.si(), roadUnit());
}

Result<DiscWearInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  DiscWearInput input;
  reader.requireKey("visits");
  reader.eachObject("visits", [&](InputReader& inner) {
    WearVisit visit;
    visit.odometer = Length::fromSi(inner.requiredQuantity(
        "odometer", {.kind = QuantityKind::Length, .sign = Sign::NotNegative, .unit = kRoad}));
    visit.minimum = inner.required<Length>("minimum", Sign::Positive);
    visit.standardUncertainty = inner.required<Length>("uncertainty", Sign::Positive);
    input.visits.push_back(visit);
  });
  input.discard = reader.required<Length>("discard", Sign::Positive);
  input.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes required{.presence = Presence::Required, .range = "more than 0"};
  return withEnvelope(
      {{.name = "visits",
        .kind = "list of object",
        .presence = Presence::Required,
        .range = "at least two, at different odometer readings",
        .meaning = "earlier measurements of this very disc, in any order",
        .fields = {{.name = "odometer",
                    .kind = "length",
                    .unit = kRoad,
                    .presence = Presence::Required,
                    .range = "0 or more"},
                   quantityField("minimum", QuantityKind::Length, "smallest thickness", required),
                   quantityField("uncertainty", QuantityKind::Length, "standard uncertainty of it",
                                 required)}},
       quantityField("discard", QuantityKind::Length, "least thickness a disc may be used with",
                     required)},
      {confidenceField()});
}

FieldDescription roadField(std::string_view name, std::string_view meaning,
                           Presence presence = Presence::Required) {
  return {.name = name, .kind = "length", .unit = kRoad, .presence = presence, .meaning = meaning};
}

std::vector<FieldDescription> outputFields() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {
      quantityField("wear", QuantityKind::Length, "in 10 000 km", kAlways),
      quantityField("wear_least", QuantityKind::Length, "lower end of its interval", kAlways),
      quantityField("wear_most", QuantityKind::Length, "upper end", kAlways),
      quantityField("thickness", QuantityKind::Length, "of the line at the last visit", kAlways),
      roadField("distance_to_discard", "from the last visit, if wear goes on alike"),
      roadField("distance_least", "lower end of its interval"),
      roadField("distance_most", "upper end; absent where wear is not proved", Presence::Optional),
      roadField("recheck_after",
                "from the last visit: half of distance_least, at most the "
                "road the visits span"),
      {.name = "coverage_factor",
       .kind = "number",
       .presence = Presence::Required,
       .meaning = "k of the intervals"}};
}

void noteWear(const DiscWear& wear, std::vector<Note>& notes) {
  if (wear.atDiscard) {
    notes.push_back({"at_discard",
                     "The line has reached discard: nothing is left to foretell. "
                     "Measure now, and decide for both discs of the axle."});
  } else if (wear.recheck.si() <= 0) {
    notes.push_back({"not_proved",
                     "The last thickness is not proved above discard: measure "
                     "again now with a finer or checked micrometer."});
  } else {
    notes.push_back({"recheck",
                     "Half of the lower end, because wear speeds up: a thinner disc "
                     "runs hotter, and pads and use change."});
  }
  if (wear.scatterRaised) {
    notes.push_back({"scatter_raised",
                     "The visits scatter more than their uncertainties allow: "
                     "the interval was widened. Read at the same places with "
                     "the same gauge."});
  }
  if (!wear.distanceMost) {
    notes.push_back({"wear_not_proved",
                     "Wear is not proved by these visits: the lower end holds, "
                     "the distance itself means little."});
  }
  if (wear.distance > kFarAhead * wear.spanned) {
    notes.push_back({"far_ahead",
                     "The distance reaches far beyond the road that was watched: "
                     "go by the recheck."});
  }
}

constexpr std::string_view kExampleInput = R"({
  "visits": [
    {"odometer": "61200 km", "minimum": "23.842 mm", "uncertainty": "0.004 mm"},
    {"odometer": "78500 km", "minimum": "23.655 mm", "uncertainty": "0.004 mm"},
    {"odometer": "97300 km", "minimum": "23.461 mm", "uncertainty": "0.006 mm"}],
  "discard": "22 mm"
})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "wear": "0.105921540394476 mm", "wear_least": "0.102112578974391 mm",
    "wear_most": "0.10973050181456 mm", "thickness": "23.4583371222322 mm",
    "distance_to_discard": "137680.883114148 km", "distance_least": "132102.683774823 km",
    "recheck_after": "36100 km", "coverage_factor": 1.95996398454005,
    "distance_most": "143673.784603337 km"},
  "notes": [
    {
      "code": "recheck",
      "text": "Half of the lower end, because wear speeds up: a thinner disc runs hotter, )"
                                            R"(and pads and use change."},
    {
      "code": "far_ahead",
      "text": "The distance reaches far beyond the road that was watched: go by the )"
                                            R"(recheck."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "weighted straight line, interval of a quotient",
    "source": "weighted least squares; Fieller's theorem; half of the lower end common )"
                                            R"(practice, no source",
    "options": {"confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "straight line through odometer and smallest thickness, each visit with the weight 1 ÷ "
    "uncertainty²\n"
    "wear = loss of thickness of that line over 10 000 km\n"
    "distance left = (thickness of the line at the last visit − discard) ÷ wear × 10 000 km\n"
    "its lower end: the shortest distance that the uncertainties of line and wear together "
    "allow (Fieller)\n"
    "measure again after half of the lower end, but no farther than the road the visits span";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "It is the same disc at all visits, not machined between them, measured at the same "
    "place with the same kind of gauge.",
    "The errors of the visits are independent; one micrometer throughout makes the interval "
    "too wide, not too narrow.",
    "Two visits or more at different odometer readings: one visit tells no rate.",
    "Wear speeds up as a disc gets thinner and runs hotter, hence half of the lower end "
    "(common practice, no source).",
    "A thickness that rises is refused: another disc or a measuring fault.",
});

}  // namespace

Description describeDiscWear() {
  return {.title = "Wear of a disc from visit to visit",
          .method = "weighted straight line, interval of a quotient",
          .source =
              "weighted least squares; Fieller's theorem; half of the lower end common "
              "practice, no source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runDiscWear(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto wear = mechanics::discWear(*input);
  if (!wear) return asInputError(wear.error());
  outcome.result = {{"wear", quantityText(wear->rate)},
                    {"wear_least", quantityText(wear->rateLeast)},
                    {"wear_most", quantityText(wear->rateMost)},
                    {"thickness", quantityText(wear->thickness)},
                    {"distance_to_discard", roadText(wear->distance)},
                    {"distance_least", roadText(wear->distanceLeast)},
                    {"recheck_after", roadText(wear->recheck)},
                    {"coverage_factor", plainNumber(wear->coverageFactor)}};
  if (wear->distanceMost) outcome.result["distance_most"] = roadText(*wear->distanceMost);
  noteWear(*wear, outcome.notes);
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->confidence);
  outcome.draw = [input = *input, wear = *wear](figure::Size size) {
    return discWearPicture(input, wear, size);
  };
  return outcome;
}

}  // namespace sw::compute
