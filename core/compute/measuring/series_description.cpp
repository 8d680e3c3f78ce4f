// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/measuring.h"

namespace sw::compute {

namespace {

constexpr auto kRequired = Presence::Required;

std::vector<FieldDescription> instrumentFields() {
  return {
      {.name = "graduation",
       .kind = "force",
       .unit = "N",
       .presence = kRequired,
       .range = "more than 0",
       .meaning = "smallest step that is read"},
      {.name = "permissible_error",
       .kind = "force",
       .unit = "N",
       .range = "more than 0",
       .meaning = "largest error by the maker, a standard or a certificate: plus or minus this"},
      {.name = "error_shape",
       .kind = "word",
       .defaultValue = R"("rectangular")",
       .range = "rectangular | triangular | certificate",
       .meaning = "rectangular: anywhere within; triangular: the middle is likelier; certificate: "
                  "permissible_error is an expanded uncertainty"},
      {.name = "coverage_factor",
       .kind = "number",
       .defaultValue = "2",
       .range = "more than 0",
       .meaning = "of a certificate"},
      {.name = "check",
       .kind = "object",
       .meaning = "the user's own check; used in place of permissible_error for readings between "
                  "half and twice of what was applied",
       .fields = {{.name = "applied",
                   .kind = "force",
                   .unit = "N",
                   .presence = kRequired,
                   .meaning = "the known mass or gauge (a mass counts as its weight)"},
                  {.name = "shown",
                   .kind = "force",
                   .unit = "N",
                   .presence = kRequired,
                   .meaning = "what the instrument showed"}}},
  };
}

std::vector<FieldDescription> optionFields() {
  return {
      {.name = "confidence",
       .kind = "number",
       .defaultValue = "0.95",
       .range = "between 0.5 and 1, not either",
       .meaning = "probability asked for"},
      {.name = "planned",
       .kind = "whole number",
       .range = "1 to 1000",
       .meaning = "readings fixed beforehand; when absent, those given, but at least 3. Fewer are "
                  "provisional; with more, the probability asked for rises to 0.975 (up to 5) or "
                  "0.987 (up to 10)"},
      {.name = "rule",
       .kind = "word",
       .defaultValue = R"("conformance_probability")",
       .range = "conformance_probability | guard_band_k2",
       .meaning = "decision rule: ISO 14253-1 of 2017, or the guard band of 1998"},
  };
}

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{
      {.name = "readings",
       .kind = "list of force",
       .unit = "N",
       .presence = kRequired,
       .range = "at least one",
       .meaning = "the readings of one state, without the settling pull"},
      {.name = "quantity",
       .kind = "word",
       .range = "length | force | torque | angle | mass | speed | frequency | pressure | duration "
                "| volume | temperature_difference",
       .meaning = "what was read; when absent, what the first reading's unit says, force where it "
                  "says nothing. Every force below is then of this kind and comes out in the "
                  "kind's unit: mm, N, N m, deg, kg, km/h, Hz, bar, min, l, K"},
      {.name = "instrument",
       .kind = "object",
       .presence = kRequired,
       .meaning = "what is known about the instrument",
       .fields = instrumentFields()},
      {.name = "pull_angle_within",
       .kind = "angle",
       .unit = "deg",
       .defaultValue = R"("0 deg")",
       .range = "0 to below 90 deg",
       .meaning = "the pull was off its line by an unknown angle up to this; it then reads high"},
      {.name = "pooled_scatter",
       .kind = "object",
       .meaning = "scatter known from earlier series of the same instrument and hand",
       .fields = {{.name = "amount",
                   .kind = "force",
                   .unit = "N",
                   .presence = kRequired,
                   .range = "more than 0",
                   .meaning = "standard deviation of single readings"},
                  {.name = "readings",
                   .kind = "whole number",
                   .presence = kRequired,
                   .range = "2 to 1000000",
                   .meaning = "readings of one series that would tell as much: one more than the "
                              "degrees of freedom"}}},
      {.name = "limit",
       .kind = "object",
       .meaning = "absent: no limit",
       .fields = {{.name = "min", .kind = "force", .unit = "N", .meaning = "not below this"},
                  {.name = "max", .kind = "force", .unit = "N", .meaning = "not above this"}}},
  };
  for (auto& field : envelopeFields(optionFields())) fields.push_back(std::move(field));
  return fields;
}

FieldDescription force(std::string_view name, std::string_view meaning,
                       Presence presence = kRequired) {
  return {.name = name, .kind = "force", .unit = "N", .presence = presence, .meaning = meaning};
}

std::vector<FieldDescription> outputFields() {
  return {
      force("mean", "of the readings as read (the median where they disagree too much)"),
      force("scatter", "standard deviation of the readings; absent for one", Presence::Optional),
      {.name = "correction_factor",
       .kind = "number",
       .presence = kRequired,
       .meaning = "for a pull off its line"},
      force("corrected_mean", "after the own check and the correction factor: the value judged"),
      {.name = "budget",
       .kind = "list of object",
       .presence = kRequired,
       .meaning = "what the uncertainty is made of",
       .fields = {{.name = "source",
                   .kind = "word",
                   .presence = kRequired,
                   .range = "scatter | graduation | permissible_error | own_check | angle"},
                  force("standard_uncertainty", "after its sensitivity"),
                  {.name = "degrees_of_freedom",
                   .kind = "number or infinity",
                   .presence = kRequired}}},
      force("standard_uncertainty", "all lines together"),
      {.name = "degrees_of_freedom",
       .kind = "number or infinity",
       .presence = kRequired,
       .meaning = "effective (Welch-Satterthwaite)"},
      {.name = "coverage_factor", .kind = "number", .presence = kRequired, .meaning = "k"},
      force("expanded_uncertainty", "k times the standard uncertainty"),
      {.name = "display",
       .kind = "text",
       .presence = kRequired,
       .meaning = "rounded for people: uncertainty to two digits, value to the same place"},
      {.name = "conformance_probability",
       .kind = "number",
       .range = "0 to 1",
       .meaning = "that the true value is inside the limit; absent without a limit or a known "
                  "scatter"},
      {.name = "verdict",
       .kind = "word",
       .presence = kRequired,
       .range = "within | outside | undecided | provisional | instrument_too_coarse | no_limit"},
      {.name = "side",
       .kind = "word",
       .presence = kRequired,
       .range = "none | below | above | inside_likely | outside_likely"},
      {.name = "consistency",
       .kind = "word",
       .presence = kRequired,
       .range = "too_few | consistent | range_too_wide | outlier | inconsistent_median_used"},
      {.name = "advice",
       .kind = "list of object",
       .presence = kRequired,
       .meaning = "what would decide, the most urgent first",
       .fields = {{.name = "code",
                   .kind = "word",
                   .presence = kRequired,
                   .range = "more_readings | finer_instrument | more_cannot_help | "
                            "check_instrument | repeat_inconsistent | out_of_range | settled"},
                  {.name = "text", .kind = "text", .presence = kRequired}}},
  };
}

constexpr std::string_view kExampleInput = R"({
  "readings": ["31.5 N", "32 N", "31 N", "32.5 N"],
  "instrument": {"graduation": "0.5 N", "permissible_error": "0.8 N"},
  "pull_angle_within": "8 deg",
  "limit": {"min": "24 N", "max": "34 N"},
  "options": {"confidence": 0.95, "planned": 4}
})";

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "mean": "31.75 N",
    "scatter": "0.645497224367903 N",
    "correction_factor": 0.996753913344982,
    "corrected_mean": "31.6469367487032 N",
    "budget": [
      {"source": "scatter", "standard_uncertainty": "0.321700942221015 N",
       "degrees_of_freedom": 3},
      {"source": "graduation", "standard_uncertainty": "0.143869035046385 N",
       "degrees_of_freedom": "infinity"},
      {"source": "permissible_error", "standard_uncertainty": "0.460380912148431 N",
       "degrees_of_freedom": "infinity"},
      {"source": "angle", "standard_uncertainty": "0.0921440622812668 N",
       "degrees_of_freedom": "infinity"}],
    "standard_uncertainty": "0.587052730131955 N",
    "degrees_of_freedom": 33.2675157817175,
    "coverage_factor": 2.03389396748994,
    "expanded_uncertainty": "1.19400300641388 N",
    "display": "31.6 +- 1.2 N",
    "conformance_probability": 0.999837386872095,
    "verdict": "within",
    "side": "none",
    "consistency": "too_few",
    "advice": [{"code": "settled",
                "text": "No more pulls are needed."}]},
  "notes": [],
  "method": {
    "name": "mean, correction, uncertainty budget, conformance probability",
    "source": "JCGM 100:2008; JCGM 106:2012; ISO 14253-1:2017",
    "options": {"confidence": 0.95, "planned": 4, "rule": "conformance_probability"}}
})";

constexpr std::string_view kFormula =
    "value = (mean of the readings + correction) × pull factor\n"
    "correction = applied − shown of the own check, else 0\n"
    "pull factor = sin(a) ÷ a where the pull was off its line by an unknown angle up to a "
    "(in radians), else 1\n"
    "uncertainty u = √(scatter² + graduation² + error² + angle²), each part by itself:\n"
    "scatter = standard deviation of the readings ÷ √(number of readings)\n"
    "graduation = smallest step ÷ √12; error = permissible error ÷ √3; these three × pull "
    "factor\n"
    "angle = (mean + correction) × √(1 ÷ 2 + sin(2 × a) ÷ (4 × a) − pull factor²)\n"
    "expanded uncertainty = k × u, k from Student's t for the confidence\n"
    "within: the probability that the true value lies inside the limit is at least the "
    "confidence; outside: the value lies beyond the limit and the probability that the true "
    "one does, too, is at least the confidence; else undecided\n"
    "by the rule of 1998, if asked for: within where the value keeps 2 × u from every limit, "
    "outside where it lies more than 2 × u beyond one";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The readings are independent and of one unchanging quantity in one state; the settling "
    "pull is left out.",
    "The instrument's own error is the same in all readings: the graduation counts once, and "
    "more readings do not make it smaller.",
    "The scatter follows the bell curve.",
    "Where five readings or more differ by more than the known scatter of scale and hand "
    "allows, the median takes the place of the mean; no reading is ever dropped.",
    "An own check holds for readings between half and twice the mass or gauge it was made "
    "with (common practice, no source); it then takes the place of the permissible error.",
    "One reading without a known scatter has no probability: the answer is at most undecided.",
    "Where more readings were taken than planned, the probability asked for rises: 0.95 to "
    "0.975 up to 5 readings, to 0.987 up to 10, to 0.995 beyond.",
    "Three readings that scatter much more than the instrument errs claim a little too much: "
    "their 95 % hold the true value 92 to 93 % of the time.",
    "Not for readings taken in different states.",
});

}  // namespace

Description describeSeries() {
  return {.title = "Repeated readings judged against a limit",
          .method = "mean, correction, uncertainty budget, conformance probability",
          .source = "JCGM 100:2008; JCGM 106:2012; ISO 14253-1:2017",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

}  // namespace sw::compute
