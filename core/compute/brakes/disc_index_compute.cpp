// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/brakes/brakes.h"
#include "compute/brakes/disc_index_picture.h"
#include "compute/brakes/gauge_input.h"
#include "mechanics/brakes/disc_index.h"

namespace sw::compute {

namespace {

using mechanics::DiscIndex;
using mechanics::IndexPosition;
using mechanics::UncertainVector;

constexpr std::size_t kRuns = 2;

struct IndexInput {
  int studs = 0;
  std::vector<IndexPosition> runs;
  std::optional<UncertainVector> hub, disc;
  std::optional<Length> limit;
  double confidence = 0.95;
};

UncertainVector readVector(InputReader& reader) {
  UncertainVector vector;
  vector.vector.amount = reader.required<Length>("amount", Sign::NotNegative);
  vector.vector.angle = reader.required<Angle>("angle");
  vector.standardUncertainty =
      reader.optional<Length>("uncertainty", Sign::NotNegative).value_or(Length{});
  return vector;
}

void checkWay(InputReader& reader, const IndexInput& input) {
  const bool parts = reader.fields().has("hub") || reader.fields().has("disc");
  const bool runs = reader.fields().has("runs");
  if (parts && runs) return reader.fail(oneOfTwo("runs", "hub"));
  if (parts) {
    reader.requireKey("hub");
    return reader.requireKey("disc");
  }
  reader.requireKey("runs");
  if (runs && input.runs.size() != kRuns) {
    reader.fail({ErrorCode::OutOfRange,
                 "disc_index.two_runs",
                 "/runs",
                 {{"count", std::to_string(input.runs.size())}}});
  }
}

Result<IndexInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  IndexInput input;
  reader.requireKey("studs");
  input.studs =
      reader.wholeNumber("studs", mechanics::kFewestStuds, mechanics::kMostStuds).value_or(0);
  reader.eachObject("runs", [&](InputReader& inner) {
    IndexPosition run;
    inner.requireKey("position");
    run.position = inner.wholeNumber("position", 0, mechanics::kMostStuds - 1).value_or(0);
    run.runout = readVector(inner);
    input.runs.push_back(run);
  });
  reader.inObject("hub", [&](InputReader& inner) { input.hub = readVector(inner); });
  reader.inObject("disc", [&](InputReader& inner) { input.disc = readVector(inner); });
  checkWay(reader, input);
  input.limit = reader.optional<Length>("runout_limit", Sign::Positive);
  input.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> vectorFields() {
  constexpr FieldNotes kRequired{.presence = Presence::Required, .range = "0 or more"};
  return {
      quantityField("amount", QuantityKind::Length,
                    "R1 of disc-runout: half of what tilt adds to the total", kRequired),
      quantityField("angle", QuantityKind::Angle,
                    "of its high spot from one mark on the hub, the same sense throughout",
                    {.presence = Presence::Required}),
      quantityField("uncertainty", QuantityKind::Length, "standard uncertainty along and across",
                    {.range = "0 or more", .defaultValue = R"("0 mm")"})};
}

std::vector<FieldDescription> inputFields() {
  auto run = vectorFields();
  run.insert(run.begin(), {.name = "position",
                           .kind = "whole number",
                           .presence = Presence::Required,
                           .range = "0 to studs - 1",
                           .meaning = "studs the disc was turned on, the way angles grow"});
  return withEnvelope(
      {{.name = "studs",
        .kind = "whole number",
        .presence = Presence::Required,
        .range = "3 to 12"},
       {.name = "runs",
        .kind = "list of object",
        .range = "two, in different positions",
        .meaning = "first order of the runout in two positions; this, or hub and "
                   "disc",
        .fields = std::move(run)},
       {.name = "hub",
        .kind = "object",
        .meaning = "the part that stays with the hub",
        .fields = vectorFields()},
       {.name = "disc",
        .kind = "object",
        .meaning = "the part that turns with the disc, at position 0",
        .fields = vectorFields()},
       quantityField("runout_limit", QuantityKind::Length,
                     "on the total; held against twice the best amount", {.range = "more than 0"})},
      {confidenceField()});
}

FieldDescription vectorOut(std::string_view name, std::string_view meaning) {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {.name = name,
          .kind = "object",
          .presence = Presence::Required,
          .meaning = meaning,
          .fields = {quantityField("amount", QuantityKind::Length, "", kAlways),
                     quantityField("angle", QuantityKind::Angle, "", kAlways),
                     quantityField("standard_uncertainty", QuantityKind::Length, "", kAlways)}};
}

std::vector<FieldDescription> outputFields() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  auto position = vectorOut("positions", "all ways round");
  position.kind = "list of object";
  position.fields.insert(
      position.fields.begin(),
      {.name = "position", .kind = "whole number", .presence = Presence::Required});
  return {vectorOut("hub", "stays with the hub"),
          vectorOut("disc", "turns with the disc, at position 0"),
          std::move(position),
          {.name = "best",
           .kind = "whole number",
           .presence = Presence::Required,
           .meaning = "position with the smallest amount"},
          {.name = "worst", .kind = "whole number", .presence = Presence::Required},
          judgedField("best_runout", QuantityKind::Length,
                      "twice the best amount: what tilt adds to the total there"),
          quantityField("floor", QuantityKind::Length,
                        "least amount any way round, were there studs enough", kAlways),
          quantityField("ceiling", QuantityKind::Length, "largest amount", kAlways)};
}

Json vectorJson(const UncertainVector& vector) {
  return {{"amount", quantityText(vector.vector.amount)},
          {"angle", quantityText(vector.vector.angle)},
          {"standard_uncertainty", quantityText(vector.standardUncertainty)}};
}

Json resultJson(const DiscIndex& index, const mechanics::Judged<Length>& best) {
  Json positions = Json::array();
  for (const IndexPosition& each : index.positions) {
    Json object = vectorJson(each.runout);
    object["position"] = each.position;
    positions.push_back(std::move(object));
  }
  return {{"hub", vectorJson(index.parts.hub)},
          {"disc", vectorJson(index.parts.disc)},
          {"positions", std::move(positions)},
          {"best", index.best},
          {"worst", index.worst},
          {"best_runout", judgedJson(best)},
          {"floor", quantityText(index.floor)},
          {"ceiling", quantityText(index.ceiling)}};
}

void noteIndex(const IndexInput& input, const DiscIndex& index,
               const mechanics::Judged<Length>& best, std::vector<Note>& notes) {
  notes.push_back({"turn_on", "Turn the disc on by " + std::to_string(index.best) + " of " +
                                  std::to_string(input.studs) +
                                  " studs from position 0, mark it to the hub and read again: "
                                  "only a reading shows it."});
  if (input.limit && 2 * index.floor > *input.limit) {
    notes.push_back({"floor_above_limit",
                     "Hub and disc differ by more than the limit allows: no way round cures it. "
                     "Look at the hub face, its bearing and the disc's seat."});
  }
  if (input.limit && best.standardUncertainty.si() <= 0) {
    notes.push_back({"no_uncertainty",
                     "Without the uncertainty of the runs the verdict goes by "
                     "the figure alone and proves nothing."});
  }
  const bool covered = best.expandedUncertainty > best.value && best.value.si() > 0;
  if (covered) {
    notes.push_back({"uncertain",
                     "The best amount is smaller than its uncertainty: how small it "
                     "is remains open. Two runs further apart tell more."});
  }
  notes.push_back({"first_order_only",
                   "Indexing moves the first order alone; a disc that is not "
                   "flat stays so."});
}

constexpr std::string_view kExampleInput = R"({
  "studs": 6,
  "runs": [
    {"position": 0, "amount": "0.071 mm", "angle": "25 deg", "uncertainty": "0.001 mm"},
    {"position": 3, "amount": "0.038 mm", "angle": "310 deg", "uncertainty": "0.001 mm"}],
  "runout_limit": "0.08 mm"
})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "hub": {
      "amount": "0.0443891528624201 mm", "angle": "0.578404747817452 deg",
      "standard_uncertainty": "0.000707106781186547 mm"},
    "disc": {
      "amount": "0.0356665544755405 mm", "angle": "55.9680650995012 deg",
      "standard_uncertainty": "0.000707106781186547 mm"},
    "positions": [
      {
        "amount": "0.071 mm", "angle": "25 deg", "standard_uncertainty": "0.001 mm",
        "position": 0},
      {
        "amount": "0.0434146174982044 mm", "angle": "48.4961644219757 deg",
        "standard_uncertainty": "0.001 mm", "position": 1},
      {
        "amount": "0.00929134072754811 mm", "angle": "18.5502198106369 deg",
        "standard_uncertainty": "0.001 mm", "position": 2},
      {
        "amount": "0.038 mm", "angle": "310 deg", "standard_uncertainty": "0.001 mm",
        "position": 3},
      {
        "amount": "0.0678245603559994 mm", "angle": "332.214301253161 deg",
        "standard_uncertainty": "0.001 mm", "position": 4},
      {
        "amount": "0.0799916932405147 mm", "angle": "358.524532404466 deg",
        "standard_uncertainty": "0.001 mm", "position": 5}],
    "best": 2, "worst": 5,
    "best_runout": {
      "value": "0.0185826814550962 mm", "standard_uncertainty": "0.002 mm",
      "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
      "expanded_uncertainty": "0.00391992796908011 mm", "verdict": "within", "side": "none",
      "conformance_probability": 1},
    "floor": "0.0087225983868796 mm", "ceiling": "0.0800557073379606 mm"},
  "notes": [
    {
      "code": "turn_on",
      "text": "Turn the disc on by 2 of 6 studs from position 0, mark it to the hub and )"
                                            R"(read again: only a reading shows it."},
    {
      "code": "first_order_only",
      "text": "Indexing moves the first order alone; a disc that is not flat stays so."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "hub and disc as vectors of the first order",
    "source": "complex arithmetic; JCGM 100:2008 5.1",
    "options": {"confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "all amounts are arrows with a length and an angle\n"
    "position k: runout arrow = hub's arrow + disc's arrow turned by k × 360° ÷ studs\n"
    "from two runs a and b: disc's arrow = (arrow b − arrow a) ÷ (z of b − z of a), hub's "
    "arrow = arrow a − disc's arrow × z of a, where z is an arrow of length 1 at k × 360° ÷ "
    "studs\n"
    "to multiply or divide arrows: multiply or divide the lengths, add or subtract the angles\n"
    "runout at the track = 2 × length of the arrow\n"
    "never less than the difference of the two lengths, never more than their sum";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Amounts are R1 of the runout, half of what a pure tilt adds to the total.",
    "Angles are taken from one mark on the hub, in one sense throughout.",
    "Seats are clean and the nuts tightened alike in every run; all arrows of the runs are "
    "known equally well and independently.",
    "3 to 12 studs and two different positions; positions close together on many studs make "
    "the answer unsure.",
    "Not for a disc that is not flat: indexing does nothing for the second order and up, and "
    "it cannot cure a hub alone.",
});

}  // namespace

Description describeDiscIndex() {
  return {.title = "Which way round a disc goes on its hub",
          .method = "hub and disc as vectors of the first order",
          .source = "complex arithmetic; JCGM 100:2008 5.1",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runDiscIndex(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto index = input->hub && input->disc
                         ? mechanics::indexFromParts(input->studs, {*input->hub, *input->disc})
                         : mechanics::indexFromRuns(input->studs, input->runs[0], input->runs[1]);
  if (!index) return asInputError(index.error());
  const UncertainVector& least = index->positions[static_cast<std::size_t>(index->best)].runout;
  const auto best = mechanics::judged<Length>(
      {2 * least.vector.amount.si(), 2 * least.standardUncertainty.si(), {}},
      {.min = {}, .max = input->limit}, input->confidence);
  outcome.result = resultJson(*index, best);
  noteIndex(*input, *index, best, outcome.notes);
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->confidence);
  outcome.draw = [index = *index, best, limit = input->limit](figure::Size size) {
    return discIndexPicture(index, best, limit, size);
  };
  return outcome;
}

}  // namespace sw::compute
