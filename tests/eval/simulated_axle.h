// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <random>
#include <vector>

#include "mechanics/swivel/pack_advice.h"

// An axle side that exists only here: what is true of it, and what a scale shows of it.

namespace sw::eval {

struct SimulatedSide {
  mechanics::ShimEffect effect = mechanics::ShimEffect::ThinnerRaises;
  double drag = 0;       ///< N
  double slope = 0;      ///< N/mm
  double knee = 0;       ///< mm of pack
  double power = 1;      ///< of the force over the way past the knee; 1 = straight
  double curveAt = 0.1;  ///< mm past the knee, where the curve has the straight line's force

  /// The true force of a pack (mm), with a film (mm) lifting the cap.
  [[nodiscard]] double force(double pack, double film = 0) const;
};

struct SimulatedScale {
  double graduation = 0;        ///< N
  double permissibleError = 0;  ///< N
  double error = 0;             ///< N, the one it has
  double scatter = 0;           ///< N, of the hand that pulls

  /// One pull, read to the nearest mark.
  [[nodiscard]] double pull(double force, std::mt19937_64& random) const;
};

[[nodiscard]] mechanics::PackPulls pulledOn(const SimulatedSide& side, const SimulatedScale& scale,
                                            double pack, int pulls, std::mt19937_64& random);

}  // namespace sw::eval
