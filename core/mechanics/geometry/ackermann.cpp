// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/ackermann.h"

#include <cmath>
#include <numbers>

#include "mechanics/wheels/value_checks.h"

namespace sw::mechanics {

namespace {

constexpr double kQuarterTurn = std::numbers::pi / 2;

std::optional<Error> check(const SteeredAxle& axle, std::string_view field, Angle angle) {
  if (auto error = firstBad({{"kingpin_spacing", axle.kingpinSpacing.si()},
                             {"wheelbase", axle.wheelbase.si()},
                             {field, angle.si(), Need::NotNegative}})) {
    return error;
  }
  if (angle.si() >= kQuarterTurn) return outOfRange(field, "0 to below 90 deg");
  return std::nullopt;
}

}  // namespace

Result<Angle> innerAngle(const SteeredAxle& axle, Angle outer) {
  if (auto error = check(axle, "outer", outer)) return tl::make_unexpected(std::move(*error));
  const double ratio = axle.kingpinSpacing / axle.wheelbase;
  // tan(inner) = tan(outer) / (1 - ratio tan(outer)), which holds straight ahead, too.
  const double below = 1 - ratio * std::tan(outer.si());
  if (below <= 0) {
    return tl::make_unexpected(outOfRange("outer",
                                          "small enough that the inner wheel stays below "
                                          "90 deg"));
  }
  return radians(std::atan(std::tan(outer.si()) / below));
}

Result<Angle> outerAngle(const SteeredAxle& axle, Angle inner) {
  if (auto error = check(axle, "inner", inner)) return tl::make_unexpected(std::move(*error));
  const double ratio = axle.kingpinSpacing / axle.wheelbase;
  return radians(std::atan(std::tan(inner.si()) / (1 + ratio * std::tan(inner.si()))));
}

Result<Angle> innerDeviation(const SteeredAxle& axle, Angle outer, Angle measuredInner) {
  if (auto error = check(axle, "measured_inner", measuredInner)) {
    return tl::make_unexpected(std::move(*error));
  }
  const auto inner = innerAngle(axle, outer);
  if (!inner) return inner;
  return measuredInner - *inner;
}

}  // namespace sw::mechanics
