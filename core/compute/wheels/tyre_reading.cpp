// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/tyre_reading.h"

#include <nlohmann/json.hpp>
#include <string>
#include <utility>

#include "compute/geometry/limit_reading.h"
#include "compute/output.h"
#include "units/format.h"

namespace sw::compute {

namespace {

using mechanics::RollingCircumference;
using mechanics::RollingConvention;

constexpr int kMostTurns = 100;

Result<RollingCircumference> fromMarking(const RollingInput& input, std::vector<Note>& notes) {
  const auto dimensions = dimensionsOf(*input.tyreOn, "tyre_on", input.assumedAspect);
  if (!dimensions) return failAs(dimensions);
  noteMarking(*dimensions, "The tyre on it", notes);
  const auto convention =
      input.convention.value_or(mechanics::conventionOf(input.tyreOn->construction));
  return mechanics::circumferenceFromDiameter(dimensions->diameter, convention, input.treadWorn);
}

/// Any of these errors stands at a field of the input, but for those of the options.
tl::unexpected<Error> atItsPlace(const Error& error) {
  const bool option = error.field == "convention" || error.field == "circumference_uncertainty" ||
                      error.field == "assumed_aspect";
  return asInputError(option ? error.about("options/" + error.field) : error);
}

Result<RollingCircumference> fromSource(const RollingInput& input, std::vector<Note>& notes) {
  if (input.tyreOn) return fromMarking(input, notes);
  if (input.treadWorn.si() != 0) {
    notes.push_back({"not_used",
                     "The tread worn off counts for a marked size only; what is measured has "
                     "its wear in it."});
  }
  if (input.rollOut) return mechanics::circumferenceFromRollOut(*input.rollOut, input.turns);
  if (input.staticRadius) return mechanics::circumferenceFromStaticRadius(*input.staticRadius);
  return mechanics::circumferenceFromDiameter(
      input.diameter.value_or(Length{}),
      input.convention.value_or(RollingConvention::DynamicRadial));
}

}  // namespace

std::optional<mechanics::TyreDesignation> readDesignation(InputReader& reader,
                                                          std::string_view key) {
  const auto text = reader.fields().text(key);
  if (!text) return std::nullopt;
  auto tyre = mechanics::parseTyreDesignation(*text);
  if (tyre) return std::move(*tyre);
  reader.fail(tyre.error().about(reader.fields().pathOf(key)));
  return std::nullopt;
}

Result<mechanics::TyreDimensions> dimensionsOf(const mechanics::TyreDesignation& tyre,
                                               std::string_view key, double assumedAspect) {
  auto dimensions = mechanics::nominalDimensions(tyre, assumedAspect);
  if (dimensions) return dimensions;
  const bool option = dimensions.error().field == "assumed_aspect";
  const std::string path = option ? "/options/assumed_aspect" : "/" + std::string(key);
  return tl::make_unexpected(dimensions.error().about(path));
}

void noteMarking(const mechanics::TyreDimensions& dimensions, std::string_view which,
                 std::vector<Note>& notes) {
  const std::string at = std::string(which) + ": ";
  if (dimensions.aspectSource == mechanics::AspectSource::Assumed) {
    notes.push_back({"assumed_aspect", at + "no aspect is marked, so " +
                                           fullPrecision(dimensions.aspect) +
                                           " % was taken. Trade lists say 82 %, others 80 %, about "
                                           "1 % of the diameter apart; a roll-out settles it."});
  }
  if (dimensions.aspectSource == mechanics::AspectSource::FromDiameter) {
    notes.push_back({"nominal_inches",
                     at + "the inches of this size are nominal, and the tyre may be more than 1 % "
                          "smaller. Measure a roll-out where it matters."});
  }
}

RollingInput readRolling(InputReader& reader) {
  RollingInput input;
  input.tyreOn = readDesignation(reader, "tyre_on");
  input.diameter = reader.optional<Length>("diameter", Sign::Positive);
  input.staticRadius = reader.optional<Length>("static_radius", Sign::Positive);
  input.rollOut = reader.optional<Length>("roll_out", Sign::Positive);
  input.turns = reader.wholeNumber("turns", 1, kMostTurns).value_or(input.turns);
  input.treadWorn =
      reader.optional<Length>("tread_worn", Sign::NotNegative).value_or(input.treadWorn);
  requireOneOf(reader, {"tyre_on", "diameter", "static_radius", "roll_out"});
  return input;
}

void readRollingOptions(InputReader& options, RollingInput& input) {
  if (const auto name = options.fields().oneOf(
          "convention", {"geometric", "dynamic_radial", "dynamic_diagonal"})) {
    input.convention = mechanics::rollingConventionFromWord(*name);
  }
  input.relativeUncertainty = options.number("circumference_uncertainty", {});
  input.assumedAspect = options.number("assumed_aspect", {}).value_or(input.assumedAspect);
}

Result<RollingCircumference> rollingOf(const RollingInput& input, std::vector<Note>& notes) {
  auto rolling = fromSource(input, notes);
  // An error of the marking has its path already.
  if (!rolling && rolling.error().field.starts_with('/')) return rolling;
  if (!rolling) return atItsPlace(rolling.error());
  if (!input.relativeUncertainty) return rolling;
  auto stated = mechanics::withUncertainty(*rolling, *input.relativeUncertainty);
  if (!stated) return atItsPlace(stated.error());
  return stated;
}

std::vector<FieldDescription> rollingFields() {
  return {{.name = "tyre_on",
           .kind = "text",
           .range = "at most 60 characters",
           .meaning = "the size marked on the tyre; this, diameter, static_radius or roll_out is "
                      "required, and only one of them"},
          quantityField("diameter", QuantityKind::Length, "free diameter of the tyre as it is",
                        {.range = "more than 0"}),
          quantityField("static_radius", QuantityKind::Length,
                        "axle to ground on the standing vehicle; gives a circumference about 1 % "
                        "too short for a radial",
                        {.range = "more than 0"}),
          quantityField("roll_out", QuantityKind::Length,
                        "way for the turns, marked on the floor, driver aboard, road pressure",
                        {.range = "more than 0"}),
          {.name = "turns",
           .kind = "whole number",
           .defaultValue = "1",
           .range = "1 to 100",
           .meaning = "of the wheel over the roll_out; five are better than one"},
          quantityField("tread_worn", QuantityKind::Length,
                        "tread gone from a tyre of marked size, which takes twice that off its "
                        "diameter",
                        {.range = "0 to a tenth of the diameter", .defaultValue = R"("0 mm")"})};
}

std::vector<FieldDescription> rollingOptionFields() {
  return {
      {.name = "convention",
       .kind = "word",
       .range = "geometric | dynamic_radial | dynamic_diagonal",
       .meaning = "what a diameter is multiplied by: pi, 3.05 or 2.99; without it the one of "
                  "the tyre's construction, radial where only a diameter is given"},
      {.name = "circumference_uncertainty",
       .kind = "number",
       .range = "more than 0, up to 0.2",
       .meaning = "relative standard uncertainty; without it 0.003 from a roll-out, else 0.015"},
      {.name = "assumed_aspect",
       .kind = "number",
       .defaultValue = "82",
       .range = "60 to 100",
       .meaning = "per cent, for a metric radial that is marked without one"}};
}

void putRollingOptions(const RollingInput& input, const RollingCircumference& rolling,
                       Json& options) {
  options["convention"] = word(rolling.convention);
  options["circumference_uncertainty"] = plainNumber(rolling.relativeUncertainty);
  options["assumed_aspect"] = plainNumber(input.assumedAspect);
}

}  // namespace sw::compute
