// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/value_checks.h"

#include <cmath>
#include <string>

#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

// Far beyond any part, and far enough from the ends of a double that no product gets there.
constexpr double kLargest = 1e12;
constexpr double kSmallest = 1e-12;

}  // namespace

std::optional<Error> firstBad(std::initializer_list<NamedValue> values) {
  for (const NamedValue& each : values) {
    NumberChecks checks;
    checks.finite(each.field, each.value);
    if (each.need == Need::Positive) checks.positive(each.field, each.value);
    if (checks.error()) return checks.error();
    if (each.need == Need::NotNegative && each.value < 0) {
      return outOfRange(each.field, "0 or more");
    }
    if (std::abs(each.value) > kLargest) {
      return outOfRange(each.field, "up to 1e12 of its SI unit");
    }
    if (each.need == Need::Positive && each.value < kSmallest) {
      return outOfRange(each.field, "more than 1e-12 of its SI unit");
    }
  }
  return std::nullopt;
}

std::optional<Error> badAngle(std::string_view field, Angle angle, Angle most,
                              std::string_view range) {
  if (auto error = firstBad({{field, angle.si(), Need::Any}})) return error;
  if (std::abs(angle.si()) <= most.si()) return std::nullopt;
  return outOfRange(field, range);
}

Error outOfRange(std::string_view field, std::string_view range) {
  return {ErrorCode::OutOfRange,
          "wheels.out_of_range",
          std::string(field),
          {{"range", std::string(range)}}};
}

Error missing(std::string_view field) {
  return {ErrorCode::Missing, "wheels.missing", std::string(field), {}};
}

}  // namespace sw::mechanics
