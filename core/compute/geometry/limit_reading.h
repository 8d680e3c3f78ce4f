// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <optional>
#include <string_view>

#include "compute/calculation.h"
#include "compute/common_fields.h"
#include "compute/input_reader.h"
#include "measure/decision.h"

// Limits {"min","max"} of a setting, and the verdict against them.

namespace sw::compute {

/// Refuses one without sides or with the lower above the upper.
[[nodiscard]] std::optional<LimitBand> readLimit(InputReader& reader, std::string_view key,
                                                 QuantityKind kind);
[[nodiscard]] FieldDescription limitField(std::string_view name, QuantityKind kind,
                                          std::string_view meaning);

/// Within, outside or undecided; instrument_too_coarse in place of undecided where the limit's band
/// is too narrow for the uncertainty; no_limit where there is none.
[[nodiscard]] Verdict verdictOf(const measure::Estimate& estimate,
                                const std::optional<LimitBand>& limit, double confidence);
[[nodiscard]] FieldDescription verdictField(std::string_view range, std::string_view meaning);

/// Refuses more than one of these fields, and none of them by asking for the first.
void requireOneOf(InputReader& reader, std::initializer_list<std::string_view> keys);

}  // namespace sw::compute
