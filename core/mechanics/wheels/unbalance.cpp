// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/unbalance.h"

#include <complex>
#include <string>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/value_checks.h"

namespace sw {

namespace mechanics {

namespace {

constexpr std::size_t kMostWeights = 100;
constexpr double kMillimetresPerMetre = 1000;

UnbalanceVector vectorOf(const std::complex<double>& value) {
  const Polar polar = toPolar(value);
  return {Unbalance::fromSi(polar.amount), polar.angle};
}

std::optional<Error> checkWeights(std::span<const WheelWeight> weights) {
  if (weights.size() > kMostWeights) return outOfRange("weights", "at most 100");
  for (std::size_t at = 0; at < weights.size(); ++at) {
    const std::string path = "weights/" + std::to_string(at);
    if (auto error = firstBad({{path + "/amount", weights[at].amount.si(), Need::NotNegative},
                               {path + "/angle", weights[at].angle.si(), Need::Any}})) {
      return error;
    }
  }
  return std::nullopt;
}

}  // namespace

std::string_view word(BalancePlane plane) {
  return wordOf(plane);
}

Mass massAt(Unbalance unbalance, Length radius) {
  return Mass::fromSi(unbalance.si() / radius.si());
}

Result<UnbalanceAtSpeed> unbalanceAtSpeed(std::span<const WheelWeight> weights,
                                          const BalanceGeometry& geometry, Speed speed,
                                          Length dynamicRadius) {
  if (auto error = checkWeights(weights)) return tl::make_unexpected(std::move(*error));
  if (auto error = firstBad({{"weight_radius", geometry.radius.si()},
                             {"plane_spacing", geometry.spacing.si(), Need::NotNegative},
                             {"lever", geometry.lever.si(), Need::NotNegative},
                             {"speed", speed.si(), Need::NotNegative},
                             {"dynamic_radius", dynamicRadius.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  std::complex<double> inner;
  std::complex<double> outer;
  for (const WheelWeight& weight : weights) {
    auto& plane = weight.plane == BalancePlane::Inner ? inner : outer;
    plane += toComplex({weight.amount.si() * geometry.radius.si(), weight.angle});
  }
  UnbalanceAtSpeed result;
  result.angularSpeed = speed.si() / dynamicRadius.si();
  const double squared = result.angularSpeed * result.angularSpeed;
  result.inner = vectorOf(inner);
  result.outer = vectorOf(outer);
  result.statical = vectorOf(inner + outer);
  result.force = Force::fromSi(result.statical.amount.si() * squared);
  result.momentOfForce = result.force * geometry.lever;
  const Polar half = toPolar((outer - inner) / 2.0);
  result.couple = Torque::fromSi(half.amount * geometry.spacing.si() * squared);
  result.coupleAngle = half.angle;
  return result;
}

Result<GradeAllowance> gradeAllowance(double grade, Mass wheel, double angularSpeed,
                                      Length radius) {
  if (auto error = firstBad({{"grade", grade},
                             {"wheel_mass", wheel.si()},
                             {"speed", angularSpeed},
                             {"weight_radius", radius.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  GradeAllowance allowance;
  allowance.eccentricity = millimetres(grade / angularSpeed);
  allowance.unbalance = Unbalance::fromSi(wheel.si() * allowance.eccentricity.si());
  allowance.atRadius = massAt(allowance.unbalance, radius);
  allowance.eachPlane = allowance.atRadius / 2;
  return allowance;
}

Result<double> gradeOf(Unbalance unbalance, Mass wheel, double angularSpeed) {
  if (auto error = firstBad({{"unbalance", unbalance.si(), Need::NotNegative},
                             {"wheel_mass", wheel.si()},
                             {"speed", angularSpeed, Need::NotNegative}})) {
    return tl::make_unexpected(std::move(*error));
  }
  return unbalance.si() / wheel.si() * angularSpeed * kMillimetresPerMetre;
}

}  // namespace mechanics
}  // namespace sw
