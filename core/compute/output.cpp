// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/output.h"

#include <charconv>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>

#include "units/format.h"

namespace sw::compute {

namespace {

constexpr double kLargestWhole = 1e15;

}  // namespace

model::Json plainNumber(double value) {
  const std::string text = fullPrecision(value);
  double rounded = value;
  std::from_chars(text.data(), text.data() + text.size(), rounded);
  // A whole number is written as one: 3, not 3.0.
  const bool whole = rounded == std::trunc(rounded) && std::abs(rounded) < kLargestWhole;
  return whole ? model::Json(static_cast<std::int64_t>(rounded)) : model::Json(rounded);
}

model::Json degreesOfFreedomJson(const std::optional<double>& degreesOfFreedom) {
  return degreesOfFreedom ? plainNumber(*degreesOfFreedom) : model::Json("infinity");
}

std::string quantityText(double si, QuantityKind kind) {
  return exactText(si, defaultUnit(kind));
}

}  // namespace sw::compute
