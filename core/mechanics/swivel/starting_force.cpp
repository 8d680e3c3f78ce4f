// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/starting_force.h"

#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "measure/budget.h"
#include "measure/type_b.h"
#include "mechanics/number_checks.h"

namespace sw {

using mechanics::NumberChecks;

namespace {

std::optional<Error> checkGeometry(Length arm, Angle offSquare) {
  const auto checks = NumberChecks().positive("arm", arm).finite("off_square", offSquare);
  if (checks.error()) return checks.error();
  if (std::abs(offSquare.si()) >= std::numbers::pi / 2) {
    return Error{ErrorCode::OutOfRange, "starting_force.not_square", "off_square", {}};
  }
  return std::nullopt;
}

std::optional<Error> check(const StartingPull& pull) {
  const auto checks = NumberChecks()
                          .notNegative("force", pull.force)
                          .notNegative("force_uncertainty", pull.forceUncertainty)
                          .notNegative("arm_uncertainty", pull.armUncertainty)
                          .notNegative("off_square_uncertainty", pull.offSquareUncertainty)
                          .notNegative("off_square_within", pull.offSquareWithin);
  if (checks.error()) return checks.error();
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
  if (auto done = NumberChecks().notNegative("torque", torque).done(); !done) return failAs(done);
  if (auto error = checkGeometry(arm, offSquare)) return tl::make_unexpected(*error);
  return Force::fromSi(torque.si() / (arm.si() * std::cos(offSquare.si())));
}

}  // namespace sw
