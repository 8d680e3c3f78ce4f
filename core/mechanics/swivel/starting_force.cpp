// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/starting_force.h"

#include <array>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string>

#include "measure/budget.h"
#include "measure/type_b.h"

namespace sw {

namespace {

struct NamedNumber {
  std::string_view field;
  double value;
};

std::optional<Error> findBad(std::initializer_list<NamedNumber> notNegative) {
  for (const NamedNumber& number : notNegative) {
    if (!std::isfinite(number.value)) {
      return Error{ErrorCode::OutOfRange, "measure.not_finite", std::string(number.field), {}};
    }
    if (number.value < 0) {
      return Error{ErrorCode::OutOfRange, "measure.not_positive", std::string(number.field), {}};
    }
  }
  return std::nullopt;
}

std::optional<Error> checkGeometry(Length arm, Angle offSquare) {
  if (auto error = findBad({{"arm", arm.si()}})) return error;
  if (arm.si() == 0) return Error{ErrorCode::OutOfRange, "measure.not_positive", "arm", {}};
  if (!std::isfinite(offSquare.si())) {
    return Error{ErrorCode::OutOfRange, "measure.not_finite", "off_square", {}};
  }
  if (std::abs(offSquare.si()) >= std::numbers::pi / 2) {
    return Error{ErrorCode::OutOfRange, "starting_force.not_square", "off_square", {}};
  }
  return std::nullopt;
}

std::optional<Error> check(const StartingPull& pull) {
  if (auto error = findBad({{"force", pull.force.si()},
                            {"force_uncertainty", pull.forceUncertainty.si()},
                            {"arm_uncertainty", pull.armUncertainty.si()},
                            {"off_square_uncertainty", pull.offSquareUncertainty.si()},
                            {"off_square_within", pull.offSquareWithin.si()}})) {
    return error;
  }
  if (pull.degreesOfFreedom && !(*pull.degreesOfFreedom > 0)) {
    return Error{ErrorCode::OutOfRange, "measure.not_positive", "degrees_of_freedom", {}};
  }
  return checkGeometry(pull.arm, pull.offSquare);
}

}  // namespace

Result<SwivelTorque> swivelTorque(const StartingPull& pull, double confidence) {
  if (auto error = check(pull)) return tl::make_unexpected(std::move(*error));
  if (!(confidence > 0 && confidence < 1)) {
    return fail(ErrorCode::OutOfRange, "measure.bad_confidence", "confidence");
  }
  const auto within = measure::pullAngleFactor(pull.offSquareWithin.si());
  if (!within) return fail(ErrorCode::OutOfRange, "starting_force.not_square", "off_square_within");
  const double cosine = std::cos(pull.offSquare.si());
  const double sine = std::sin(pull.offSquare.si());
  const double factor = cosine * within->factor;
  const double reading = pull.force.si() * pull.arm.si();
  const std::array components{
      measure::Component{pull.forceUncertainty.si(), pull.degreesOfFreedom, pull.arm.si() * factor},
      measure::Component{pull.armUncertainty.si(), {}, pull.force.si() * factor},
      measure::Component{pull.offSquareUncertainty.si(), {}, reading * sine * within->factor},
      measure::Component{within->standardUncertainty, {}, reading * cosine}};
  const measure::Combined combined = measure::combine(components);
  SwivelTorque result;
  result.squareForce = pull.force * factor;
  result.torque = result.squareForce * pull.arm;
  result.standardUncertainty = Torque::fromSi(combined.standardUncertainty);
  result.degreesOfFreedom = combined.degreesOfFreedom;
  result.coverageFactor = measure::coverageFactor(confidence, combined.degreesOfFreedom);
  result.expandedUncertainty = result.coverageFactor * result.standardUncertainty;
  return result;
}

Result<Force> forceForTorque(Torque torque, Length arm, Angle offSquare) {
  if (auto error = findBad({{"torque", torque.si()}})) return tl::make_unexpected(*error);
  if (auto error = checkGeometry(arm, offSquare)) return tl::make_unexpected(*error);
  return Force::fromSi(torque.si() / (arm.si() * std::cos(offSquare.si())));
}

}  // namespace sw
