// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/utilisation.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

/// tau / sigma = this x t, from W_p and As of one circle of diameter d0.
double torsionRatio(const BoltJoint& joint, TorsionModulus modulus) {
  const double k = modulus == TorsionModulus::Plastic ? 1.5 : 2.0;
  return k * (joint.geometry.pitchDiameter / joint.geometry.stressDiameter);
}

double stressFactor(double ratio, double factor) {
  return std::sqrt(1 + 3 * ratio * ratio * factor * factor);
}

/// What u takes from one friction of thread and head.
struct Reduced {
  const BoltJoint& joint;
  double ratio;

  /// sigma_red As / M.
  [[nodiscard]] double perTorque(double factor, double headFriction) const {
    const double rub = 0.5 * joint.frictionDiameter.si() * headFriction;
    const double screw = 0.5 * joint.geometry.pitchDiameter.si() * factor;
    return stressFactor(ratio, factor) / (rub + screw);
  }
  /// The t at which perTorque is least.
  [[nodiscard]] double leastAt(double headFriction) const {
    const double rub = 0.5 * joint.frictionDiameter.si() * headFriction;
    return 0.5 * joint.geometry.pitchDiameter.si() / (3 * ratio * ratio * rub);
  }
};

/// Range of sigma_red As / M over the range of friction.
Span reducedPerTorque(const BoltJoint& joint, const JointFriction& friction,
                      TorsionModulus modulus) {
  const Reduced reduced{joint, torsionRatio(joint, modulus)};
  const double low = threadFactor(joint, friction.thread.least);
  const double high = threadFactor(joint, friction.thread.most);
  const double nearest = std::clamp(reduced.leastAt(friction.head.most), low, high);
  return {reduced.perTorque(nearest, friction.head.most),
          std::max(reduced.perTorque(low, friction.head.least),
                   reduced.perTorque(high, friction.head.least))};
}

std::optional<Error> findBadFriction(const JointFriction& friction) {
  if (auto checked = checkFriction(friction.thread, "thread_friction"); !checked) {
    return checked.error();
  }
  if (auto checked = checkFriction(friction.head, "head_friction"); !checked) {
    return checked.error();
  }
  return std::nullopt;
}

std::optional<Error> findBadShare(double share) {
  if (share > 0 && share <= 1) return std::nullopt;
  return Error{
      ErrorCode::OutOfRange, "bolts.bad_share", "utilisation", {{"text", fullPrecision(share)}}};
}

}  // namespace

BoltStress boltStress(Force clamp, const BoltJoint& joint, double threadFriction,
                      TorsionModulus modulus) {
  const double factor = threadFactor(joint, threadFriction);
  const double ratio = torsionRatio(joint, modulus);
  const Pressure tension = Pressure::fromSi(clamp.si() / joint.geometry.stressArea.si());
  return {tension, ratio * factor * tension, stressFactor(ratio, factor) * tension};
}

Result<Span> utilisation(Torque torque, const BoltJoint& joint, const JointFriction& friction,
                         const YieldCriterion& criterion) {
  if (auto error =
          NumberChecks().positive("torque", torque).positive("yield", criterion.yield).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = findBadFriction(friction)) return tl::make_unexpected(std::move(*error));
  const Span reduced = reducedPerTorque(joint, friction, criterion.modulus);
  const double scale = torque.si() / (joint.geometry.stressArea.si() * criterion.yield.si());
  return Span{reduced.least * scale, reduced.most * scale};
}

Result<Force> greatestPreload(const BoltJoint& joint, double threadFriction,
                              const YieldCriterion& criterion, double share) {
  if (auto error = NumberChecks().positive("yield", criterion.yield).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = findBadShare(share)) return tl::make_unexpected(std::move(*error));
  const FrictionRange one{threadFriction, threadFriction};
  if (auto ok = checkFriction(one, "thread_friction"); !ok) return failAs(ok);
  const double factor =
      stressFactor(torsionRatio(joint, criterion.modulus), threadFactor(joint, threadFriction));
  return Force::fromSi(share * criterion.yield.si() * joint.geometry.stressArea.si() / factor);
}

Result<Torque> greatestTorque(const BoltJoint& joint, const JointFriction& friction,
                              const YieldCriterion& criterion, double share) {
  if (auto error = findBadShare(share)) return tl::make_unexpected(std::move(*error));
  const auto perNewtonMetre = utilisation(newtonMetres(1), joint, friction, criterion);
  if (!perNewtonMetre) return failAs(perNewtonMetre);
  return newtonMetres(share / perNewtonMetre->most);
}

Result<double> tighteningFactorFrom(double scatter) {
  if (!(scatter >= 0 && scatter < 1)) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_scatter", "scatter",
                {{"text", fullPrecision(scatter)}});
  }
  return (1 + scatter) / (1 - scatter);
}

Result<double> scatterFrom(double tighteningFactor) {
  if (!(tighteningFactor >= 1) || !std::isfinite(tighteningFactor)) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_tightening_factor", "tightening_factor",
                {{"text", fullPrecision(tighteningFactor)}});
  }
  return (tighteningFactor - 1) / (tighteningFactor + 1);
}

Result<Force> leastPreload(Force greatest, double tighteningFactor) {
  const auto scatter = scatterFrom(tighteningFactor);
  if (!scatter) return failAs(scatter);
  return greatest / tighteningFactor;
}

}  // namespace sw::mechanics
