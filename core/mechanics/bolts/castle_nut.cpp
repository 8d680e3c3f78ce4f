// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/castle_nut.h"

#include <numbers>
#include <numeric>
#include <string>

namespace sw::mechanics {

namespace {

constexpr int kMostSlots = 24;
constexpr int kMostHoles = 2;
constexpr double kSameTorque = 1e-9;  // relative

bool below(Torque torque, Torque limit) {
  return torque.si() < limit.si() * (1 - kSameTorque);
}

CastleAction actionFor(const CastleNut& nut, const TorqueRange& limits) {
  if (nut.purpose == NutPurpose::SetsBearing) return CastleAction::FollowProcedure;
  if (nut.by == SlotReachedBy::BackingOff) return CastleAction::BackingOffRefused;
  if (below(nut.reached, limits.least)) return CastleAction::TightenOn;
  const bool aligned = nut.slot == SlotPosition::Aligned;
  if (!limits.most) {
    const bool atTheFigure = !below(limits.least, nut.reached);
    return aligned && atTheFigure ? CastleAction::FitPin : CastleAction::AskUpperLimit;
  }
  if (below(*limits.most, nut.reached)) return CastleAction::ChangeWasherOrNut;
  if (aligned) return CastleAction::FitPin;
  return below(nut.reached, *limits.most) ? CastleAction::TightenOn
                                          : CastleAction::ChangeWasherOrNut;
}

}  // namespace

Result<CastleStep> castleStep(int slots, int crossHoles, Length pitch) {
  if (slots < 2 || slots > kMostSlots || slots % 2 != 0) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_slots", "slots",
                {{"text", std::to_string(slots)}, {"most", std::to_string(kMostSlots)}});
  }
  if (crossHoles < 1 || crossHoles > kMostHoles) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_cross_holes", "cross_holes",
                {{"text", std::to_string(crossHoles)}});
  }
  if (auto error = NumberChecks().positive("pitch", pitch).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  const int positions = std::lcm(slots, 2 * crossHoles);
  return CastleStep{radians(2 * std::numbers::pi / positions), pitch / positions};
}

Result<CastleDecision> decideCastleNut(const CastleNut& nut) {
  if (auto error = findBadRange(nut.limits)) return tl::make_unexpected(std::move(*error));
  if (auto error = NumberChecks()
                       .notNegative("drag", nut.drag)
                       .notNegative("reached", nut.reached)
                       .error()) {
    return tl::make_unexpected(std::move(*error));
  }
  CastleDecision decision;
  decision.limits.least = nut.limits.least + nut.drag;
  if (nut.limits.most) decision.limits.most = *nut.limits.most + nut.drag;
  decision.action = actionFor(nut, decision.limits);
  return decision;
}

}  // namespace sw::mechanics
