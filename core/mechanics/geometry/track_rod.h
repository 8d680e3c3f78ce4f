// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: turns of a track-rod adjuster to a wanted toe
// Formula: one turn changes the rod by p (a thread at one end) or 2 p (left-hand and right-hand
//   threads of pitch p at both ends), and the total toe by that over the arm a, in radians:
//   turns = (wanted - present) a / p. u(turns) = u(present) a / p.
// Source: plane geometry, small angles.
// Direction: a longer rod behind the axle pushes the rear of the wheels apart, toe-in; ahead of the
//   axle it does the opposite.
// Assumptions: a is the distance of the rod's ball joint from the swivel axis, square to the rod.
// When not to use: with worn joints, or to settle a toe without measuring it again.
// Valid range: p and a > 0, p below a / 5; toe within 20 degrees; uncertainty >= 0.
// Degenerate cases: present equal to wanted needs no turn.
// Accuracy: better than 1 % while the arms stand within 10 degrees of square to the rod.
// Reference test: tests/core/mechanics/geometry/track_rod_test.cpp.

namespace sw::mechanics {

enum class RodPlace { BehindAxle, AheadOfAxle };
[[nodiscard]] std::string_view word(RodPlace place);

enum class RodThread { OneEnd, BothEnds };
[[nodiscard]] std::string_view word(RodThread thread);

enum class RodChange { Lengthen, Shorten, Leave };
[[nodiscard]] std::string_view word(RodChange change);

struct TrackRod {
  Length pitch;
  RodThread thread = RodThread::OneEnd;
  Length arm;
  RodPlace place = RodPlace::BehindAxle;
};
struct ToeChange {
  Angle present;  ///< total, toe-in positive
  Angle wanted;
  Angle presentUncertainty;  ///< standard
};
struct RodTurns {
  Angle toePerTurn;
  double turns = 0;  ///< >= 0
  RodChange change = RodChange::Leave;
  double standardUncertainty = 0;  ///< of turns
};

/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "wheels.out_of_range".
[[nodiscard]] Result<RodTurns> trackRodTurns(const TrackRod& rod, const ToeChange& change);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::RodThread> {
  using E = mechanics::RodThread;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::OneEnd, "one_end"}, {E::BothEnds, "both_ends"}}};
};

template <>
struct Words<mechanics::RodPlace> {
  using E = mechanics::RodPlace;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::BehindAxle, "behind_axle"}, {E::AheadOfAxle, "ahead_of_axle"}}};
};

}  // namespace sw
