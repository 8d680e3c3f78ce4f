// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/torque_range.h"

// METHOD CARD: a castellated nut and its split pin
// Geometry: n slots and h crossed holes line up every 360 / lcm(n, 2 h) degrees: 6 slots and one
// hole
//   60, two crossed holes 30. Travel of a step = pitch x step / 360.
// Decision: tighten to the lower limit, then on to the next slot, never past the upper limit and
//   never back. No slot by then: take the nut off, change washer or nut, begin again. Drag of the
//   nut goes on both limits. FAA AC 43.13-1B 7-40 (start at the least torque, do not pass the most;
//   change washer or nut); never back off: trade rule, common practice.
// One figure only: it is the lower limit; where no slot lines up at it the upper limit is asked for
//   and not invented.
// Exempt: nuts that set a bearing's preload or play; there the procedure itself backs off.
// Assumptions: even number of slots, so that a straight pin passes both sides; new pin every time.
// Degenerate cases: odd or fewer than 2 slots are refused, as is more than 2 holes.
// Reference test: tests/core/mechanics/bolts/castle_nut_test.cpp.

namespace sw::mechanics {

struct CastleStep {
  Angle turn;
  Length travel;
};
/// Errors: OutOfRange "bolts.bad_slots" (slots), "bolts.bad_cross_holes" (cross_holes);
/// "measure.not_positive", "measure.not_finite" (pitch).
[[nodiscard]] Result<CastleStep> castleStep(int slots, int crossHoles, Length pitch);

enum class NutPurpose { ClampsJoint, SetsBearing };
enum class SlotPosition { Aligned, NotAligned };
enum class SlotReachedBy { TighteningOn, BackingOff };

struct CastleNut {
  TorqueRange limits;  ///< without drag
  Torque drag;
  Torque reached;
  SlotPosition slot = SlotPosition::NotAligned;
  SlotReachedBy by = SlotReachedBy::TighteningOn;
  NutPurpose purpose = NutPurpose::ClampsJoint;
};

enum class CastleAction {
  FitPin,
  TightenOn,
  ChangeWasherOrNut,
  AskUpperLimit,
  BackingOffRefused,
  FollowProcedure,
};
struct CastleDecision {
  CastleAction action = CastleAction::TightenOn;
  TorqueRange limits;  ///< with drag
};
/// Errors: as findBadRange; OutOfRange "measure.not_positive", "measure.not_finite" (drag,
/// reached).
[[nodiscard]] Result<CastleDecision> decideCastleNut(const CastleNut& nut);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::NutPurpose> {
  using E = mechanics::NutPurpose;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::ClampsJoint, "clamps_joint"}, {E::SetsBearing, "sets_bearing"}}};
};

template <>
struct Words<mechanics::SlotPosition> {
  using E = mechanics::SlotPosition;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Aligned, "aligned"}, {E::NotAligned, "not_aligned"}}};
};

template <>
struct Words<mechanics::SlotReachedBy> {
  using E = mechanics::SlotReachedBy;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::TighteningOn, "tightening_on"}, {E::BackingOff, "backing_off"}}};
};

template <>
struct Words<mechanics::CastleAction> {
  using E = mechanics::CastleAction;
  static constexpr std::array<std::pair<E, std::string_view>, 6> table{
      {{E::FitPin, "fit_pin"},
       {E::TightenOn, "tighten_on"},
       {E::ChangeWasherOrNut, "change_washer_or_nut"},
       {E::AskUpperLimit, "ask_upper_limit"},
       {E::BackingOffRefused, "backing_off_refused"},
       {E::FollowProcedure, "follow_procedure"}}};
};

}  // namespace sw
