// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/brakes/brakes.h"
#include "compute/brakes/gauge_input.h"
#include "compute/brakes/runout_at_track_picture.h"
#include "mechanics/brakes/runout_at_track.h"

namespace sw::compute {

namespace {

struct TrackInput {
  bool speck = false;
  std::optional<Length> amount, size;  ///< of the fault, and the radius or diameter of its seat
  Length trackRadius;
  std::optional<Length> limit;
};

/// What was given and does not count for the fault named.
void noteUnused(InputReader& reader, std::initializer_list<const char*> fields,
                const std::string& fault, std::vector<Note>& notes) {
  for (const char* field : fields) {
    if (!reader.fields().has(field)) continue;
    notes.push_back({"not_used", std::string("/") + field + " is not used for " + fault + "."});
  }
}

Result<TrackInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  TrackInput input;
  const std::string fault = reader.requiredWord("fault", {"hub_runout", "speck"});
  input.speck = fault == "speck";
  const auto hubRunout = reader.optional<Length>("hub_runout", Sign::NotNegative);
  const auto hubRadius = reader.optional<Length>("hub_radius", Sign::Positive);
  const auto speck = reader.optional<Length>("speck", Sign::NotNegative);
  const auto seat = reader.optional<Length>("seat_diameter", Sign::Positive);
  input.trackRadius = reader.required<Length>("track_radius", Sign::Positive);
  input.limit = reader.optional<Length>("runout_limit", Sign::Positive);
  reader.requireKey(input.speck ? "speck" : "hub_runout");
  reader.requireKey(input.speck ? "seat_diameter" : "hub_radius");
  input.amount = input.speck ? speck : hubRunout;
  input.size = input.speck ? seat : hubRadius;
  if (input.speck) {
    noteUnused(reader, {"hub_runout", "hub_radius"}, fault, notes);
  } else {
    noteUnused(reader, {"speck", "seat_diameter"}, fault, notes);
  }
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Result<Length> atTrack(const TrackInput& input, Length amount) {
  const Length size = input.size.value_or(Length{});
  if (input.speck) {
    return mechanics::runoutAtTrack(mechanics::SeatSpeck{amount, size}, input.trackRadius);
  }
  return mechanics::runoutAtTrack(mechanics::HubRunout{amount, size}, input.trackRadius);
}

constexpr std::string_view kFormula =
    "hub face that runs out: runout at the track = runout of the hub face × track radius ÷ "
    "radius where it was read\n"
    "speck under one edge: runout at the track = 2 × track radius × speck ÷ seat diameter\n"
    "largest fault = runout limit × fault ÷ runout at the track";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The disc tilts as a rigid plate, by a small angle, and the rest of the seat is true.",
    "The speck lies under the very edge of the seat.",
    "Not for a disc that is not flat or nuts that bend it: this is tilt alone.",
});

}  // namespace

Description describeRunoutAtTrack() {
  const FieldNotes positive{.range = "more than 0"};
  const FieldNotes notNegative{.range = "0 or more"};
  return {.title = "What a fault at the hub seat does at the brake track",
          .method = "rigid tilt of the disc",
          .source = "plane geometry, small angles",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(
              {{.name = "fault",
                .kind = "word",
                .presence = Presence::Required,
                .range = "hub_runout | speck",
                .meaning = "hub_runout: the hub face runs out; speck: dirt under one edge"},
               quantityField("hub_runout", QuantityKind::Length,
                             "TIR of the hub face; needed for hub_runout", notNegative),
               quantityField("hub_radius", QuantityKind::Length,
                             "where it was read; needed for hub_runout", positive),
               quantityField("speck", QuantityKind::Length, "its thickness; needed for speck",
                             notNegative),
               quantityField("seat_diameter", QuantityKind::Length, "needed for speck", positive),
               quantityField("track_radius", QuantityKind::Length, "middle of the pads' track",
                             {.presence = Presence::Required, .range = "more than 0"}),
               quantityField("runout_limit", QuantityKind::Length, "of the track", positive)}),
          .outputs = {quantityField("runout", QuantityKind::Length, "TIR at the track",
                                    {.presence = Presence::Required}),
                      {.name = "gain",
                       .kind = "number",
                       .presence = Presence::Required,
                       .meaning = "runout at the track for each millimetre of the fault"},
                      quantityField("largest_fault", QuantityKind::Length,
                                    "what alone would use up runout_limit")},
          .exampleInput = R"({"fault": "speck", "speck": "0.03 mm", "seat_diameter": "142 mm",
                              "track_radius": "118 mm", "runout_limit": "0.09 mm"})",
          .exampleOutput = R"({
  "result": {
    "runout": "0.0498591549295775 mm", "gain": 1.66197183098592,
    "largest_fault": "0.0541525423728814 mm"},
  "notes": [
    {
      "code": "tilt_alone",
      "text": "Tilt alone: a disc that is not flat adds its own. Clean both seats to )"
                           R"(bright metal before anything is blamed or machined."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "rigid tilt of the disc", "source": "plane geometry, small angles",
    "options": {}}})"};
}

Result<Outcome> runRunoutAtTrack(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto runout = atTrack(*input, input->amount.value_or(Length{}));
  if (!runout) return asInputError(runout.error());
  const auto ofOne = atTrack(*input, millimetres(1));
  if (!ofOne) return asInputError(ofOne.error());
  const double gain = inMillimetres(*ofOne);
  outcome.result = {{"runout", quantityText(*runout)}, {"gain", plainNumber(gain)}};
  if (input->limit) outcome.result["largest_fault"] = quantityText(*input->limit / gain);
  outcome.notes.push_back(
      {"tilt_alone",
       "Tilt alone: a disc that is not flat adds its own. Clean both seats to bright "
       "metal before anything is blamed or machined."});
  outcome.notes.push_back(documentationNote());
  const Length size = input->size.value_or(Length{});
  const TrackShown shown{input->speck ? SeatFault::Speck : SeatFault::HubRunout,
                         input->amount.value_or(Length{}),
                         input->speck ? size : 2 * size,
                         input->trackRadius,
                         *runout,
                         input->limit};
  outcome.draw = [shown](figure::Size room) { return runoutAtTrackPicture(shown, room); };
  return outcome;
}

}  // namespace sw::compute
