// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: the rounds in which a group of fasteners is tightened
// Formula: after seating all by hand, a round at each share of the torque, then one more at the
// full
//   torque that confirms it; each round in the crosswise order (tightening_order.h).
// Source: common practice, no source: half, full, confirm. Gradually and diametrically opposed: BS
//   AU 50-2.7a:1995 as reported in the trade (from memory).
// Valid range: up to 10 shares above 0, rising, the last one 1.
// When not to use: where the vehicle's documentation gives stages or angles of its own; the last
//   round then is no confirmation: an angle is never gone over twice.
// Degenerate cases: one share of 1 gives two rounds, both full.
// Reference test: tests/core/mechanics/bolts/tightening_rounds_test.cpp.

namespace sw::mechanics {

inline constexpr std::array<double, 2> kUsualStages{0.5, 1.0};
inline constexpr std::size_t kMostStages = 10;

enum class RoundPurpose { Tighten, Confirm };
struct TighteningRound {
  RoundPurpose purpose = RoundPurpose::Tighten;
  double share = 1;
  Torque torque;
};
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (torque), "bolts.bad_stages"
/// (stages; detail most).
[[nodiscard]] Result<std::vector<TighteningRound>> tighteningRounds(
    Torque torque, std::span<const double> stages = kUsualStages);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::RoundPurpose> {
  using E = mechanics::RoundPurpose;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Tighten, "tighten"}, {E::Confirm, "confirm"}}};
};

}  // namespace sw
