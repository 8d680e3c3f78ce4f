// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include "compute/common_fields.h"
#include "compute/description.h"
#include "compute/input_reader.h"
#include "compute/output.h"
#include "measure/evaluation.h"
#include "mechanics/judged.h"

// What the calculations about discs and bearings read and write alike: the gauge, the probability
// asked for, a value judged against its limit.

namespace sw::compute {

/// {"graduation", "permissible_error", "local_error"} under "instrument", required.
[[nodiscard]] InstrumentCapability readGauge(InputReader& reader, QuantityKind kind);
[[nodiscard]] FieldDescription gaugeField(QuantityKind kind);

[[nodiscard]] Json confidenceOption(double confidence);

/// A field under this name with the standard uncertainty under the second, which is required with
/// it.
struct LengthAndUncertainty {
  Length value;
  Length standardUncertainty;
};
[[nodiscard]] std::optional<LengthAndUncertainty> readWithUncertainty(InputReader& reader,
                                                                      std::string_view key,
                                                                      std::string_view uncertainty);

/// The error of two ways of giving the same thing, or of neither. `second` is the field named.
[[nodiscard]] Error oneOfTwo(std::string_view first, std::string_view second);

struct JudgedTexts {
  std::string value, standardUncertainty, expandedUncertainty;
};
[[nodiscard]] Json judgedObject(const mechanics::JudgedNumber& number, const JudgedTexts& texts,
                                const std::optional<double>& degreesOfFreedom);
template <class Q>
[[nodiscard]] Json judgedJson(const mechanics::Judged<Q>& judged) {
  return judgedObject({judged.coverageFactor, judged.expandedUncertainty.si(),
                       judged.conformanceProbability, judged.verdict, judged.side},
                      {quantityText(judged.value), quantityText(judged.standardUncertainty),
                       quantityText(judged.expandedUncertainty)},
                      judged.degreesOfFreedom);
}
/// The object judgedJson makes.
[[nodiscard]] FieldDescription judgedField(std::string_view name, QuantityKind kind,
                                           std::string_view meaning,
                                           Presence presence = Presence::Required);

/// "0.023 mm", rounded for a note.
[[nodiscard]] std::string shown(Length length);

}  // namespace sw::compute
