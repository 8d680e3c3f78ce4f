// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/common_fields.h"

namespace sw::compute {

namespace {

constexpr double kUsualConfidence = 0.95;
constexpr int kMostPastReadings = 1000000;

}  // namespace

double readConfidence(InputReader& options) {
  return options
      .number("confidence", {.least = 0.5,
                             .most = 1,
                             .ends = Ends::Excluded,
                             .text = "between 0.5 and 1, not either"})
      .value_or(kUsualConfidence);
}

double readConfidenceOption(InputReader& reader) {
  double confidence = kUsualConfidence;
  reader.inObject("options", [&](InputReader& options) { confidence = readConfidence(options); });
  return confidence;
}

FieldDescription confidenceField() {
  return {.name = "confidence",
          .kind = "number",
          .defaultValue = "0.95",
          .range = "between 0.5 and 1, not either",
          .meaning = "probability asked for by a verdict"};
}

LimitBand readBand(InputReader& limit, const QuantitySpec& spec) {
  LimitBand band;
  band.min = limit.quantity("min", spec);
  band.max = limit.quantity("max", spec);
  return band;
}

PooledScatter readPooledScatter(InputReader& scatter, QuantityKind kind) {
  PooledScatter pooled;
  pooled.standardDeviation =
      scatter.requiredQuantity("amount", {.kind = kind, .sign = Sign::Positive});
  scatter.requireKey("readings");
  pooled.degreesOfFreedom = scatter.wholeNumber("readings", 2, kMostPastReadings).value_or(2) - 1;
  return pooled;
}

Note documentationNote() {
  return {"documentation",
          "The vehicle's own documentation comes first: where it differs, it holds."};
}

}  // namespace sw::compute
