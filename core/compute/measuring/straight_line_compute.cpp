// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/measuring/line_picture.h"
#include "compute/measuring/measuring.h"
#include "compute/output.h"
#include "measure/straight_line.h"

namespace sw::compute {

namespace {

struct LineInput {
  std::vector<measure::LinePoint> points;
  std::optional<double> at;
  std::optional<double> value;
  double valueUncertainty = 0;
};

Result<LineInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  LineInput input;
  reader.requireKey("points");
  reader.eachObject("points", [&](InputReader& point) {
    point.requireKey("x");
    point.requireKey("y");
    const auto x = point.number("x", {});
    const auto y = point.number("y", {});
    input.points.push_back({x.value_or(0.0), y.value_or(0.0)});
  });
  input.at = reader.number("at", {});
  input.value = reader.number("reach", {});
  input.valueUncertainty =
      reader.number("reach_uncertainty", {.least = 0, .text = "0 or more"}).value_or(0.0);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

FieldDescription numberOut(std::string_view name, std::string_view meaning,
                           Presence presence = Presence::Required) {
  return {.name = name, .kind = "number", .presence = presence, .meaning = meaning};
}

constexpr std::string_view kFormula =
    "y = intercept + slope × x\n"
    "Sxx = sum of (x − mean x)²; Sxy = sum of (x − mean x) × (y − mean y)\n"
    "slope = Sxy ÷ Sxx; intercept = mean y − slope × mean x\n"
    "scatter s = √(sum of (y − line)² ÷ (points − 2))\n"
    "uncertainty of the slope = s ÷ √Sxx; of the line at x = s × √(1 ÷ points + (x − mean "
    "x)² ÷ Sxx)\n"
    "x that reaches a y = (y − intercept) ÷ slope";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The x are without error; the y scatter alike along the whole line and independently of "
    "each other.",
    "Three points or more, with at least two different x: two points leave no scatter to "
    "judge by and are refused.",
    "All x are in one unit, and all y in one.",
    "A line without slope has no x that reaches another y.",
});

}  // namespace

Description describeStraightLine() {
  return {.title = "The straight line through points, with its uncertainty",
          .method = "least squares, equal weights",
          .source = "JCGM 100:2008 H.3",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(
              {{.name = "points",
                .kind = "list of object",
                .presence = Presence::Required,
                .range = "3 or more",
                .meaning = "all in one unit of x and one of y",
                .fields = {{.name = "x", .kind = "number", .presence = Presence::Required},
                           {.name = "y", .kind = "number", .presence = Presence::Required}}},
               {.name = "at", .kind = "number", .meaning = "an x at which the line is wanted"},
               {.name = "reach", .kind = "number", .meaning = "a y whose x is wanted"},
               {.name = "reach_uncertainty",
                .kind = "number",
                .defaultValue = "0",
                .range = "0 or more",
                .meaning = "standard uncertainty of reach"}}),
          .outputs = {numberOut("intercept", "y at x = 0"), numberOut("slope", "y per x"),
                      numberOut("intercept_uncertainty", "standard"),
                      numberOut("slope_uncertainty", "standard"),
                      numberOut("correlation", "of intercept and slope"),
                      numberOut("scatter", "of the points about the line"),
                      numberOut("degrees_of_freedom", "points less two"),
                      numberOut("value", "of the line at x", Presence::Optional),
                      numberOut("value_uncertainty", "standard, of the line", Presence::Optional),
                      numberOut("reading_uncertainty", "standard, of one new reading",
                                Presence::Optional),
                      numberOut("place", "the x that reaches the y", Presence::Optional),
                      numberOut("place_uncertainty", "standard", Presence::Optional)},
          .exampleInput = R"({"points": [{"x": 0, "y": 2}, {"x": 1, "y": 5}, {"x": 2, "y": 6},
                                     {"x": 3, "y": 9}], "at": 4, "reach": 7})",
          .exampleOutput = R"({
  "result": {
    "intercept": 2.2,
    "slope": 2.2,
    "intercept_uncertainty": 0.529150262212918,
    "slope_uncertainty": 0.282842712474619,
    "correlation": -0.801783725737273,
    "scatter": 0.632455532033676,
    "degrees_of_freedom": 2,
    "value": 11,
    "value_uncertainty": 0.774596669241483,
    "reading_uncertainty": 1,
    "place": 2.18181818181818,
    "place_uncertainty": 0.168359907334408},
  "notes": [],
  "method": {
    "name": "least squares, equal weights",
    "source": "JCGM 100:2008 H.3",
    "options": {}}})"};
}

Result<Outcome> runStraightLine(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto line = measure::fitLine(input->points);
  if (!line) return asInputError(line.error());
  Json& result = outcome.result;
  result["intercept"] = plainNumber(line->intercept);
  result["slope"] = plainNumber(line->slope);
  result["intercept_uncertainty"] = plainNumber(line->interceptUncertainty);
  result["slope_uncertainty"] = plainNumber(line->slopeUncertainty);
  result["correlation"] = plainNumber(line->correlation);
  result["scatter"] = plainNumber(line->scatter);
  result["degrees_of_freedom"] = plainNumber(line->degreesOfFreedom);
  if (input->at) {
    const auto there = line->at(*input->at);
    result["value"] = plainNumber(there.value);
    result["value_uncertainty"] = plainNumber(there.standardUncertainty);
    result["reading_uncertainty"] = plainNumber(there.standardUncertaintyNew);
  }
  LineShown shown{input->points, *line, input->at, input->value, {}};
  if (input->value) {
    const auto place = measure::placeOf(*line, *input->value, input->valueUncertainty);
    if (!place) return asInputError(place.error().about("reach"));
    result["place"] = plainNumber(place->value);
    result["place_uncertainty"] = plainNumber(place->standardUncertainty);
    shown.place = place->value;
  }
  outcome.draw = [shown](figure::Size size) { return linePicture(shown, size); };
  return outcome;
}

}  // namespace sw::compute
