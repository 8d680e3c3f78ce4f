// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "compute/geometry/geometry.h"
#include "compute/geometry/limit_reading.h"
#include "compute/geometry/toe_picture.h"
#include "compute/output.h"
#include "measure/type_b.h"
#include "mechanics/geometry/toe.h"

namespace sw::compute {

namespace {

struct ToeInput {
  Length diameter;
  std::vector<mechanics::ToeReading> readings;
  std::optional<Length> total;
  std::optional<Angle> totalAngle, left, right;
  Length graduation;
  Angle angleGraduation;
  std::optional<LimitBand> limit;        ///< as an angle
  std::optional<LimitBand> limitLength;  ///< as a length at limitDiameter
  std::optional<Length> limitDiameter;
  double confidence = 0.95;
};

void readSource(InputReader& reader, ToeInput& input) {
  reader.eachObject("readings", [&](InputReader& inner) {
    const Length front = inner.required<Length>("front", Sign::Positive);
    input.readings.push_back({front, inner.required<Length>("rear", Sign::Positive)});
  });
  input.total = reader.optional<Length>("total");
  input.totalAngle = reader.optional<Angle>("total_angle");
  input.left = reader.optional<Angle>("left");
  input.right = reader.optional<Angle>("right");
  if (input.left) reader.requireKey("right");
  if (input.right) reader.requireKey("left");
  requireOneOf(reader, {"readings", "total", "total_angle", "left"});
}

void readLimits(InputReader& reader, ToeInput& input) {
  input.limit = readLimit(reader, "limit", QuantityKind::Angle);
  input.limitLength = readLimit(reader, "limit_length", QuantityKind::Length);
  input.limitDiameter = reader.optional<Length>("limit_diameter", Sign::Positive);
  if (input.limit && input.limitLength) requireOneOf(reader, {"limit_length", "limit"});
  if (input.limitDiameter) reader.requireKey("limit_length");
}

Result<ToeInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  ToeInput input;
  input.diameter = reader.required<Length>("diameter", Sign::Positive);
  readSource(reader, input);
  input.graduation =
      reader.optional<Length>("graduation", Sign::NotNegative).value_or(input.graduation);
  input.angleGraduation =
      reader.optional<Angle>("angle_graduation", Sign::NotNegative).value_or(input.angleGraduation);
  readLimits(reader, input);
  input.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

/// Total toe as an angle with its standard uncertainty.
struct TotalToe {
  Angle angle;
  Angle standardUncertainty;
  std::optional<Length> runout;
};

Result<TotalToe> totalOf(const ToeInput& input) {
  const double onePerAngle = measure::graduationUncertainty(input.angleGraduation.si());
  if (!input.readings.empty()) {
    const auto measured = mechanics::measuredToe(input.readings, input.diameter, input.graduation);
    if (!measured) return asInputError(measured.error());
    return TotalToe{measured->total, measured->angleUncertainty, measured->runout};
  }
  if (input.left && input.right) {
    const auto length = mechanics::toeLength({*input.left, *input.right}, input.diameter);
    if (!length) return asInputError(length.error());
    return TotalToe{*input.left + *input.right, radians(std::numbers::sqrt2 * onePerAngle), {}};
  }
  if (input.totalAngle) return TotalToe{*input.totalAngle, radians(onePerAngle), {}};
  const auto angle = mechanics::toeAngle(input.total.value_or(Length{}), input.diameter);
  if (!angle) return asInputError(angle.error());
  // A total in millimetres is read behind the axle and before it: the graduation counts twice.
  const double difference =
      std::numbers::sqrt2 * measure::graduationUncertainty(input.graduation.si());
  return TotalToe{*angle, radians(difference / input.diameter.si()), {}};
}

/// The limit as an angle.
Result<std::optional<LimitBand>> limitOf(const ToeInput& input) {
  if (!input.limitLength) return input.limit;
  const Length diameter = input.limitDiameter.value_or(input.diameter);
  LimitBand band;
  for (const auto& [length, angle] : {std::pair{input.limitLength->min, &band.min},
                                      std::pair{input.limitLength->max, &band.max}}) {
    if (!length) continue;
    const auto converted = mechanics::toeAngle(metres(*length), diameter);
    if (!converted) return asInputError(converted.error().about("limit_length"));
    *angle = converted->si();
  }
  return std::optional<LimitBand>(band);
}

void putWheels(const ToeInput& input, Json& result) {
  if (!input.left || !input.right) return;
  const auto steer = mechanics::asSteerAngles({*input.left, *input.right});
  result["left"] = quantityText(*input.left);
  result["right"] = quantityText(*input.right);
  result["left_steer_angle"] = quantityText(steer.left);
  result["right_steer_angle"] = quantityText(steer.right);
}

void noteToe(const ToeInput& input, const TotalToe& total, std::vector<Note>& notes) {
  notes.push_back({"with_its_diameter",
                   "A toe in millimetres means nothing without the diameter it "
                   "was measured at: write both down."});
  if (input.readings.size() == 1) {
    notes.push_back({"one_reading",
                     "Roll the vehicle forward half a turn of the wheels and read "
                     "again: the mean is free of the rims' runout."});
  }
  if (total.runout && *total.runout > input.graduation) {
    notes.push_back({"runout_seen",
                     "The two readings differ by more than the gauge can, so the rims "
                     "run out; the mean is free of that."});
  }
  notes.push_back(documentationNote());
}

Result<Length> lengthOf(const ToeInput& input, const TotalToe& total) {
  const auto length = input.left && input.right
                          ? mechanics::toeLength({*input.left, *input.right}, input.diameter)
                          : mechanics::toeLength(total.angle, input.diameter);
  if (!length) return asInputError(length.error());
  return *length;
}

ToeDrawing drawingOf(const ToeInput& input, const TotalToe& total, Length length) {
  ToeDrawing drawing;
  drawing.left = input.left.value_or(total.angle / 2);
  drawing.right = input.right.value_or(total.angle / 2);
  drawing.total = length;
  drawing.diameter = input.diameter;
  drawing.standardUncertainty = input.diameter * total.standardUncertainty.si();
  return drawing;
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes positive{.presence = Presence::Required, .range = "more than 0"};
  return {quantityField("diameter", QuantityKind::Length, "at which the two points of a wheel lie",
                        positive),
          {.name = "readings",
           .kind = "list of object",
           .range = "1 to 20",
           .meaning = "distances between the wheels; two, half a turn apart, free the mean from "
                      "runout. This, total, total_angle or left with right is required",
           .fields = {quantityField("front", QuantityKind::Length, "before the axle", positive),
                      quantityField("rear", QuantityKind::Length, "behind it", positive)}},
          quantityField("total", QuantityKind::Length, "rear less front, toe-in positive"),
          quantityField("total_angle", QuantityKind::Angle, "both wheels together",
                        {.range = "-20 to 20 deg"}),
          quantityField("left", QuantityKind::Angle, "left wheel, toe-in positive; with right",
                        {.range = "-10 to 10 deg"}),
          quantityField("right", QuantityKind::Angle, "right wheel, toe-in positive",
                        {.range = "-10 to 10 deg"}),
          quantityField("graduation", QuantityKind::Length, "of a gauge that reads lengths",
                        {.range = "0 or more", .defaultValue = R"("0 mm")"}),
          quantityField("angle_graduation", QuantityKind::Angle, "of a gauge that reads angles",
                        {.range = "0 or more", .defaultValue = R"("0 deg")"}),
          limitField("limit", QuantityKind::Angle, "of the total as an angle"),
          limitField("limit_length", QuantityKind::Length, "of the total as a length"),
          quantityField("limit_diameter", QuantityKind::Length,
                        "that limit_length is stated for; without it diameter",
                        {.range = "more than 0"})};
}

std::vector<FieldDescription> outputFields() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {
      quantityField("total", QuantityKind::Length, "at diameter, toe-in positive", kAlways),
      quantityField("total_angle", QuantityKind::Angle, "toe-in positive", kAlways),
      quantityField("standard_uncertainty", QuantityKind::Angle,
                    "of the angle, from the graduation", kAlways),
      quantityField("length_uncertainty", QuantityKind::Length, "standard, of the length", kAlways),
      quantityField("runout", QuantityKind::Length,
                    "half the difference of two readings, of both rims together"),
      quantityField("left", QuantityKind::Angle, "as given"),
      quantityField("right", QuantityKind::Angle, "as given"),
      quantityField("left_steer_angle", QuantityKind::Angle,
                    "ISO 8855, positive to the left: toe-in is negative here"),
      quantityField("right_steer_angle", QuantityKind::Angle,
                    "ISO 8855, positive to the left: toe-in is positive here"),
      verdictField("within | outside | undecided | provisional | instrument_too_coarse | "
                   "no_limit",
                   "of the total; provisional from one reading"),
      {.name = "decision_so_far",
       .kind = "word",
       .range = "within | outside | undecided | instrument_too_coarse",
       .meaning = "what a provisional verdict would be"}};
}

constexpr std::string_view kFormula =
    "toe = distance behind the axle − distance before it; toe-in is positive\n"
    "from angles: toe = diameter × (sin(left) + sin(right))\n"
    "from a total angle, shared by both wheels: toe = 2 × diameter × sin(angle ÷ 2); "
    "backwards: angle = 2 × arcsin(toe ÷ (2 × diameter))\n"
    "two readings half a turn apart: toe = their mean, runout = half of their difference\n"
    "uncertainty of the toe = graduation × √(2 ÷ 12); of its angle, in radians, that ÷ "
    "diameter";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Both points of a wheel lie at hub height, at one diameter for both wheels.",
    "The mean of two readings with the wheels rolled half a turn is free of the rims' "
    "runout; one reading says nothing about it.",
    "A coarse scale repeats its error, so more readings do not make the graduation smaller.",
    "Toe within 10 degrees a wheel; 1 to 20 readings.",
    "Not for millimetres without their diameter: the same 2 mm are 0.16 degrees at 700 mm "
    "and 0.28 degrees at a 16 inch rim.",
});

}  // namespace

Description describeToe() {
  return {.title = "Toe in millimetres and degrees",
          .method = "rear less front over the diameter; mean of readings half a turn apart",
          .source = "plane geometry; ISO 8855:2011 for the signs; JCGM 106:2012",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(inputFields(), {confidenceField()}),
          .outputs = outputFields(),
          .exampleInput = R"({"diameter": "640 mm",
                              "readings": [{"front": "1391 mm", "rear": "1394 mm"},
                                           {"front": "1392 mm", "rear": "1393 mm"}],
                              "graduation": "0.5 mm",
                              "limit_length": {"min": "0 mm", "max": "3 mm"},
                              "limit_diameter": "400 mm"})",
          .exampleOutput = R"({
  "result": {
    "total": "2 mm",
    "total_angle": "0.179049383833814 deg",
    "standard_uncertainty": "0.0182741437789143 deg",
    "length_uncertainty": "0.204124145231932 mm",
    "runout": "1.00000000000011 mm",
    "verdict": "within"},
  "notes": [
    {
      "code": "with_its_diameter",
      "text": "A toe in millimetres means nothing without the diameter it was measured at:)"
                           R"( write both down."},
    {
      "code": "runout_seen",
      "text": "The two readings differ by more than the gauge can, so the rims run out; the)"
                           R"( mean is free of that."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "rear less front over the diameter; mean of readings half a turn apart",
    "source": "plane geometry; ISO 8855:2011 for the signs; JCGM 106:2012",
    "options": {"confidence": 0.95}}})"};
}

Result<Outcome> runToe(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto total = totalOf(*input);
  if (!total) return failAs(total);
  const auto limit = limitOf(*input);
  if (!limit) return failAs(limit);
  Json& result = outcome.result;
  const auto length = lengthOf(*input, *total);
  if (!length) return failAs(length);
  result["total"] = quantityText(*length);
  result["total_angle"] = quantityText(total->angle);
  result["standard_uncertainty"] = quantityText(total->standardUncertainty);
  result["length_uncertainty"] = quantityText(input->diameter * total->standardUncertainty.si());
  if (total->runout) result["runout"] = quantityText(*total->runout);
  putWheels(*input, result);
  const Verdict verdict = verdictOf({total->angle.si(), total->standardUncertainty.si(), {}},
                                    *limit, input->confidence);
  const bool provisional = input->readings.size() == 1 && verdict != Verdict::NoLimit;
  const Verdict said = provisional ? Verdict::Provisional : verdict;
  result["verdict"] = word(said);
  if (provisional) result["decision_so_far"] = word(verdict);
  noteToe(*input, *total, outcome.notes);
  ToeDrawing drawing = drawingOf(*input, *total, *length);
  drawing.limit = *limit;
  drawing.verdict = said;
  outcome.draw = [drawing](figure::Size size) { return toePicture(drawing, size); };
  outcome.options = {{"confidence", plainNumber(input->confidence)}};
  return outcome;
}

}  // namespace sw::compute
