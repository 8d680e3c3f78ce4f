// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/tighten_pattern_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/tightening_order.h"
#include "mechanics/bolts/tightening_rounds.h"

namespace sw::compute {

namespace {

struct PatternInput {
  int fasteners = 0;
  std::optional<Torque> torque;
  std::vector<double> stages{mechanics::kUsualStages.begin(), mechanics::kUsualStages.end()};
};

Result<PatternInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  PatternInput input;
  reader.requireKey("fasteners");
  input.fasteners =
      reader.wholeNumber("fasteners", 1, mechanics::kMostFasteners).value_or(input.fasteners);
  input.torque = reader.optional<Torque>("torque", Sign::Positive);
  if (reader.fields().has("stages")) {
    input.stages = reader.quantities("stages", {.kind = QuantityKind::Number});
    reader.requireKey("torque");
  }
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Json roundsJson(const std::vector<mechanics::TighteningRound>& rounds) {
  Json list = Json::array();
  for (const auto& round : rounds) {
    list.push_back({{"purpose", wordOf(round.purpose)},
                    {"share", plainNumber(round.share)},
                    {"torque", quantityText(round.torque)}});
  }
  return list;
}

Result<std::vector<mechanics::TighteningRound>> putRounds(const PatternInput& input,
                                                          Outcome& outcome) {
  const auto rounds = mechanics::tighteningRounds(*input.torque, input.stages);
  if (!rounds) return asInputError(rounds.error());
  outcome.result["rounds"] = roundsJson(*rounds);
  outcome.notes.push_back({"hand_seat_first",
                           "Seat all by hand first. Each round goes through the whole order; the "
                           "last one confirms and is done once."});
  outcome.notes.push_back({"audit",
                           "To try one that is tight already: mark it, back off a quarter turn and "
                           "tighten again; the marks should meet. Record what was only checked "
                           "apart from what was tightened."});
  return *rounds;
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "order": [1, 4, 7, 3, 6, 2, 5],
    "rounds": [
      {"purpose": "tighten", "share": 0.5, "torque": "48 N m"},
      {"purpose": "tighten", "share": 1, "torque": "96 N m"},
      {"purpose": "confirm", "share": 1, "torque": "96 N m"}]},
  "notes": [
    {
      "code": "hand_seat_first",
      "text": "Seat all by hand first. Each round goes through the whole order; the last )"
    R"(one confirms and is done once."},
    {
      "code": "audit",
      "text": "To try one that is tight already: mark it, back off a quarter turn and )"
    R"(tighten again; the marks should meet. Record what was only checked apart from what was )"
    R"(tightened."},
    {
      "code": "documentation",
      "text": "Where the vehicle's own documentation gives an order, that one holds."}],
  "method": {
    "name": "opposite to opposite, each once",
    "source": "common practice, no source",
    "options": {}}})";

constexpr std::string_view kFormula =
    "fasteners are numbered 1 to n, clockwise\n"
    "odd n: always on by (n − 1) ÷ 2 places\n"
    "even n: opposite pairs, the pairs in the order that n ÷ 2 fasteners would have\n"
    "rounds: torque × each share, then one round more at the full torque that confirms it";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The fasteners are alike, evenly spaced on one circle, 12 at the most, and all seated by "
    "hand first.",
    "Opposite to opposite, and half, full, confirm are common practice, no source.",
    "Where the vehicle's sheet gives an order, stages or angles of its own, that holds; an "
    "angle is never gone over twice.",
    "Not for rows and rectangles of fasteners: those are tightened from the middle outwards.",
});

}  // namespace

Description describeTightenPattern() {
  return {.title = "In which order are fasteners on a circle tightened?",
          .method = "opposite to opposite, each once",
          .source = "common practice, no source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(
              {{.name = "fasteners",
                .kind = "whole number",
                .presence = Presence::Required,
                .range = "1 to 12",
                .meaning = "on one circle, numbered clockwise"},
               quantityField("torque", QuantityKind::Torque, "final, for the rounds",
                             {.range = "more than 0"}),
               {.name = "stages",
                .kind = "list of number",
                .defaultValue = "[0.5, 1]",
                .range = "at most 10, rising, the last one 1",
                .meaning = "shares of the torque, a round each; a confirming round follows"}}),
          .outputs = {{.name = "order",
                       .kind = "list of whole number",
                       .presence = Presence::Required,
                       .meaning = "the fasteners by number, first to last"},
                      {.name = "rounds",
                       .kind = "list of object",
                       .meaning = "where a torque is given",
                       .fields = {{.name = "purpose", .kind = "word", .range = "tighten | confirm"},
                                  {.name = "share", .kind = "number"},
                                  quantityField("torque", QuantityKind::Torque,
                                                "to set the wrench to")}}},
          .exampleInput = R"({"fasteners": 7, "torque": "96 N m"})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runTightenPattern(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto order = mechanics::tighteningOrder(input->fasteners);
  if (!order) return failAs(order);
  outcome.result = {{"order", *order}};
  std::vector<mechanics::TighteningRound> rounds;
  if (input->torque) {
    const auto put = putRounds(*input, outcome);
    if (!put) return failAs(put);
    rounds = *put;
  }
  outcome.notes.push_back(
      {"documentation", "Where the vehicle's own documentation gives an order, that one holds."});
  outcome.draw = [order = *order, rounds](figure::Size size) {
    return tightenPatternPicture(order, rounds, size);
  };
  return outcome;
}

}  // namespace sw::compute
