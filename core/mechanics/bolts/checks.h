// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "base/error.h"
#include "units/quantity.h"

// What the calculations of fasteners ask of a number before they use it.

namespace sw::mechanics {

/// A number under the name of its field.
struct NumberInField {
  std::string_view field;
  double value = 0;

  NumberInField(std::string_view name, double number) : field(name), value(number) {}
  template <class Dimension>
  NumberInField(std::string_view name, Quantity<Dimension> quantity)
      : field(name), value(quantity.si()) {}
};

/// OutOfRange "measure.not_finite" or "measure.not_positive" about the first that is not > 0.
[[nodiscard]] inline std::optional<Error> findNotPositive(
    std::initializer_list<NumberInField> values) {
  for (const NumberInField& each : values) {
    const char* key = !std::isfinite(each.value) ? "measure.not_finite"
                      : each.value <= 0          ? "measure.not_positive"
                                                 : nullptr;
    if (key != nullptr) return Error{ErrorCode::OutOfRange, key, std::string(each.field), {}};
  }
  return std::nullopt;
}

/// The same, zero allowed.
[[nodiscard]] inline std::optional<Error> findNegative(
    std::initializer_list<NumberInField> values) {
  for (const NumberInField& each : values) {
    if (each.value == 0) continue;
    if (auto error = findNotPositive({each})) return error;
  }
  return std::nullopt;
}

}  // namespace sw::mechanics
