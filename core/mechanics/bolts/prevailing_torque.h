// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/thread.h"
#include "mechanics/bolts/torque_range.h"

// METHOD CARD: the drag of a self-locking nut, and whether a used one still locks
// Drag: run the nut down until just short of seating and read the torque that keeps it turning.
//   included: the sheet's figure holds as it is; add_always: final = figure + drag (FAA AC 43.13-1B
//   7-40); add_if_third: below a third of the figure's lower limit drag is left out, else added (US
//   Army TM 5-2330-325-13&P, which prints 0.33).
// Trap: official sources contradict each other, so the rule belongs to the sheet and is asked for.
// Used nuts: torque that starts the nut turning off, all of the locking part on the thread; below
//   the least of TM 1-1500-204-23-6 table 2-8 it is thrown away (5/16-24 6.5, 3/8-24 9.5, 7/16-20
//   14, 1/2-20 18, 9/16-18 24 lbf in). Another manual asks for more (3/8: 12 all-metal, 9 nylon),
//   and prints one figure with a slip of units; convert, do not copy.
// Valid range: figures > 0, drag >= 0. No figure is on file for metric and for other inch sizes.
// When not to use: single-use nuts, and where the vehicle's documentation asks for new ones: those
//   are replaced whatever they hold. Nylon softens near 121 degrees C.
// Reference test: tests/core/mechanics/bolts/prevailing_torque_test.cpp.

namespace sw::mechanics {

enum class DragRule { Included, AddAlways, AddIfThird };

struct FinalTorque {
  TorqueRange torque;
  Torque added;  ///< 0 where drag is left out
};
/// Errors: as findBadRange; OutOfRange "measure.not_positive", "measure.not_finite" (drag).
[[nodiscard]] Result<FinalTorque> finalTorque(const TorqueRange& figure, Torque drag,
                                              DragRule rule);
/// From where on drag counts under AddIfThird.
[[nodiscard]] constexpr Torque dragThreshold(const TorqueRange& figure) {
  return figure.least / 3;
}

/// The least torque that must start a used nut turning; empty where none is on file.
[[nodiscard]] std::optional<Torque> leastBreakaway(const Thread& thread);

enum class UsedNutVerdict { Reuse, Discard, NoLimit };
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (breakaway_torque).
[[nodiscard]] Result<UsedNutVerdict> judgeUsedNut(const Thread& thread, Torque breakaway);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::DragRule> {
  using E = mechanics::DragRule;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::Included, "included"}, {E::AddAlways, "add_always"}, {E::AddIfThird, "add_if_third"}}};
};

template <>
struct Words<mechanics::UsedNutVerdict> {
  using E = mechanics::UsedNutVerdict;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::Reuse, "reuse"}, {E::Discard, "discard"}, {E::NoLimit, "no_limit"}}};
};

}  // namespace sw
