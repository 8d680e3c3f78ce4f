// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>
#include <span>

#include "compute/geometry/limit_reading.h"
#include "compute/output.h"
#include "compute/wheels/tyre_reading.h"
#include "compute/wheels/unbalance_fields.h"
#include "compute/wheels/unbalance_picture.h"
#include "compute/wheels/vector_reading.h"
#include "compute/wheels/wheels.h"
#include "mechanics/wheels/unbalance.h"

namespace sw::compute {

namespace {

struct UnbalanceInput {
  RollingInput rolling;
  std::vector<mechanics::WheelWeight> weights;
  mechanics::BalanceGeometry geometry;
  Speed speed;
  bool hasLever = false;
  std::optional<Mass> limitEachPlane, wheelMass;
  Mass weightUncertainty;
  double grade = mechanics::kGradeOfCarWheels;
  double confidence = 0.95;
};

void readWeights(InputReader& reader, UnbalanceInput& input) {
  reader.requireKey("weights");
  reader.eachObject("weights", [&](InputReader& inner) {
    mechanics::WheelWeight weight;
    weight.plane = inner.requiredChoice<mechanics::BalancePlane>("plane").value_or(weight.plane);
    weight.amount = Mass::fromSi(inner.requiredQuantity("amount", gramsSpec(Sign::NotNegative)));
    weight.angle = inner.required<Angle>("angle");
    input.weights.push_back(weight);
  });
}

void readOptions(InputReader& reader, UnbalanceInput& input) {
  reader.inObject("options", [&](InputReader& inner) {
    readRollingOptions(inner, input.rolling);
    input.grade = inner.number("grade", kPositiveNumber).value_or(input.grade);
    input.confidence = readConfidence(inner);
  });
}

Result<UnbalanceInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  UnbalanceInput input;
  readWeights(reader, input);
  input.geometry.radius = reader.required<Length>("weight_radius", Sign::Positive);
  input.geometry.spacing = reader.required<Length>("plane_spacing", Sign::NotNegative);
  input.speed = reader.required<Speed>("speed", Sign::NotNegative);
  input.rolling = readRolling(reader);
  const auto lever = reader.optional<Length>("lever", Sign::NotNegative);
  input.hasLever = lever.has_value();
  input.geometry.lever = lever.value_or(Length{});
  const auto grams = [&](std::string_view key, Sign sign) {
    const auto si = reader.quantity(key, gramsSpec(sign));
    return si ? std::optional<Mass>(Mass::fromSi(*si)) : std::nullopt;
  };
  input.limitEachPlane = grams("limit_each_plane", Sign::Positive);
  input.weightUncertainty = grams("weight_uncertainty", Sign::NotNegative).value_or(Mass{});
  input.wheelMass = reader.optional<Mass>("wheel_mass", Sign::Positive);
  readOptions(reader, input);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Verdict verdictOfPlane(const UnbalanceInput& input, const mechanics::UnbalanceVector& plane) {
  const Mass amount = mechanics::massAt(plane.amount, input.geometry.radius);
  std::optional<LimitBand> limit;
  if (input.limitEachPlane) limit = LimitBand{.min = {}, .max = input.limitEachPlane->si()};
  const measure::Estimate estimate{amount.si(), input.weightUncertainty.si(), {}};
  return verdictOf(estimate, limit, input.confidence);
}

Json planeJson(const UnbalanceInput& input, const mechanics::UnbalanceVector& plane) {
  const Mass amount = mechanics::massAt(plane.amount, input.geometry.radius);
  Json json = weightJson({amount, plane.angle});
  json["unbalance"] = quantityText(plane.amount);
  json["verdict"] = word(verdictOfPlane(input, plane));
  return json;
}

Result<void> putGrade(const UnbalanceInput& input, const mechanics::UnbalanceAtSpeed& unbalance,
                      Outcome& outcome) {
  if (!input.wheelMass) return {};
  const auto reached =
      mechanics::gradeOf(unbalance.statical.amount, *input.wheelMass, unbalance.angularSpeed);
  if (!reached) return asInputError(reached.error());
  const auto allowance = mechanics::gradeAllowance(input.grade, *input.wheelMass,
                                                   unbalance.angularSpeed, input.geometry.radius);
  if (!allowance) return asInputError(allowance.error());
  outcome.result["grade"] = {{"reached", plainNumber(*reached)},
                             {"asked", plainNumber(input.grade)},
                             {"eccentricity", quantityText(allowance->eccentricity)},
                             {"unbalance", quantityText(allowance->unbalance)},
                             {"at_radius", gramsText(allowance->atRadius)},
                             {"each_plane", gramsText(allowance->eachPlane)}};
  outcome.notes.push_back({"grade_is_information",
                           "A grade is far looser than a workshop: judge by the grams of each "
                           "plane, 5 to 10 g (common practice)."});
  return {};
}

void noteWeights(const UnbalanceInput& input, const mechanics::UnbalanceAtSpeed& unbalance,
                 std::vector<Note>& notes) {
  notes.push_back({"square_of_speed", "Force and couple grow with the square of the speed."});
  const bool coupleLeads = input.hasLever && unbalance.couple > unbalance.momentOfForce;
  if (coupleLeads) {
    notes.push_back({"couple_leads",
                     "The couple turns the wheel about its swivel by more than the "
                     "force on this lever: a bubble balance does not see it."});
  }
  if (input.limitEachPlane) return;
  notes.push_back({"no_limit",
                   "No limit is given for a plane; workshops go by 5 to 10 g (common "
                   "practice)."});
}

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "wheel_frequency": "11.0040481951419 Hz",
    "inner": {
      "amount": "30 g",
      "angle": "20 deg",
      "unbalance": "5850 g mm",
      "verdict": "outside"},
    "outer": {
      "amount": "15 g",
      "angle": "245 deg",
      "unbalance": "2925 g mm",
      "verdict": "outside"},
    "static_unbalance": {
      "unbalance": "4310.35534275811 g mm",
      "angle": "351.324949936895 deg"},
    "force": "20.6052448208284 N",
    "couple": "3.22761540678882 N m",
    "couple_angle": "214.638806595178 deg",
    "moment_of_force": "1.44236713745799 N m",
    "grade": {
      "reached": 12.4175004685295,
      "asked": 40,
      "eccentricity": "0.578532337443449 mm",
      "unbalance": "13884.7760986428 g mm",
      "at_radius": "71.2039799930399 g",
      "each_plane": "35.6019899965199 g"}},
  "notes": [
    {
      "code": "grade_is_information",
      "text": "A grade is far looser than a workshop: judge by the grams of each plane, 5 to)"
                                            R"( 10 g (common practice)."},
    {
      "code": "square_of_speed",
      "text": "Force and couple grow with the square of the speed."},
    {
      "code": "couple_leads",
      "text": "The couple turns the wheel about its swivel by more than the force on this)"
                                            R"( lever: a bubble balance does not see it."}],
  "method": {
    "name": "m r w^2 in each plane; static sum and couple about the middle",
    "source": "plane dynamics; ISO 21940-11, from memory, for the grade",
    "options": {
      "convention": "dynamic_radial",
      "circumference_uncertainty": 0.015,
      "assumed_aspect": 82,
      "grade": 40,
      "confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "w = speed in m/s ÷ rolling radius in m; rolling radius = rolling circumference ÷ (2 × π)\n"
    "unbalance of a plane = sum of weight × radius, as arrows at their angles\n"
    "static unbalance = inner arrow + outer arrow; force = static unbalance × w², in kg, m "
    "and s\n"
    "couple = (outer arrow − inner arrow) ÷ 2 × plane spacing × w², about the middle between "
    "the planes\n"
    "moment of the force = force × lever\n"
    "grade reached in mm/s = static unbalance in g mm × w ÷ wheel mass in g; allowed "
    "unbalance = wheel mass × grade ÷ w";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Both planes have one radius, about that of the rim; the wheel is rigid and turns true.",
    "Force and couple grow with the square of the speed.",
    "The grade is for information only: G40 leaves a wheel about 30 g in each plane, far "
    "looser than any workshop, so judge by the grams of each plane.",
    "A bubble balance shows the static unbalance alone; a couple it does not see can be the "
    "larger moment about the swivel.",
});

}  // namespace

Description describeUnbalance() {
  return {.title = "What weights on a turning wheel do",
          .method = "m r w^2 in each plane; static sum and couple about the middle",
          .source = "plane dynamics; ISO 21940-11, from memory, for the grade",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(unbalanceInputFields(), unbalanceOptionFields()),
          .outputs = unbalanceOutputFields(),
          .exampleInput = R"({"weights": [{"plane": "inner", "amount": "30 g", "angle": "20 deg"},
                                          {"plane": "outer", "amount": "15 g", "angle": "245 deg"}],
                              "weight_radius": "195 mm", "plane_spacing": "165 mm",
                              "speed": "85 km/h", "tyre_on": "215/75 R15", "lever": "70 mm",
                              "limit_each_plane": "10 g", "weight_uncertainty": "2 g",
                              "wheel_mass": "24 kg"})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runUnbalance(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto rolling = rollingOf(input->rolling, outcome.notes);
  if (!rolling) return failAs(rolling);
  const auto unbalance = mechanics::unbalanceAtSpeed(input->weights, input->geometry, input->speed,
                                                     rolling->dynamicRadius());
  if (!unbalance) return asInputError(unbalance.error());
  const Frequency turns = Frequency::fromSi(input->speed.si() / rolling->circumference.si());
  outcome.result = {{"wheel_frequency", quantityText(turns)},
                    {"inner", planeJson(*input, unbalance->inner)},
                    {"outer", planeJson(*input, unbalance->outer)},
                    {"static_unbalance",
                     {{"unbalance", quantityText(unbalance->statical.amount)},
                      {"angle", quantityText(unbalance->statical.angle)}}},
                    {"force", quantityText(unbalance->force)},
                    {"couple", quantityText(unbalance->couple)},
                    {"couple_angle", quantityText(unbalance->coupleAngle)}};
  if (input->hasLever) {
    outcome.result["moment_of_force"] = quantityText(unbalance->momentOfForce);
  }
  if (auto done = putGrade(*input, *unbalance, outcome); !done) return failAs(done);
  noteWeights(*input, *unbalance, outcome.notes);
  outcome.draw =
      [drawing = UnbalanceDrawing{*unbalance, input->geometry.radius, input->limitEachPlane,
                                  verdictOfPlane(*input, unbalance->inner),
                                  verdictOfPlane(*input, unbalance->outer)}](figure::Size size) {
        return unbalancePicture(drawing, size);
      };
  putRollingOptions(input->rolling, *rolling, outcome.options);
  outcome.options["grade"] = plainNumber(input->grade);
  outcome.options["confidence"] = plainNumber(input->confidence);
  return outcome;
}

}  // namespace sw::compute
