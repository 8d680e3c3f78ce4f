// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/torque_plausibility.h"

#include <algorithm>

#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

constexpr double kMiddleFriction = 0.14;
constexpr double kRoughestUsual = 0.24;
constexpr double kLow = 0.2;
constexpr double kLeastBelievable = 0.4;
constexpr double kMostBelievable = 1.0;
constexpr auto kSlips = std::to_array<double>({0.1, 0.01, 10, 100});

Unit unitOf(const TypedQuantity& torque) {
  return findUnit(QuantityKind::Torque, torque.unit).value_or(defaultUnit(QuantityKind::Torque));
}

/// u per newton metre at the three frictions.
struct Gauge {
  double least = 0;
  double middle = 0;
  double greatest = 0;
};

Result<Gauge> gaugeOf(const BoltJoint& joint, const YieldCriterion& criterion,
                      const TorquePlausibility& at) {
  Gauge gauge;
  for (const auto& [friction, u] :
       {std::pair{at.friction.least, &gauge.least}, std::pair{at.middleFriction, &gauge.middle},
        std::pair{at.friction.most, &gauge.greatest}}) {
    const FrictionRange one{friction, friction};
    const auto span = utilisation(newtonMetres(1), joint, {one, one}, criterion);
    if (!span) return failAs(span);
    *u = span->most;
  }
  return gauge;
}

TorqueVerdict verdictOf(const TorquePlausibility& judged) {
  if (judged.atGreatestFriction > 1) return TorqueVerdict::Impossible;
  if (judged.atMiddleFriction > 1) return TorqueVerdict::Check;
  if (judged.atLeastFriction > 1) return TorqueVerdict::Note;
  return judged.atLeastFriction < kLow ? TorqueVerdict::SuspiciouslyLow : TorqueVerdict::Plausible;
}

bool isExempt(FastenerDuty duty, TorqueVerdict verdict) {
  switch (duty) {
    case FastenerDuty::Joint:
      return false;
    case FastenerDuty::AngleTightened:
      return verdict != TorqueVerdict::Impossible && verdict != TorqueVerdict::Plausible;
    case FastenerDuty::Bearing:
    case FastenerDuty::TaperJoint:
      return verdict == TorqueVerdict::SuspiciouslyLow;
  }
  return false;
}

std::vector<ProposedReading> readingsOf(const TypedQuantity& torque, double perNewtonMetre) {
  std::vector<ProposedReading> found;
  const Unit typed = unitOf(torque);
  const double number = torque.si / typed.toSi;
  const auto propose = [&](double value, const Unit& unit, Rereading as) {
    const double si = value * unit.toSi;
    const double u = si * perNewtonMetre;
    if (u < kLeastBelievable || u > kMostBelievable) return;
    const TypedQuantity reading{QuantityKind::Torque, fullPrecision(value),
                                std::string(unit.symbol), si};
    found.push_back({reading, as, u});
  };
  for (const double slip : kSlips) propose(number * slip, typed, Rereading::DecimalSlip);
  for (const Unit& unit : allUnits()) {
    const bool other = unit.kind == QuantityKind::Torque && unit.symbol != typed.symbol;
    if (other) propose(number, unit, Rereading::OtherUnit);
  }
  return found;
}

}  // namespace

Result<TorquePlausibility> judgeTorque(const TorqueClaim& claim) {
  if (auto error = NumberChecks().positive("torque", claim.torque.si).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto ok = checkFriction(claim.friction, "friction"); !ok) return failAs(ok);
  const auto strength = strengthOf(claim.strengthClass, claim.thread.diameter);
  if (!strength) return failAs(strength);
  const auto face = frictionDiameter(claim.thread, claim.face);
  if (!face) return failAs(face);
  const auto joint = boltJoint(claim.thread, face->diameter);
  if (!joint) return failAs(joint);

  TorquePlausibility judged;
  judged.face = *face;
  judged.middleFriction = std::clamp(kMiddleFriction, claim.friction.least, claim.friction.most);
  judged.friction = {claim.friction.least, std::max(claim.friction.most, kRoughestUsual)};
  const auto gauge = gaugeOf(*joint, {strength->yield, TorsionModulus::Plastic}, judged);
  if (!gauge) return failAs(gauge);
  judged.atLeastFriction = claim.torque.si * gauge->least;
  judged.atMiddleFriction = claim.torque.si * gauge->middle;
  judged.atGreatestFriction = claim.torque.si * gauge->greatest;
  judged.verdict = verdictOf(judged);
  if (isExempt(claim.duty, judged.verdict)) {
    judged.exemptFrom = judged.verdict;
    judged.verdict = TorqueVerdict::Exempt;
  } else if (judged.verdict != TorqueVerdict::Plausible) {
    judged.readings = readingsOf(claim.torque, gauge->middle);
  }
  return judged;
}

}  // namespace sw::mechanics
