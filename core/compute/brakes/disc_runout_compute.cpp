// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <nlohmann/json.hpp>

#include "compute/brakes/brakes.h"
#include "compute/brakes/gauge_input.h"
#include "compute/brakes/orders_output.h"
#include "compute/brakes/turn_picture.h"
#include "mechanics/brakes/disc_runout.h"

namespace sw::compute {

namespace {

using mechanics::DiscRunout;
using mechanics::DiscRunoutInput;
using mechanics::PlacedReading;

struct RunoutInput {
  DiscRunoutInput runout;
  bool fromPoints = false;
};

PlacedReading readPoint(InputReader& reader) {
  PlacedReading point;
  const auto clock =
      reader.number("clock", {.least = 0, .most = 12, .text = "0 to 12, where 12 is 0"});
  const auto angle = reader.optional<Angle>("angle");
  if (clock.has_value() == angle.has_value()) reader.fail(oneOfTwo("clock", "angle"));
  if (clock) point.place = degrees(*clock * 30);
  if (angle) point.place = *angle;
  point.reading = reader.required<Length>("reading");
  return point;
}

void readTrace(InputReader& reader, RunoutInput& input) {
  input.fromPoints = reader.fields().has("points");
  if (!input.fromPoints) reader.requireKey("readings");
  input.runout.readings = reader.list<Length>("readings");
  input.runout.turns = reader.wholeNumber("turns", 1, mechanics::kMostTurns).value_or(1);
  std::vector<PlacedReading> points;
  reader.eachObject("points", [&](InputReader& inner) { points.push_back(readPoint(inner)); });
  if (!input.fromPoints) return;
  const bool both = reader.fields().has("readings") || reader.fields().has("turns");
  if (both) return reader.fail(oneOfTwo("readings", "points"));
  const auto samples = mechanics::evenTurns(points);
  if (!samples) return reader.fail(samples.error().about("/" + samples.error().field));
  input.runout.readings = samples->readings;
  input.runout.turns = samples->turns;
}

Result<RunoutInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  RunoutInput input;
  readTrace(reader, input);
  input.runout.instrument = readGauge(reader, QuantityKind::Length);
  input.runout.plungerOffSquare = reader.optional<Angle>("plunger_off_square").value_or(Angle{});
  input.runout.limit = reader.optional<Length>("runout_limit", Sign::Positive);
  input.runout.confidence = readConfidenceOption(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  return withEnvelope(
      {{.name = "readings",
        .kind = "list of length",
        .unit = "mm",
        .range = "at least 4 a turn",
        .meaning = "indicator at even steps from the mark on, turn after turn; 12 places over two "
                   "turns are usual; required unless points are given"},
       {.name = "turns",
        .kind = "whole number",
        .defaultValue = "1",
        .range = "1 to 20",
        .meaning = "how many turns readings hold; averaged place by place"},
       {.name = "points",
        .kind = "list of object",
        .meaning = "in place of readings: in any order, even steps from 0, each place as often "
                   "as there were turns",
        .fields = {{.name = "clock",
                    .kind = "number",
                    .range = "0 to 12",
                    .meaning = "place as on a clock face, 12 is 0; this or angle"},
                   quantityField("angle", QuantityKind::Angle, "place as an angle"),
                   quantityField("reading", QuantityKind::Length, "of the indicator",
                                 {.presence = Presence::Required})}},
       gaugeField(QuantityKind::Length),
       quantityField("plunger_off_square", QuantityKind::Angle,
                     "of the plunger to the face; it then reads high by 1 / cos",
                     {.range = "below 60 deg", .defaultValue = R"("0 deg")"}),
       quantityField("runout_limit", QuantityKind::Length, "on the total (TIR)",
                     {.range = "more than 0"})},
      {confidenceField()});
}

std::vector<FieldDescription> outputFields() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {
      {.name = "places",
       .kind = "whole number",
       .presence = Presence::Required,
       .meaning = "on a turn"},
      quantityField("mean", QuantityKind::Length, "of the averaged turn", kAlways),
      judgedField("total", QuantityKind::Length, "largest less smallest: TIR"),
      {.name = "tilt",
       .kind = "object",
       .presence = Presence::Required,
       .meaning = "the first order: seat, hub, dirt or bearing; what disc-index takes",
       .fields = {quantityField("amount", QuantityKind::Length, "R1", kAlways),
                  quantityField("angle", QuantityKind::Angle, "of its high spot", kAlways),
                  quantityField("standard_uncertainty", QuantityKind::Length, "along and across",
                                kAlways),
                  quantityField("runout", QuantityKind::Length, "its part of the total: 2 R1",
                                kAlways)}},
      quantityField("residual", QuantityKind::Length,
                    "largest less smallest without the first order: the disc is not flat", kAlways),
      quantityField("residual_standard_uncertainty", QuantityKind::Length, "", kAlways),
      ordersField(),
      quantityField("repeatability", QuantityKind::Length,
                    "standard deviation of one reading, from two turns on"),
      quantityField("drift", QuantityKind::Length, "mean of the last turn less that of the first")};
}

Json resultJson(const DiscRunout& runout) {
  Json result = {{"places", runout.averaged.size()},
                 {"mean", quantityText(runout.extent.mean)},
                 {"total", judgedJson(runout.total)},
                 {"tilt",
                  {{"amount", quantityText(runout.tilt.amount)},
                   {"angle", quantityText(runout.tilt.angle)},
                   {"standard_uncertainty", quantityText(runout.tiltUncertainty)},
                   {"runout", quantityText(2 * runout.tilt.amount)}}},
                 {"residual", quantityText(runout.residual)},
                 {"residual_standard_uncertainty", quantityText(runout.residualUncertainty)},
                 {"orders", ordersJson(runout.orders)}};
  if (runout.repeatability) result["repeatability"] = quantityText(*runout.repeatability);
  if (runout.drift) result["drift"] = quantityText(*runout.drift);
  return result;
}

void noteMeaning(const DiscRunoutInput& input, const DiscRunout& runout, std::vector<Note>& notes) {
  const Length tilt = 2 * runout.tilt.amount;
  notes.push_back({"tilt", "Of the total, " + shown(tilt) +
                               " is tilt of the seat: clean the seat, index the disc, then look "
                               "at the hub and its bearing."});
  notes.push_back({"residual", "Without the tilt " + shown(runout.residual) +
                                   " is left: a disc that is not flat, by heat, uneven nuts or "
                                   "machining."});
  const auto moved = runout.drift ? metres(std::abs(runout.drift->si())) : Length{};
  if (moved > 2 * Length::fromSi(input.instrument.graduation)) {
    notes.push_back({"drift", "From first to last turn the readings moved by " + shown(moved) +
                                  ": a loose stand, or play in the bearing."});
  }
  notes.push_back({"another_fault",
                   "Runout is not thickness variation: a floating caliper follows it. It wears "
                   "variation in while the pads drag, so measure the thickness, too."});
  notes.push_back({"setting_up",
                   "It holds for a disc clamped by all its nuts at even torque, clean seats, no "
                   "bearing play and a plunger square to the face."});
}

constexpr std::string_view kExampleInput = R"({
  "readings": ["0.021 mm", "0.048 mm", "0.071 mm", "0.079 mm", "0.068 mm", "0.049 mm",
               "0.027 mm", "0.006 mm", "-0.009 mm", "-0.012 mm", "-0.005 mm", "0.004 mm"],
  "instrument": {"graduation": "0.001 mm", "local_error": "0.002 mm"},
  "plunger_off_square": "5 deg",
  "runout_limit": "0.08 mm"
})";

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "places": 12, "mean": "0.0288066300198196 mm",
    "total": {
      "value": "0.0906537175263488 mm", "standard_uncertainty": "0.00122474487139159 mm",
      "degrees_of_freedom": "infinity", "coverage_factor": 1.95996398454005,
      "expanded_uncertainty": "0.00240045583817765 mm", "verdict": "outside",
      "side": "above", "conformance_probability": 1.67818468826613e-18},
    "tilt": {
      "amount": "0.0443390575243415 mm", "angle": "91.0938602900137 deg",
      "standard_uncertainty": "0.000353553390593274 mm", "runout": "0.088678115048683 mm"},
    "residual": "0.0126018690756597 mm",
    "residual_standard_uncertainty": "0.00122474487139159 mm",
    "orders": [
      {
        "order": 1, "captured_share": 0.965925826289068,
        "amplitude": "0.0443390575243415 mm", "phase": "91.0938602900137 deg"},
      {
        "order": 2, "captured_share": 0.866025403784439,
        "amplitude": "0.00464890859109482 mm", "phase": "180 deg"},
      {
        "order": 3, "captured_share": 0.707106781186548,
        "amplitude": "0.00225828546784223 mm", "phase": "197.102728969052 deg"},
      {
        "order": 4, "captured_share": 0.75, "amplitude": "0.000332064899363905 mm",
        "phase": "119.999999999998 deg"}]},
  "notes": [
    {
      "code": "tilt",
      "text": "Of the total, 0.0887 mm is tilt of the seat: clean the seat, index the )"
    R"(disc, then look at the hub and its bearing."},
    {
      "code": "residual",
      "text": "Without the tilt 0.0126 mm is left: a disc that is not flat, by heat, )"
    R"(uneven nuts or machining."},
    {
      "code": "another_fault",
      "text": "Runout is not thickness variation: a floating caliper follows it. It wears )"
    R"(variation in while the pads drag, so measure the thickness, too."},
    {
      "code": "setting_up",
      "text": "It holds for a disc clamped by all its nuts at even torque, clean seats, )"
    R"(no bearing play and a plunger square to the face."},
    {
      "code": "captured",
      "text": "12 points show at least 71 % of each order up to 4. 11 even steps show 98 )"
    R"(% of every order up to 10."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "orders of even samples, conformance probability",
    "source": "plane geometry, discrete Fourier sum; JCGM 100:2008; JCGM 106:2012",
    "options": {"confidence": 0.95}}})";

constexpr std::string_view kFormula =
    "readings of several turns are averaged place by place, then × cos(angle of the plunger "
    "off square)\n"
    "runout (TIR) = largest − smallest\n"
    "first order R1 = √(C² + S²), C and S = 2 ÷ number of places × sum of (reading × cos or "
    "sin of its place on the turn)\n"
    "tilt of the seat = 2 × R1\n"
    "residual = largest − smallest of what is left without the first order: the disc is not "
    "flat\n"
    "drift = mean of the last turn − mean of the first";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The disc is held by all wheel nuts at even torque on flat washers.",
    "The play of the bearing is taken out or known, and the indicator stands on a rigid part "
    "of the knuckle at one radius.",
    "Four places or more at even steps; twelve places over two turns are common practice, no "
    "source.",
    "Few places read the residual low.",
    "The plunger stands less than 60 degrees off square to the face.",
    "Not for thickness variation, which is another fault: a floating caliper follows runout "
    "alone.",
});

}  // namespace

Description describeDiscRunout() {
  return {.title = "Runout of a brake disc and what it is made of",
          .method = "orders of even samples, conformance probability",
          .source = "plane geometry, discrete Fourier sum; JCGM 100:2008; JCGM 106:2012",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runDiscRunout(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto runout = mechanics::discRunout(input->runout);
  if (!runout) {
    Error error = runout.error();
    if (input->fromPoints && error.field == "readings") error.field = "points";
    return asInputError(std::move(error));
  }
  outcome.result = resultJson(*runout);
  noteMeaning(input->runout, *runout, outcome.notes);
  for (auto& note : captureNotes(runout->averaged.size(), runout->orders)) {
    outcome.notes.push_back(std::move(note));
  }
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->runout.confidence);
  outcome.draw = [input = input->runout, runout = *runout](figure::Size size) {
    return runoutPicture(input, runout, size);
  };
  return outcome;
}

}  // namespace sw::compute
