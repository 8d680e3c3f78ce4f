// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/toe.h"

#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "measure/type_b.h"
#include "mechanics/wheels/value_checks.h"

namespace sw::mechanics {

namespace {

constexpr Angle kMostToe = degrees(10);
constexpr double kMostShare = 1.0 / 3;
constexpr std::size_t kMostReadings = 20;
constexpr std::size_t kHalfTurnPair = 2;

std::optional<Error> checkReadings(std::span<const ToeReading> readings) {
  if (readings.empty()) return Error{ErrorCode::Missing, "measure.no_readings", "readings", {}};
  if (readings.size() > kMostReadings) return outOfRange("readings", "at most 20");
  for (std::size_t at = 0; at < readings.size(); ++at) {
    const std::string path = "readings/" + std::to_string(at);
    if (auto error = firstBad({{path + "/front", readings[at].front.si()},
                               {path + "/rear", readings[at].rear.si()}})) {
      return error;
    }
  }
  return std::nullopt;
}

}  // namespace

SteerAngles asSteerAngles(const WheelToe& toe) {
  return {-toe.left, toe.right};
}

Result<Length> toeLength(const WheelToe& toe, Length diameter) {
  for (const auto& [field, angle] : {std::pair{"left", toe.left}, std::pair{"right", toe.right}}) {
    if (auto error = badAngle(field, angle, kMostToe, "-10 to 10 deg")) {
      return tl::make_unexpected(*error);
    }
  }
  if (auto error = firstBad({{"diameter", diameter.si()}})) return tl::make_unexpected(*error);
  return diameter * (std::sin(toe.left.si()) + std::sin(toe.right.si()));
}

Result<Length> toeLength(Angle total, Length diameter) {
  if (auto error = badAngle("total_angle", total, 2 * kMostToe, "-20 to 20 deg")) {
    return tl::make_unexpected(*error);
  }
  return toeLength(WheelToe{total / 2, total / 2}, diameter);
}

Result<Angle> toeAngle(Length toe, Length diameter) {
  if (auto error = firstBad({{"diameter", diameter.si()}, {"total", toe.si(), Need::Any}})) {
    return tl::make_unexpected(*error);
  }
  const double share = toe / diameter;
  if (std::abs(share) > kMostShare) {
    return tl::make_unexpected(outOfRange("total", "less than a third of the diameter"));
  }
  return radians(2 * std::asin(share / 2));
}

Result<MeasuredToe> measuredToe(std::span<const ToeReading> readings, Length diameter,
                                Length graduation) {
  if (auto error = checkReadings(readings)) return tl::make_unexpected(*error);
  if (auto error = firstBad({{"graduation", graduation.si(), Need::NotNegative}})) {
    return tl::make_unexpected(*error);
  }
  Length sum;
  for (const ToeReading& reading : readings) sum = sum + (reading.rear - reading.front);
  MeasuredToe result;
  result.toe = sum / static_cast<double>(readings.size());
  const auto total = toeAngle(result.toe, diameter);
  if (!total)
    return tl::make_unexpected(
        total.error().about(total.error().field == "total" ? "readings" : total.error().field));
  result.total = *total;
  result.lengthUncertainty =
      metres(std::numbers::sqrt2 * measure::graduationUncertainty(graduation.si()));
  result.angleUncertainty = radians(result.lengthUncertainty / diameter);
  if (readings.size() == kHalfTurnPair) {
    const Length first = readings[0].rear - readings[0].front;
    const Length second = readings[1].rear - readings[1].front;
    result.runout = metres(std::abs((first - second).si()) / 2);
  }
  return result;
}

}  // namespace sw::mechanics
