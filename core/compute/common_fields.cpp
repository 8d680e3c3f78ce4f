// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/common_fields.h"

namespace sw::compute {

namespace {

constexpr double kUsualConfidence = 0.95;

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

Note documentationNote() {
  return {"documentation",
          "The vehicle's own documentation comes first: where it differs, it holds."};
}

}  // namespace sw::compute
