// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/geometry/geometry.h"
#include "compute/geometry/limit_reading.h"
#include "compute/geometry/trail_picture.h"
#include "compute/output.h"
#include "mechanics/geometry/trail.h"

namespace sw::compute {

namespace {

struct TrailAndScrub {
  std::optional<mechanics::TrailInput> trail;
  std::optional<mechanics::ScrubInput> scrub;
};

Result<TrailAndScrub> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  TrailAndScrub input;
  const Length radius = reader.required<Length>("loaded_radius", Sign::Positive);
  const auto caster = reader.optional<Angle>("caster");
  const auto hubOffset = reader.optional<Length>("hub_offset");
  const auto axisToWheel = reader.optional<Length>("axis_to_wheel");
  const auto inclination = reader.optional<Angle>("kingpin_inclination");
  const auto camber = reader.optional<Angle>("camber");
  const auto spacer = reader.optional<Length>("spacer");
  if (!axisToWheel || hubOffset) reader.requireKey("caster");
  if (axisToWheel) reader.requireKey("kingpin_inclination");
  if (inclination || camber || spacer) reader.requireKey("axis_to_wheel");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  if (caster) input.trail = {radius, *caster, hubOffset.value_or(Length{})};
  if (axisToWheel) {
    input.scrub = {*axisToWheel, radius, inclination.value_or(Angle{}), camber.value_or(Angle{}),
                   spacer.value_or(Length{})};
  }
  return input;
}

std::vector<FieldDescription> inputFields() {
  return {
      quantityField("loaded_radius", QuantityKind::Length, "axle to ground, vehicle standing",
                    {.presence = Presence::Required, .range = "more than 0"}),
      quantityField("caster", QuantityKind::Angle,
                    "axis leaning back at the top positive; gives the trail, and is required "
                    "without axis_to_wheel",
                    {.range = "-30 to 30 deg"}),
      quantityField("hub_offset", QuantityKind::Length,
                    "of the hub ahead of the axis, usually none", {.defaultValue = R"("0 mm")"}),
      quantityField("axis_to_wheel", QuantityKind::Length,
                    "axis to the middle of the wheel at hub height; gives the scrub"),
      quantityField("kingpin_inclination", QuantityKind::Angle,
                    "top inboard positive; with axis_to_wheel", {.range = "-30 to 30 deg"}),
      quantityField("camber", QuantityKind::Angle, "top out positive; with axis_to_wheel",
                    {.range = "-30 to 30 deg", .defaultValue = R"("0 deg")"}),
      quantityField("spacer", QuantityKind::Length,
                    "spacer or lower offset of the rim; with axis_to_wheel",
                    {.defaultValue = R"("0 mm")"})};
}

constexpr std::string_view kFormula =
    "trail = loaded radius × tan(caster) − hub offset\n"
    "kingpin offset (scrub) = axis to middle of the wheel − loaded radius × tan(kingpin "
    "inclination) − loaded radius × tan(camber) + spacer";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The wheels stand straight ahead; the distance from the axis is measured at hub height, "
    "square to the wheel and without spacer.",
    "Trail is positive with the axis meeting the ground ahead of the contact, scrub with it "
    "meeting the ground inboard of it.",
    "Angles within 30 degrees; caster and inclination together change the answer by less "
    "than 1 %.",
    "A spacer or a rim of lower offset adds its full amount to the scrub and to every lever "
    "of unbalance.",
    "It is the trail of the axle alone: the tyre adds one of its own, which is left out.",
});

}  // namespace

Description describeTrail() {
  return {.title = "Caster trail and kingpin offset at the ground",
          .method = "the axis and the wheel carried down to the ground",
          .source = "plane geometry",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields()),
          .outputs = {quantityField("trail", QuantityKind::Length,
                                    "positive with the axis ahead of the contact"),
                      quantityField("scrub", QuantityKind::Length,
                                    "positive with the axis inboard of the contact"),
                      quantityField("scrub_without_spacer", QuantityKind::Length,
                                    "the same without the spacer")},
          .exampleInput = R"({"loaded_radius": "345 mm", "caster": "2.4 deg",
                              "axis_to_wheel": "72 mm", "kingpin_inclination": "8 deg",
                              "camber": "0.5 deg", "spacer": "25 mm"})",
          .exampleOutput = R"({
  "result": {
    "trail": "14.4597842240722 mm",
    "scrub": "45.5026426398632 mm",
    "scrub_without_spacer": "20.5026426398632 mm"},
  "notes": [
    {
      "code": "tyre_adds_its_own",
      "text": "The tyre adds a trail of its own, which this leaves out."},
    {
      "code": "spacer_lengthens_levers",
      "text": "A spacer or a rim of lower offset adds its full amount to the scrub and to)"
                           R"( every lever of unbalance, and loads the bearings more."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "the axis and the wheel carried down to the ground",
    "source": "plane geometry",
    "options": {}}})"};
}

Result<Outcome> runTrail(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  TrailDrawing drawing;
  if (input->trail) {
    const auto trail = mechanics::casterTrail(*input->trail);
    if (!trail) return asInputError(trail.error());
    outcome.result["trail"] = quantityText(*trail);
    drawing.trail = {*input->trail, *trail};
    outcome.notes.push_back(
        {"tyre_adds_its_own", "The tyre adds a trail of its own, which this leaves out."});
  }
  if (input->scrub) {
    mechanics::ScrubInput bare = *input->scrub;
    bare.spacer = {};
    const auto scrub = mechanics::scrub(*input->scrub);
    if (!scrub) return asInputError(scrub.error());
    const auto without = mechanics::scrub(bare);
    if (!without) return asInputError(without.error());
    outcome.result["scrub"] = quantityText(*scrub);
    outcome.result["scrub_without_spacer"] = quantityText(*without);
    drawing.scrub = {*input->scrub, *scrub, *without};
  }
  if (input->scrub && input->scrub->spacer.si() > 0) {
    outcome.notes.push_back({"spacer_lengthens_levers",
                             "A spacer or a rim of lower offset adds its full amount to the scrub "
                             "and to every lever of unbalance, and loads the bearings more."});
  }
  outcome.notes.push_back(documentationNote());
  outcome.draw = [drawing](figure::Size size) { return trailPicture(drawing, size); };
  return outcome;
}

}  // namespace sw::compute
