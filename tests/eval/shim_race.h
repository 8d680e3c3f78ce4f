// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include "mechanics/swivel/shim_packs.h"

// How many strip-downs until both sides of an axle are proved within, in simulated shops:
// - one step more: one more step in the raising direction and try again until it is proved or the
//   packs end; over the limit: one step back, and that stays;
// - the advisor with one axle's own pulls; with the shop's history; with history and a measured
//   float (feeler or dial gauge, standard uncertainty 0.015 mm).
// A strip-down is one side taken apart, a pack fitted and five planned pulls; the pulls on the pack
// found cost none. It ends when the five pulls prove the side within (95 %), when nothing better is
// left to fit, or when the pack is one that was in before.
// Ranges, each uniform unless said otherwise. A shop: slope 20 to 100 N/mm (log-uniform), from axle
// to axle log-normal with 0.25; seal drag 3 to 7 N, +-20 % from axle to axle; limit from drag
// + 6..12 N on, 6 to 10 N wide; thinnest shim 0.05 (half of the shops), 0.075 or 0.1 mm; scale 0.2,
// 0.5 or 1 N a mark, its own error up to one mark; scatter of a pull 0.2 to 0.8 N; history of 6
// closed jobs. A side: pack found 0.9 to 1.1 mm; between 0.15 mm of float and 0.10 mm of preload.

namespace sw::eval {

inline constexpr std::size_t kWays = 4;
enum class Way { OneStepMore, OwnPulls, History, FloatAndHistory };

struct Tally {
  double axles = 0, stripDowns = 0, packs = 0, proved = 0, over = 0, loose = 0;
  void add(const Tally& other);
  [[nodiscard]] double stripDownsAnAxle() const { return stripDowns / axles; }
};
using Tallies = std::array<Tally, kWays>;

inline constexpr int kAxlesAShop = 40;
/// Two threads; the same numbers whatever their pace.
[[nodiscard]] Tallies race(mechanics::ShimEffect effect, int shops);

}  // namespace sw::eval
