// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

// How often the middle 95 % of a prediction holds the truth, over simulated axles that were drawn
// from the very belief the advisor starts with. Half of the axles are measured with a thick shim
// taken out or put in (half the span of the packs and more in one step), half are predicted with a
// film of sealant that the trial packs did not have.

namespace sw::eval {

enum class Flaw {
  None,
  Power,    ///< force over the way past the knee bends up, power 10/9
  Misread,  ///< one pull of the last pack read one whole newton times three too high
};

struct Coverage {
  int axles = 0;
  int held = 0;
  int thick = 0, thickHeld = 0;
  int film = 0, filmHeld = 0;
  [[nodiscard]] double share() const { return static_cast<double>(held) / axles; }
  [[nodiscard]] double thickShare() const { return static_cast<double>(thickHeld) / thick; }
  [[nodiscard]] double filmShare() const { return static_cast<double>(filmHeld) / film; }
};

[[nodiscard]] Coverage simulateCoverage(int axles, Flaw flaw, std::uint64_t seed);

}  // namespace sw::eval
