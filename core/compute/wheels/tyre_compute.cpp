// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/output.h"
#include "compute/picture_parts.h"
#include "compute/wheels/tyre_picture.h"
#include "compute/wheels/tyre_reading.h"
#include "compute/wheels/wheels.h"
#include "mechanics/wheels/load_index.h"
#include "mechanics/wheels/tyre_pressure.h"

namespace sw::compute {

namespace {

struct TyreInput {
  mechanics::TyreDesignation tyre;
  std::optional<Length> diameter;
  std::optional<Length> measuringRimWidth, rimWidth;
  std::optional<Mass> referenceLoad, load;
  std::optional<Pressure> referencePressure, pressure;
  std::optional<Pressure> coldPressure;
  TemperatureDifference coldTemperature = TemperatureDifference::fromSi(20);
  std::optional<TemperatureDifference> hotTemperature;
  Pressure ambient = mechanics::kStandardAtmosphere;
  double assumedAspect = mechanics::kUsualAspect;
};

void readPressures(InputReader& reader, TyreInput& input) {
  input.referenceLoad = reader.optional<Mass>("reference_load", Sign::Positive);
  input.referencePressure = reader.optional<Pressure>("reference_pressure", Sign::Positive);
  input.pressure = reader.optional<Pressure>("pressure", Sign::Positive);
  input.load = reader.optional<Mass>("load", Sign::Positive);
  if (input.pressure || input.load) reader.requireKey("reference_pressure");
  input.coldPressure = reader.optional<Pressure>("cold_pressure", Sign::NotNegative);
  input.coldTemperature =
      reader.optional<TemperatureDifference>("cold_temperature").value_or(input.coldTemperature);
  input.hotTemperature = reader.optional<TemperatureDifference>("hot_temperature");
  if (input.coldPressure) reader.requireKey("hot_temperature");
  if (input.hotTemperature) reader.requireKey("cold_pressure");
}

Result<TyreInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  TyreInput input;
  reader.requireKey("designation");
  if (auto tyre = readDesignation(reader, "designation")) input.tyre = std::move(*tyre);
  input.diameter = reader.optional<Length>("diameter", Sign::Positive);
  input.measuringRimWidth = reader.optional<Length>("measuring_rim_width", Sign::Positive);
  input.rimWidth = reader.optional<Length>("rim_width", Sign::Positive);
  if (input.measuringRimWidth) reader.requireKey("rim_width");
  if (input.rimWidth) reader.requireKey("measuring_rim_width");
  readPressures(reader, input);
  reader.inObject("options", [&](InputReader& inner) {
    input.assumedAspect = inner.number("assumed_aspect", {}).value_or(input.assumedAspect);
    input.ambient =
        inner.optional<Pressure>("ambient_pressure", Sign::Positive).value_or(input.ambient);
  });
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

void putMarking(const mechanics::TyreDesignation& tyre, Json& result) {
  result["form"] = word(tyre.form);
  result["construction"] = word(tyre.construction);
  result["section_width"] = quantityText(tyre.sectionWidth);
  result["rim_diameter"] = quantityText(mechanics::rimDiameter(tyre));
  if (tyre.speedSymbol) {
    result["speed_symbol"] = std::string(1, *tyre.speedSymbol);
    if (const auto speed = mechanics::speedOfSymbol(*tyre.speedSymbol)) {
      result["top_speed"] = quantityText(*speed);
    }
  }
  if (tyre.plyRating) result["ply_rating"] = *tyre.plyRating;
  if (!tyre.marks.empty()) result["marks"] = tyre.marks;
}

void putLoads(const mechanics::TyreDesignation& tyre, Outcome& outcome) {
  const auto put = [&](const std::optional<int>& index, const char* key, const char* loadKey) {
    if (!index) return;
    outcome.result[key] = *index;
    const auto load = mechanics::loadOfIndex(*index);
    if (load) {
      outcome.result[loadKey] = quantityText(*load);
    } else {
      outcome.notes.push_back({"load_unknown", "Load index " + std::to_string(*index) +
                                                   " is outside the table of 60 to 126."});
    }
  };
  put(tyre.loadIndex, "load_index", "load_of_index");
  put(tyre.loadIndexDual, "load_index_dual", "load_of_index_dual");
  if (!tyre.loadIndexDual) return;
  outcome.notes.push_back(
      {"first_index_counts", "Of two load indices the first is for a single wheel on each side."});
}

/// The diameter is the measured one where there is one; a size that does not tell it is no error.
Result<void> putDiameter(const TyreInput& input, Outcome& outcome) {
  TyreDrawing drawing{{}, mechanics::rimDiameter(input.tyre), input.tyre.sectionWidth, {}, {}};
  Json& result = outcome.result;
  const auto nominal = dimensionsOf(input.tyre, "designation", input.assumedAspect);
  if (!nominal && nominal.error().code != ErrorCode::Degenerate) return failAs(nominal);
  if (nominal) {
    noteMarking(*nominal, "The tyre", outcome.notes);
    result["aspect"] = plainNumber(nominal->aspect);
    result["aspect_from"] = word(nominal->aspectSource);
    result["nominal_diameter"] = quantityText(nominal->diameter);
    result["section_height"] = quantityText(nominal->sectionHeight);
    if (const auto band = mechanics::freeDiameterBand(input.tyre, *nominal)) {
      drawing.least = band->least;
      drawing.most = band->most;
      result["least_diameter"] = quantityText(band->least);
      result["most_diameter"] = quantityText(band->most);
    }
  }
  if (input.diameter) {
    result["diameter"] = quantityText(*input.diameter);
    result["diameter_from"] = "measured";
  } else if (nominal) {
    result["diameter"] = result["nominal_diameter"];
    result["diameter_from"] = "designation";
  } else {
    result["diameter_from"] = "not_computable";
    outcome.notes.push_back({"not_computable",
                             "This size does not tell the diameter. Measure the diameter, or "
                             "better a roll-out, and enter that."});
    return {};
  }
  drawing.diameter = input.diameter ? *input.diameter : nominal->diameter;
  if (drawing.diameter > drawing.rimDiameter) {
    outcome.draw = [drawing](figure::Size size) { return tyrePicture(drawing, size); };
  }
  return {};
}

Result<void> putLoadAndPressure(const TyreInput& input, Outcome& outcome) {
  if (!input.pressure && !input.load) return {};
  auto load = input.referenceLoad;
  if (!load && input.tyre.loadIndex) load = mechanics::loadOfIndex(*input.tyre.loadIndex);
  if (!load) return fail(ErrorCode::Missing, "wheels.missing", "/reference_load");
  const mechanics::LoadAtPressure reference{*load, input.referencePressure.value_or(Pressure{})};
  if (input.pressure) {
    const auto carried = mechanics::loadAtPressure(reference, *input.pressure);
    if (!carried) return asInputError(carried.error());
    outcome.result["load_at_pressure"] = quantityText(*carried);
  }
  if (input.load) {
    const auto needed = mechanics::pressureForLoad(reference, *input.load);
    if (!needed) return asInputError(needed.error());
    outcome.result["pressure_for_load"] = quantityText(*needed);
  }
  outcome.notes.push_back({"pressure_documentation",
                           "Pressures are set cold to the vehicle's documentation; never lower "
                           "than it says because of this figure."});
  return {};
}

Result<void> putOther(const TyreInput& input, Outcome& outcome) {
  if (input.rimWidth && input.measuringRimWidth) {
    const auto width = mechanics::sectionWidthOnRim(input.tyre.sectionWidth,
                                                    {*input.measuringRimWidth, *input.rimWidth});
    if (!width) return asInputError(width.error());
    outcome.result["width_on_rim"] = quantityText(*width);
  }
  if (input.coldPressure && input.hotTemperature) {
    const auto hot = mechanics::pressureAtTemperature(
        {*input.coldPressure, input.coldTemperature, *input.hotTemperature, input.ambient});
    if (!hot) return asInputError(hot.error());
    outcome.result["hot_pressure"] = quantityText(*hot);
    outcome.notes.push_back(
        {"never_let_out", "A warm tyre reads high: let nothing out of it, set it cold."});
  }
  return {};
}

/// What the marking comes to, before all other notes.
void noteSize(const TyreInput& input, Outcome& outcome) {
  const auto size = dimensionsOf(input.tyre, "designation", input.assumedAspect);
  if (!size) return;
  outcome.notes.insert(outcome.notes.begin(),
                       {"size", "As marked it is " + labelText(size->diameter, 3) + " across and " +
                                    labelText(input.tyre.sectionWidth, 3) + " wide, on a " +
                                    shortNumber(input.tyre.rimCode, 1) + " inch rim."});
}

}  // namespace

Result<Outcome> runTyre(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  putMarking(input->tyre, outcome.result);
  if (auto done = putDiameter(*input, outcome); !done) return failAs(done);
  putLoads(input->tyre, outcome);
  if (auto done = putLoadAndPressure(*input, outcome); !done) return failAs(done);
  if (auto done = putOther(*input, outcome); !done) return failAs(done);
  noteSize(*input, outcome);
  outcome.notes.push_back({"documentation",
                           "Which tyres may be fitted is in the vehicle's documentation and local "
                           "rules."});
  outcome.options = {{"assumed_aspect", plainNumber(input->assumedAspect)},
                     {"ambient_pressure", quantityText(input->ambient)}};
  return outcome;
}

}  // namespace sw::compute
