// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/support/support.h"

#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/output.h"
#include "compute/support/stand_load_picture.h"
#include "mechanics/support/stand_load.h"

namespace sw::compute {

namespace {

constexpr QuantitySpec kMass{.kind = QuantityKind::Mass, .sign = Sign::Positive};
constexpr int kMostStands = 100;

std::optional<Mass> mass(InputReader& reader, std::string_view key) {
  const auto si = reader.quantity(key, kMass);
  if (!si) return std::nullopt;
  return Mass::fromSi(*si);
}

Result<StandInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  StandInput input;
  input.knowledge =
      reader.requiredChoice<AxleLoadKnowledge>("known_from").value_or(input.knowledge);
  input.axleLoad = mass(reader, "axle_load");
  input.vehicleMass = mass(reader, "vehicle_mass");
  input.axleShare = reader.number("axle_share", {});
  input.stands = reader.wholeNumber("stands", 0, kMostStands).value_or(input.stands);
  input.rating = Mass::fromSi(reader.requiredQuantity("rating", kMass));
  input.ratingMeans =
      reader.requiredChoice<StandRating>("rating_means").value_or(input.ratingMeans);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

/// What was given and does not count for the kind of knowledge named.
void noteUnused(const StandInput& input, std::vector<Note>& notes) {
  const bool fromLoad = input.knowledge == AxleLoadKnowledge::Weighed ||
                        input.knowledge == AxleLoadKnowledge::FromVehicleDocuments;
  const auto note = [&](const char* field) {
    notes.push_back({"not_used", std::string("/") + field + " is not used for " +
                                     std::string(word(input.knowledge)) + "."});
  };
  if (input.axleLoad && !fromLoad) note("axle_load");
  if (input.vehicleMass && fromLoad) note("vehicle_mass");
  if (input.axleShare && input.knowledge != AxleLoadKnowledge::MassAndShare) note("axle_share");
}

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{
      {.name = "known_from",
       .kind = "word",
       .presence = Presence::Required,
       .range = "weighed | vehicle_documents | mass_and_share | mass_only",
       .meaning = "how the load on the axle is known; with mass_only the whole vehicle is taken"},
      {.name = "axle_load",
       .kind = "mass",
       .unit = "kg",
       .range = "more than 0",
       .meaning = "what stands on the axle; needed for weighed and vehicle_documents"},
      {.name = "vehicle_mass",
       .kind = "mass",
       .unit = "kg",
       .range = "more than 0",
       .meaning = "needed for mass_and_share and mass_only"},
      {.name = "axle_share",
       .kind = "number",
       .range = "more than 0, up to 1",
       .meaning = "part of the mass on this axle; needed for mass_and_share"},
      {.name = "stands",
       .kind = "whole number",
       .defaultValue = "2",
       .range = "2 to 100",
       .meaning = "under this axle"},
      {.name = "rating",
       .kind = "mass",
       .unit = "kg",
       .presence = Presence::Required,
       .range = "more than 0",
       .meaning = "as marked on the stand"},
      {.name = "rating_means",
       .kind = "word",
       .presence = Presence::Required,
       .range = "each | per_pair",
       .meaning = "what the marking counts for"}};
  for (auto& field : envelopeFields({})) fields.push_back(std::move(field));
  return fields;
}

FieldDescription massOut(std::string_view name, std::string_view meaning) {
  return {.name = name,
          .kind = "mass",
          .unit = "kg",
          .presence = Presence::Required,
          .meaning = meaning};
}

std::vector<FieldDescription> outputFields() {
  return {massOut("axle_load", "what was taken as standing on the axle"),
          massOut("needed_each", "each stand must be rated for more than this"),
          massOut("rated_each", "after halving a rating per pair"),
          {.name = "margin",
           .kind = "number",
           .presence = Presence::Required,
           .meaning = "rated_each / needed_each - 1"},
          {.name = "verdict",
           .kind = "word",
           .presence = Presence::Required,
           .range = "enough | not_enough",
           .meaning = "of the rating alone"}};
}

constexpr std::string_view kFormula =
    "needed on each stand = load on the axle ÷ 2; each must be rated for more than that\n"
    "load on the axle = as weighed or documented, or vehicle mass × share of the axle; where "
    "the split is unknown the whole vehicle mass\n"
    "a rating for a pair counts half for each\n"
    "margin = rating of each ÷ needed on each − 1";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The ground is level and hard, and the stands are upright under the axle at the same "
    "height.",
    "More than two stands do not lower the demand: when the vehicle shifts, two of them "
    "carry the axle.",
    "Fewer than two stands under an axle are refused.",
    "More than half on each is common practice, no source.",
    "It says nothing about chocks, the ground, the condition of a stand or a shake test, and "
    "never that a vehicle is safe to go under.",
});

}  // namespace

Description describeStandLoad() {
  return {.title = "Are the stands under an axle strong enough?",
          .method = "each stand rated for more than half of what stands on the axle",
          .source = "common practice, no source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"known_from": "mass_and_share", "vehicle_mass": "1740 kg",
                              "axle_share": 0.55, "rating": "1.2 t", "rating_means": "per_pair"})",
          .exampleOutput = R"({
  "result": {
    "axle_load": "957 kg",
    "needed_each": "478.5 kg",
    "rated_each": "600 kg",
    "margin": 0.253918495297806,
    "verdict": "enough"},
  "notes": [
    {"code": "rating_only",
     "text": "Ratings only: ground, chocks, the stands' condition and the push test count too."},
    {"code": "documentation",
     "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "each stand rated for more than half of what stands on the axle",
    "source": "common practice, no source",
    "options": {}}
})"};
}

Result<Outcome> runStandLoad(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto load = standLoad(*input);
  if (!load) return asInputError(load.error());
  outcome.result = {{"axle_load", quantityText(load->axleLoad.si(), QuantityKind::Mass)},
                    {"needed_each", quantityText(load->neededEach.si(), QuantityKind::Mass)},
                    {"rated_each", quantityText(load->ratedEach.si(), QuantityKind::Mass)},
                    {"margin", plainNumber(load->margin)},
                    {"verdict", word(load->verdict)}};
  noteUnused(*input, outcome.notes);
  outcome.notes.push_back(
      {"rating_only",
       "Ratings only: ground, chocks, the stands' condition and the push test count too."});
  outcome.notes.push_back(
      {"documentation",
       "The vehicle's own documentation comes first: where it differs, it holds."});
  outcome.draw = [input = *input, load = *load](figure::Size size) {
    return standLoadPicture(input, load, size);
  };
  return outcome;
}

}  // namespace sw::compute
