// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compute/calculation.h"
#include "compute/input_reader.h"
#include "mechanics/wheels/balance.h"

// Vectors {"amount","angle"} of a wheel in and out. Weights are masses in grams; what a vibration
// meter shows is a plain number, since only its ratios count.

namespace sw::compute {

/// A mass in grams, as weights are.
[[nodiscard]] std::string gramsText(Mass mass);
[[nodiscard]] QuantitySpec gramsSpec(Sign sign);
[[nodiscard]] FieldDescription gramsField(std::string_view name, std::string_view meaning,
                                          const FieldNotes& notes = {});

/// A required reading, and a required weight, under the key.
[[nodiscard]] mechanics::Polar readReading(InputReader& reader, std::string_view key);
[[nodiscard]] mechanics::WeightVector readWeight(InputReader& reader, std::string_view key,
                                                 Sign sign = Sign::Positive);

[[nodiscard]] Json readingJson(const mechanics::Polar& reading);
/// Vibration for one gram.
[[nodiscard]] Json influenceJson(const mechanics::Influence& influence);
[[nodiscard]] Json weightJson(const mechanics::WeightVector& weight);

[[nodiscard]] FieldDescription readingField(std::string_view name, std::string_view meaning,
                                            Presence presence = Presence::Required);
[[nodiscard]] FieldDescription weightField(std::string_view name, std::string_view meaning,
                                           Presence presence = Presence::Required,
                                           Sign sign = Sign::Positive);

/// What every balancing rests on. Codes: same_speed, check_by_a_run, many_grams.
void noteBalancing(Mass largest, std::vector<Note>& notes);

}  // namespace sw::compute
