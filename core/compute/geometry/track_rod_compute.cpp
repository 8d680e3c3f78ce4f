// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>
#include <numbers>

#include "compute/geometry/geometry.h"
#include "compute/geometry/limit_reading.h"
#include "compute/geometry/track_rod_picture.h"
#include "compute/output.h"
#include "measure/type_b.h"
#include "mechanics/geometry/toe.h"
#include "mechanics/geometry/track_rod.h"

namespace sw::compute {

namespace {

constexpr double kFlatsOfATurn = 6;

struct RodInput {
  mechanics::TrackRod rod;
  std::optional<Length> present, wanted, diameter;
  std::optional<Angle> presentAngle, wantedAngle;
  Length graduation;
  Angle presentUncertainty;
};

void readToes(InputReader& reader, RodInput& input) {
  input.present = reader.optional<Length>("present");
  input.wanted = reader.optional<Length>("wanted");
  input.presentAngle = reader.optional<Angle>("present_angle");
  input.wantedAngle = reader.optional<Angle>("wanted_angle");
  input.diameter = reader.optional<Length>("diameter", Sign::Positive);
  input.graduation =
      reader.optional<Length>("graduation", Sign::NotNegative).value_or(input.graduation);
  input.presentUncertainty = reader.optional<Angle>("present_uncertainty", Sign::NotNegative)
                                 .value_or(input.presentUncertainty);
  requireOneOf(reader, {"present", "present_angle"});
  if (input.present) {
    reader.requireKey("wanted");
    reader.requireKey("diameter");
  }
  if (input.presentAngle) reader.requireKey("wanted_angle");
}

Result<RodInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  RodInput input;
  input.rod.pitch = reader.required<Length>("pitch", Sign::Positive);
  input.rod.thread =
      reader.requiredChoice<mechanics::RodThread>("thread").value_or(input.rod.thread);
  input.rod.arm = reader.required<Length>("arm", Sign::Positive);
  input.rod.place = reader.requiredChoice<mechanics::RodPlace>("rod").value_or(input.rod.place);
  readToes(reader, input);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Result<mechanics::ToeChange> changeOf(const RodInput& input) {
  if (input.presentAngle && input.wantedAngle) {
    return mechanics::ToeChange{*input.presentAngle, *input.wantedAngle, input.presentUncertainty};
  }
  const Length diameter = input.diameter.value_or(Length{});
  const auto present = mechanics::toeAngle(input.present.value_or(Length{}), diameter);
  if (!present) return asInputError(present.error().about("present"));
  const auto wanted = mechanics::toeAngle(input.wanted.value_or(Length{}), diameter);
  if (!wanted) return asInputError(wanted.error().about("wanted"));
  const double difference =
      std::numbers::sqrt2 * measure::graduationUncertainty(input.graduation.si());
  return mechanics::ToeChange{*present, *wanted, radians(difference / diameter.si())};
}

/// Errors of the angles stand where the angles or lengths were given.
tl::unexpected<Error> atItsPlace(const RodInput& input, const Error& error) {
  const bool angle = input.presentAngle && (error.field == "present" || error.field == "wanted");
  return asInputError(angle ? error.about(error.field + "_angle") : error);
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes positive{.presence = Presence::Required, .range = "more than 0"};
  return {
      quantityField("pitch", QuantityKind::Length, "of the adjuster's thread",
                    {.presence = Presence::Required, .range = "more than 0, to arm / 5"}),
      {.name = "thread",
       .kind = "word",
       .presence = Presence::Required,
       .range = "one_end | both_ends",
       .meaning = "both_ends: left-hand and right-hand thread, two pitches a turn"},
      quantityField("arm", QuantityKind::Length,
                    "swivel axis to the rod's joint, square to the rod", positive),
      {.name = "rod",
       .kind = "word",
       .presence = Presence::Required,
       .range = "behind_axle | ahead_of_axle",
       .meaning = "where the track rod lies"},
      quantityField("present", QuantityKind::Length,
                    "total toe as measured, toe-in positive; this or present_angle is required"),
      quantityField("wanted", QuantityKind::Length, "total toe to be set; with present"),
      quantityField("diameter", QuantityKind::Length, "of both lengths; with present",
                    {.range = "more than 0"}),
      quantityField("graduation", QuantityKind::Length, "of the gauge behind present",
                    {.range = "0 or more", .defaultValue = R"("0 mm")"}),
      quantityField("present_angle", QuantityKind::Angle, "total toe, toe-in positive",
                    {.range = "-20 to 20 deg"}),
      quantityField("wanted_angle", QuantityKind::Angle, "with present_angle",
                    {.range = "-20 to 20 deg"}),
      quantityField("present_uncertainty", QuantityKind::Angle,
                    "standard uncertainty of present_angle",
                    {.range = "0 or more", .defaultValue = R"("0 deg")"})};
}

FieldDescription number(std::string_view name, std::string_view meaning) {
  return {.name = name, .kind = "number", .presence = Presence::Required, .meaning = meaning};
}

constexpr std::string_view kFormula =
    "travel of one turn = pitch, or 2 × pitch with left-hand and right-hand threads at the "
    "two ends\n"
    "turns = (wanted toe − present toe) × arm ÷ travel, the toes as total angles in radians "
    "(degrees × π ÷ 180)\n"
    "from lengths: angle = 2 × arcsin(toe ÷ (2 × diameter))\n"
    "flats = 6 × turns; uncertainty of the turns = uncertainty of the present toe × arm ÷ "
    "travel";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The arm is the distance of the rod's joint from the swivel axis, square to the rod.",
    "A longer rod behind the axle gives toe-in, ahead of the axle toe-out.",
    "Good to better than 1 % while the arms stand within 10 degrees of square to the rod.",
    "Toe within 20 degrees, pitch below a fifth of the arm.",
    "Not with worn joints, and not to settle a toe without measuring it again.",
});

}  // namespace

Description describeTrackRodTurns() {
  return {.title = "Turns of the track rod to a wanted toe",
          .method = "pitch over steering arm for one turn",
          .source = "plane geometry",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields()),
          .outputs = {quantityField("toe_per_turn", QuantityKind::Angle, "total toe of one turn",
                                    {.presence = Presence::Required}),
                      quantityField("length_per_turn", QuantityKind::Length,
                                    "the same at diameter, where it is given"),
                      {.name = "change",
                       .kind = "word",
                       .presence = Presence::Required,
                       .range = "lengthen | shorten | leave",
                       .meaning = "what the rod needs"},
                      number("turns", "of the adjuster, never negative"),
                      number("flats", "the same on a hexagon, six to a turn"),
                      number("standard_uncertainty", "of the turns, from the present toe")},
          .exampleInput = R"({"pitch": "1.25 mm", "thread": "both_ends", "arm": "155 mm",
                              "rod": "behind_axle", "present": "-3 mm", "wanted": "1 mm",
                              "diameter": "640 mm", "graduation": "0.5 mm"})",
          .exampleOutput = R"({
  "result": {
    "toe_per_turn": "0.924125476017457 deg",
    "length_per_turn": "10.3224687549094 mm",
    "change": "lengthen",
    "turns": 0.387500275930429,
    "flats": 2.32500165558258,
    "standard_uncertainty": 0.0197745265693434},
  "notes": [
    {
      "code": "measure_again",
      "text": "Settle the clamps, roll the vehicle forward and measure the toe again: the)"
                           R"( turns only bring it near."},
    {
      "code": "rod_ends",
      "text": "Leave as much thread in each end as the vehicle's documentation asks, and the)"
                           R"( joints square to their travel."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "pitch over steering arm for one turn",
    "source": "plane geometry",
    "options": {}}})"};
}

Result<Outcome> runTrackRodTurns(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto change = changeOf(*input);
  if (!change) return failAs(change);
  const auto turns = mechanics::trackRodTurns(input->rod, *change);
  if (!turns) return atItsPlace(*input, turns.error());
  outcome.result["toe_per_turn"] = quantityText(turns->toePerTurn);
  if (input->diameter) {
    const auto length = mechanics::toeLength(turns->toePerTurn, *input->diameter);
    if (!length) return asInputError(length.error());
    outcome.result["length_per_turn"] = quantityText(*length);
  }
  outcome.result["change"] = word(turns->change);
  outcome.result["turns"] = plainNumber(turns->turns);
  outcome.result["flats"] = plainNumber(kFlatsOfATurn * turns->turns);
  outcome.result["standard_uncertainty"] = plainNumber(turns->standardUncertainty);
  outcome.notes.push_back({"measure_again",
                           "Settle the clamps, roll the vehicle forward and "
                           "measure the toe again: the turns only bring it near."});
  outcome.notes.push_back({"rod_ends",
                           "Leave as much thread in each end as the vehicle's "
                           "documentation asks, and the joints square to their travel."});
  outcome.notes.push_back(documentationNote());
  outcome.draw = [rod = input->rod, change = *change, turns = *turns](figure::Size size) {
    return trackRodPicture(rod, change, turns, size);
  };
  return outcome;
}

}  // namespace sw::compute
