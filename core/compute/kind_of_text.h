// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/unit.h"

// Which kind of quantity a text speaks of, where no field says it. "4 kg" alone is a mass; "4 kg"
// beside "N" is a force, as on a spring scale.

namespace sw::compute {

/// The kinds, in the order they are tried; plain numbers are not among them.
[[nodiscard]] std::vector<QuantityKind> measuredKinds();

/// The first kind under which every text is a quantity with a unit of its own, one where no unit of
/// mass must be read as a force before one where it must.
[[nodiscard]] std::optional<QuantityKind> commonKind(std::initializer_list<std::string_view> texts);

/// Reads the word of a kind. Errors: InvalidInput "json.not_one_of" (details: text, choices).
[[nodiscard]] Result<QuantityKind> kindFromField(const std::string& text, std::string path);

/// The error where no kind fits. InvalidInput "compute.not_a_quantity" (details: text, example).
[[nodiscard]] Error notAQuantity(std::string_view text, std::string path);

}  // namespace sw::compute
