// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>

#include "compute/common_fields.h"
#include "compute/input_reader.h"
#include "compute/kind_of_text.h"
#include "compute/measuring/measuring.h"
#include "compute/measuring/readings_picture.h"
#include "compute/measuring/series_texts.h"
#include "compute/output.h"
#include "measure/evaluation.h"
#include "phrasing/verdict_phrase.h"
#include "units/format.h"

namespace sw::compute {

namespace {

constexpr int kUsualPlan = 3;
constexpr int kMostPlanned = 1000;

/// The kind named by `quantity`, else that of the first reading; a force where that says nothing.
QuantityKind kindOf(InputReader& reader) {
  if (const auto named = reader.fields().text("quantity")) {
    const auto kind = kindFromField(*named, reader.fields().pathOf("quantity"));
    if (!kind) reader.fail(kind.error());
    return kind.value_or(QuantityKind::Force);
  }
  const Json* readings = reader.fields().raw("readings");
  const bool hasText = readings != nullptr && readings->is_array() && !readings->empty() &&
                       readings->front().is_string();
  if (!hasText) return QuantityKind::Force;
  const auto text = readings->front().get<std::string>();
  // "4 kg" on a pull is a spring scale's reading: a force goes before a mass.
  const FieldSpec force{.field = {}, .kind = QuantityKind::Force, .defaultUnit = {}};
  if (parseQuantity(text, force)) return QuantityKind::Force;
  return commonKind({text}).value_or(QuantityKind::Force);
}

void readInstrument(InputReader& reader, QuantityKind kind, InstrumentCapability& instrument) {
  const QuantitySpec positive{.kind = kind, .sign = Sign::Positive};
  const QuantitySpec any{.kind = kind};
  reader.requireKey("instrument");
  reader.inObject("instrument", [&](InputReader& inner) {
    instrument.graduation = inner.requiredQuantity("graduation", positive);
    instrument.permissibleError = inner.quantity("permissible_error", positive);
    const auto shape =
        inner.fields().oneOf("error_shape", {"rectangular", "triangular", "certificate"});
    if (shape) instrument.errorShape = errorShapeFromWord(*shape).value_or(ErrorShape::Rectangular);
    instrument.coverageFactor =
        inner.number("coverage_factor", kPositiveNumber).value_or(instrument.coverageFactor);
    inner.inObject("check", [&](InputReader& check) {
      OwnCheck own;
      own.applied = check.requiredQuantity("applied", any);
      own.shown = check.requiredQuantity("shown", any);
      instrument.check = own;
    });
  });
}

/// Readings fixed beforehand; where nothing is said, those that are there, but at least three. More
/// readings than were planned means that someone looked and went on, so the bar rises.
void readOptions(InputReader& reader, SeriesInput& input) {
  const int used = static_cast<int>(std::min<std::size_t>(input.readings.size(), kMostPlanned));
  input.planned = std::max(kUsualPlan, used);
  reader.inObject("options", [&](InputReader& inner) {
    input.confidence = readConfidence(inner);
    const auto planned = inner.wholeNumber("planned", 1, kMostPlanned);
    input.extended = planned && used > *planned;
    input.planned = planned.value_or(input.planned);
    const auto rule = inner.fields().oneOf("rule", {"conformance_probability", "guard_band_k2"});
    if (rule) input.rule = decisionRuleFromWord(*rule).value_or(input.rule);
  });
}

Result<SeriesInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  SeriesInput input;
  input.kind = kindOf(reader);
  reader.requireKey("readings");
  input.readings = reader.quantities("readings", {.kind = input.kind});
  readInstrument(reader, input.kind, input.instrument);
  input.pullAngleWithin =
      reader.quantity("pull_angle_within", {.kind = QuantityKind::Angle, .sign = Sign::NotNegative})
          .value_or(0.0);
  reader.inObject("pooled_scatter",
                  [&](InputReader& inner) { input.pooled = readPooledScatter(inner, input.kind); });
  reader.inObject("limit",
                  [&](InputReader& inner) { input.limit = readBand(inner, {.kind = input.kind}); });
  readOptions(reader, input);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

/// The path of a field as the evaluation names it.
std::string pathOf(const Error& error) {
  if (error.key == "measure.no_readings") return "/readings";
  if (error.key == "measure.angle_too_large") return "/pull_angle_within";
  return error.field.empty() ? std::string{} : "/" + error.field;
}

ReadingsShown shownReadings(const SeriesInput& input, const SeriesOutcome& outcome) {
  return {.title = "Readings against the limit",
          .what = std::string(word(input.kind)),
          .kind = input.kind,
          .readings = input.readings,
          .outlier = outcome.outlier,
          .value = outcome.correctedMean,
          .expandedUncertainty = outcome.expandedUncertainty,
          .limit = input.limit,
          .limitName = {},
          .verdict = outcome.verdict,
          .side = outcome.side};
}

Json budgetJson(const SeriesOutcome& outcome, QuantityKind kind) {
  Json lines = Json::array();
  for (const BudgetLine& line : outcome.budget) {
    lines.push_back({{"source", line.source},
                     {"standard_uncertainty", quantityText(line.standardUncertainty, kind)},
                     {"degrees_of_freedom", degreesOfFreedomJson(line.degreesOfFreedom)}});
  }
  return lines;
}

std::string displayOf(const SeriesOutcome& outcome, QuantityKind kind) {
  const Unit& unit = defaultUnit(kind);
  const RoundedPair pair = roundToUncertainty(outcome.correctedMean / unit.toSi,
                                              outcome.expandedUncertainty / unit.toSi);
  return pair.value + " +- " + pair.uncertainty + " " + std::string(unit.symbol);
}

Json resultJson(const SeriesOutcome& outcome, QuantityKind kind) {
  Json result = Json::object();
  result["mean"] = quantityText(outcome.mean, kind);
  if (outcome.used > 1) result["scatter"] = quantityText(outcome.scatter, kind);
  result["correction_factor"] = plainNumber(outcome.correctionFactor);
  result["corrected_mean"] = quantityText(outcome.correctedMean, kind);
  result["budget"] = budgetJson(outcome, kind);
  result["standard_uncertainty"] = quantityText(outcome.standardUncertainty, kind);
  result["degrees_of_freedom"] = degreesOfFreedomJson(outcome.degreesOfFreedom);
  result["coverage_factor"] = plainNumber(outcome.coverageFactor);
  result["expanded_uncertainty"] = quantityText(outcome.expandedUncertainty, kind);
  result["display"] = displayOf(outcome, kind);
  if (outcome.conformanceProbability) {
    result["conformance_probability"] = plainNumber(*outcome.conformanceProbability);
  }
  result["verdict"] = word(outcome.verdict);
  result["side"] = word(outcome.side);
  result["consistency"] = word(outcome.consistency);
  result["advice"] = Json::array();
  for (const Advice& advice : outcome.advice) {
    result["advice"].push_back(
        {{"code", word(advice.code)},
         {"text", phrasing::advicePhrase(advice, defaultUnit(kind)).toStdString()}});
  }
  return result;
}

}  // namespace

Result<Outcome> runSeries(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto evaluated = evaluateSeries(*input);
  if (!evaluated) return tl::make_unexpected(evaluated.error().about(pathOf(evaluated.error())));
  outcome.result = resultJson(*evaluated, input->kind);
  for (auto& note : seriesNotes(*input, *evaluated)) outcome.notes.push_back(std::move(note));
  outcome.options = {{"confidence", plainNumber(input->confidence)},
                     {"planned", input->planned},
                     {"rule", word(input->rule)}};
  outcome.draw = [shown = shownReadings(*input, *evaluated)](figure::Size size) {
    return readingsPicture(shown, size);
  };
  return outcome;
}

}  // namespace sw::compute
