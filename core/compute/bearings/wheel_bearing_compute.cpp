// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/wheel_bearing.h"

#include <nlohmann/json.hpp>

#include "compute/bearings/bearings.h"
#include "compute/brakes/gauge_input.h"
#include "compute/measuring/readings_picture.h"

namespace sw::compute {

namespace {

using mechanics::WheelBearingKind;

struct SettingInput {
  WheelBearingKind kind = WheelBearingKind::EndFloat;
  mechanics::PlaySetting play;
  mechanics::PullSetting pull;
};

/// What belongs to a pull has no place beside a play: the wrong rule ruins a bearing.
void refuseForPlay(InputReader& reader, WheelBearingKind kind) {
  for (const char* field : {"radius", "radius_uncertainty", "off_square_within"}) {
    if (!reader.fields().has(field)) continue;
    return reader.fail({ErrorCode::OutOfRange,
                        "wheel_bearing.not_for_kind",
                        std::string("/") + field,
                        {{"kind", std::string(word(kind))}}});
  }
}

template <class Q>
mechanics::Limits<Q> readLimits(InputReader& reader) {
  mechanics::Limits<Q> limits;
  reader.inObject("limit", [&](InputReader& inner) {
    limits.min = inner.optional<Q>("min", Sign::NotNegative);
    limits.max = inner.optional<Q>("max", Sign::NotNegative);
  });
  return limits;
}

void readPlay(InputReader& reader, mechanics::PlaySetting& play) {
  play.readings = reader.list<Length>("readings", Sign::NotNegative);
  play.instrument = readGauge(reader, QuantityKind::Length);
  play.limits = readLimits<Length>(reader);
}

void readPull(InputReader& reader, mechanics::PullSetting& pull) {
  pull.readings = reader.list<Force>("readings", Sign::NotNegative);
  pull.instrument = readGauge(reader, QuantityKind::Force);
  pull.limits = readLimits<Torque>(reader);
  reader.requireKey("radius");
}

Result<SettingInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  SettingInput input;
  input.kind = reader.requiredChoice<WheelBearingKind>("kind").value_or(input.kind);
  const bool pulled = input.kind == WheelBearingKind::PreloadPull;
  reader.requireKey("readings");
  if (pulled) {
    readPull(reader, input.pull);
  } else {
    readPlay(reader, input.play);
  }
  input.pull.radius = reader.optional<Length>("radius", Sign::Positive).value_or(Length{});
  input.pull.radiusUncertainty =
      reader.optional<Length>("radius_uncertainty", Sign::NotNegative).value_or(Length{});
  input.pull.offSquareWithin =
      reader.optional<Angle>("off_square_within", Sign::NotNegative).value_or(Angle{});
  if (!pulled) refuseForPlay(reader, input.kind);
  input.play.confidence = readConfidenceOption(reader);
  input.pull.confidence = input.play.confidence;
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::vector<FieldDescription> inputFields() {
  return withEnvelope(
      {{.name = "kind",
        .kind = "word",
        .presence = Presence::Required,
        .range = "end_float | preload_pull | unit_without_setting",
        .meaning = "how this bearing is set, by the vehicle's documentation; never guessed, since "
                   "the wrong rule ruins a bearing"},
       {.name = "readings",
        .kind = "list of length or force",
        .presence = Presence::Required,
        .range = "0 or more each; three are usual",
        .meaning = "play between push and pull in mm; for preload_pull the pulls in N that keep "
                   "the hub turning"},
       gaugeField(QuantityKind::Number),
       {.name = "limit",
        .kind = "object",
        .meaning = "of the play, or of the torque for preload_pull; a unit has no min",
        .fields = {{.name = "min", .kind = "length or torque", .range = "0 or more"},
                   {.name = "max", .kind = "length or torque", .range = "0 or more"}}},
       quantityField("radius", QuantityKind::Length,
                     "from the axis to the stud that is pulled; needed for preload_pull",
                     {.range = "more than 0"}),
       quantityField("radius_uncertainty", QuantityKind::Length, "standard uncertainty",
                     {.range = "0 or more", .defaultValue = R"("0 mm")"}),
       quantityField("off_square_within", QuantityKind::Angle,
                     "unknown deviation of the pull from square, either way; it then reads high",
                     {.range = "0 to below 90 deg", .defaultValue = R"("0 deg")"})},
      {confidenceField()});
}

std::vector<FieldDescription> outputFields() {
  return {judgedField("play", QuantityKind::Length, "mean, for end_float and unit_without_setting",
                      Presence::Optional),
          judgedField("torque", QuantityKind::Torque, "pull times radius, for preload_pull",
                      Presence::Optional),
          {.name = "plausibility",
           .kind = "word",
           .range = "within | outside | undecided | provisional | instrument_too_coarse",
           .meaning = "of an end float without limits, against 0.0254 to 0.127 mm (heavy-vehicle "
                      "practice): no verdict"},
          {.name = "readings_used", .kind = "whole number", .presence = Presence::Required}};
}

void notePlay(const SettingInput& input, const mechanics::PlayJudged& judged,
              std::vector<Note>& notes) {
  if (input.kind == WheelBearingKind::UnitWithoutSetting) {
    notes.push_back({"nothing_to_adjust",
                     "A unit is not adjusted: beyond its figure it is renewed. Tightening its nut "
                     "more than the documentation says does not take play out."});
    if (judged.play.verdict == Verdict::NoLimit) {
      notes.push_back({"no_figure",
                       "Without the unit's own figure nothing is decided; the range "
                       "of an adjusted pair is not its own."});
    }
    return;
  }
  if (judged.plausibility) {
    notes.push_back({"plausible_range",
                     "0.0254 to 0.127 mm is what heavy-vehicle practice allows an end float: a "
                     "plausible range, not this vehicle's limit. Find its own."});
  }
  notes.push_back({"how_it_was_set",
                   "An end float counts once the hub was turned while its nut "
                   "was tightened; no play at all may be a preload, which burns "
                   "a bearing meant to float."});
}

void notePull(const mechanics::PullJudged& judged, std::vector<Note>& notes) {
  notes.push_back({"no_preload",
                   "A bearing preload in newtons does not follow from a pull: "
                   "compare it with the target of the same arrangement."});
  notes.push_back({"seals",
                   "Seals and a dragging brake add to the pull: the target says whether "
                   "it counts with them."});
  if (!judged.series.instrumentErrorKnown) {
    notes.push_back({"instrument_error_unknown",
                     "The scale's own error is not known and not in "
                     "the uncertainty: check it with a known mass."});
  }
}

ReadingsShown shownPlay(const mechanics::PlaySetting& setting,
                        const mechanics::PlayJudged& judged) {
  ReadingsShown shown{.title = "Play of the wheel bearing",
                      .what = "play",
                      .kind = QuantityKind::Length,
                      .readings = {},
                      .outlier = judged.series.outlier,
                      .value = judged.play.value.si(),
                      .expandedUncertainty = judged.play.expandedUncertainty.si(),
                      .limit = mechanics::bandOf(setting.limits),
                      .limitName = {},
                      .verdict = judged.play.verdict,
                      .side = judged.play.side};
  for (const Length reading : setting.readings) shown.readings.push_back(reading.si());
  if (judged.plausibility) {
    shown.limit = {mechanics::kPlausibleFloatLeast.si(), mechanics::kPlausibleFloatMost.si()};
    shown.limitName = "plausible";
  }
  return shown;
}

/// The pulls as torques, so that they stand against the limit.
ReadingsShown shownPull(const mechanics::PullSetting& setting,
                        const mechanics::PullJudged& judged) {
  ReadingsShown shown{.title = "Torque of the wheel bearing",
                      .what = "torque",
                      .kind = QuantityKind::Torque,
                      .readings = {},
                      .outlier = judged.series.outlier,
                      .value = judged.torque.value.si(),
                      .expandedUncertainty = judged.torque.expandedUncertainty.si(),
                      .limit = mechanics::bandOf(setting.limits),
                      .limitName = {},
                      .verdict = judged.torque.verdict,
                      .side = judged.torque.side};
  for (const Force reading : setting.readings) {
    shown.readings.push_back(reading.si() * setting.radius.si());
  }
  return shown;
}

constexpr std::string_view kFormula =
    "end float, unit without setting: play = mean of the readings between push and pull\n"
    "preload by pull: torque = mean pull × radius of the stud\n"
    "pull off square by an unknown angle up to a: torque × sin(a) ÷ a, a in radians\n"
    "uncertainty of a play = √(scatter² + 2 × graduation² ÷ 12 + local error² ÷ 3); of a "
    "torque from scatter, graduation, the scale's error, the radius and the angle\n"
    "within: the probability that the true value lies inside the limit is at least the "
    "confidence";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The kind of setting comes from the vehicle's documentation: the wrong rule ruins a "
    "bearing.",
    "The hub was turned while it was tightened; the brake is off and does not drag.",
    "For a pull the seals are in place or not, as the documentation says.",
    "Fewer than three readings are provisional.",
    "Without the vehicle's figure an end float is only called plausible, against 0.025 to "
    "0.127 mm (practice for heavy vehicles, as quoted); that is no limit.",
    "A unit without setting is not adjusted; only its play can be read.",
    "Not for working out a preload force from the pull.",
});

}  // namespace

Description describeWheelBearing() {
  return {.title = "Setting of a wheel bearing by its kind",
          .method = "play or pull as a series; torque = pull x radius; conformance probability",
          .source = "JCGM 100:2008; JCGM 106:2012; TMC RP 618 (as quoted) for the plausible float",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"kind": "end_float", "readings": ["0.052 mm", "0.055 mm", "0.053 mm"],
                              "instrument": {"graduation": "0.001 mm", "local_error": "0.003 mm"},
                              "limit": {"min": "0.03 mm", "max": "0.08 mm"}})",
          .exampleOutput =
              R"({
  "result": {
    "play": {
      "value": "0.0533333333333333 mm", "standard_uncertainty": "0.00198606254796883 mm",
      "degrees_of_freedom": 51.4387755102038, "coverage_factor": 2.00716806299182,
      "expanded_uncertainty": "0.0039863613173872 mm", "verdict": "within", "side": "none",
      "conformance_probability": 1},
    "readings_used": 3},
  "notes": [
    {
      "code": "how_it_was_set",
      "text": "An end float counts once the hub was turned while its nut was tightened; )"
              R"(no play at all may be a preload, which burns a bearing meant to float."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "play or pull as a series; torque = pull x radius; conformance probability",
    "source": "JCGM 100:2008; JCGM 106:2012; TMC RP 618 (as quoted) for the plausible float",
    "options": {"confidence": 0.95}}})"};
}

Result<Outcome> runWheelBearing(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  int used = 0;
  ReadingsShown shown;
  if (input->kind == WheelBearingKind::PreloadPull) {
    const auto judged = mechanics::preloadPull(input->pull);
    if (!judged) return asInputError(judged.error());
    outcome.result["torque"] = judgedJson(judged->torque);
    used = judged->series.used;
    notePull(*judged, outcome.notes);
    shown = shownPull(input->pull, *judged);
  } else {
    const auto judged = input->kind == WheelBearingKind::EndFloat
                            ? mechanics::endFloat(input->play)
                            : mechanics::unitPlay(input->play);
    if (!judged) return asInputError(judged.error());
    outcome.result["play"] = judgedJson(judged->play);
    if (judged->plausibility) outcome.result["plausibility"] = word(*judged->plausibility);
    used = judged->series.used;
    notePlay(*input, *judged, outcome.notes);
    shown = shownPlay(input->play, *judged);
  }
  outcome.result["readings_used"] = used;
  outcome.notes.push_back(documentationNote());
  outcome.options = confidenceOption(input->play.confidence);
  outcome.draw = [shown](figure::Size size) { return readingsPicture(shown, size); };
  return outcome;
}

}  // namespace sw::compute
