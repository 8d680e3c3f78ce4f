// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/clamp_force.h"

#include <numbers>

#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

constexpr double kCosHalfFlank = std::numbers::sqrt3 / 2;  // 30 degrees

double tanLead(const BoltJoint& joint) {
  return joint.thread.pitch.si() / (std::numbers::pi * joint.geometry.pitchDiameter.si());
}
double tanThreadFriction(double threadFriction) {
  return threadFriction / kCosHalfFlank;
}

double undoingFactor(const BoltJoint& joint, double threadFriction) {
  const double lead = tanLead(joint);
  const double rub = tanThreadFriction(threadFriction);
  if (joint.formula == TorqueFormula::Linear) return rub - lead;
  return (rub - lead) / (1 + rub * lead);
}

/// Torque per force.
Length lever(const BoltJoint& joint, double factor, double headFriction) {
  return 0.5 * (factor * joint.geometry.pitchDiameter + headFriction * joint.frictionDiameter);
}
Length tighteningLever(const BoltJoint& joint, const Friction& friction) {
  return lever(joint, threadFactor(joint, friction.thread), friction.head);
}

}  // namespace

Result<BoltJoint> boltJoint(const Thread& thread, Length frictionDiameter, TorqueFormula formula) {
  auto geometry = threadGeometry(thread);
  if (!geometry) return failAs(geometry);
  if (auto error = NumberChecks().positive("friction_diameter", frictionDiameter).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  return BoltJoint{thread, *geometry, frictionDiameter, formula};
}

double threadFactor(const BoltJoint& joint, double threadFriction) {
  const double lead = tanLead(joint);
  const double rub = tanThreadFriction(threadFriction);
  if (joint.formula == TorqueFormula::Linear) return lead + rub;
  return (lead + rub) / (1 - lead * rub);
}

Torque tighteningTorque(Force clamp, const BoltJoint& joint, const Friction& friction) {
  return clamp * tighteningLever(joint, friction);
}

Torque undoingTorque(Force clamp, const BoltJoint& joint, const Friction& friction) {
  return clamp * lever(joint, undoingFactor(joint, friction.thread), friction.head);
}

Force clampForce(Torque torque, const BoltJoint& joint, const Friction& friction) {
  return Force::fromSi(torque.si() / tighteningLever(joint, friction).si());
}

double nutFactor(const BoltJoint& joint, const Friction& friction) {
  return tighteningLever(joint, friction) / joint.thread.diameter;
}

TorqueShares torqueShares(const BoltJoint& joint, const Friction& friction) {
  const Length whole = tighteningLever(joint, friction);
  TorqueShares shares;
  shares.stretch = joint.thread.pitch / (2 * std::numbers::pi) / whole;
  shares.head = 0.5 * friction.head * joint.frictionDiameter / whole;
  shares.thread = 1 - shares.stretch - shares.head;
  shares.undoing = lever(joint, undoingFactor(joint, friction.thread), friction.head) / whole;
  return shares;
}

std::optional<double> impliedFriction(Torque torque, Force clamp, const BoltJoint& joint) {
  const Length whole = Length::fromSi(torque.si() / clamp.si());
  const Length rubbing = whole - joint.thread.pitch / (2 * std::numbers::pi);
  if (rubbing.si() <= 0) return std::nullopt;
  return rubbing / (0.5 * (joint.geometry.pitchDiameter / kCosHalfFlank + joint.frictionDiameter));
}

Result<double> nutFactorFrom(Torque torque, Force clamp, Length diameter) {
  if (auto error = NumberChecks()
                       .positive("torque", torque)
                       .positive("clamp_force", clamp)
                       .positive("diameter", diameter)
                       .error()) {
    return tl::make_unexpected(std::move(*error));
  }
  return torque / (clamp * diameter);
}

Result<Force> clampForceByNutFactor(Torque torque, double nutFactor, Length diameter) {
  if (auto error = NumberChecks()
                       .positive("torque", torque)
                       .positive("nut_factor", nutFactor)
                       .positive("diameter", diameter)
                       .error()) {
    return tl::make_unexpected(std::move(*error));
  }
  return Force::fromSi(torque.si() / (nutFactor * diameter.si()));
}

Result<Torque> torqueByNutFactor(Force clamp, double nutFactor, Length diameter) {
  if (auto error = NumberChecks()
                       .positive("clamp_force", clamp)
                       .positive("nut_factor", nutFactor)
                       .positive("diameter", diameter)
                       .error()) {
    return tl::make_unexpected(std::move(*error));
  }
  return nutFactor * (clamp * diameter);
}

}  // namespace sw::mechanics
