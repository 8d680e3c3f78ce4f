// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "mechanics/swivel/knee_line.h"

// METHOD CARD: what is believed of an axle before (and beside) its own pulls
// Formula: there is no default slope. Without history every order of magnitude from 2 to 1100 N/mm
//   is as likely as any other. With the shop's own closed jobs on the same arrangement the slope of
//   the next axle is log-normal: its centre and its spread from axle to axle are themselves not
//   known, so every pair on a grid is weighed by the evidence of the jobs (empirical Bayes in the
//   full form: few jobs leave a wide belief, many a narrow one; spread has a half-normal prior of
//   0.5 in the logarithm). Drag: mean and spread of the jobs' drags, widened by sqrt(1 + 1/n),
//   never narrower than 30 % of the mean; without history half the lowest pull, with the same
//   spread. Knee: uniform over the packs and beyond them on the loose side, in ten cells between
//   any two packs measured, so that its place between them stays open; or normal about a measured
//   gap or end float, 5 % kept for a measurement that was off; or, from 3 jobs on, normal about
//   theirs.
// Source: own composition; hierarchical normal model as in the textbooks (Gelman et al., from
//   memory). The numbers 30 %, 5 %, 3 jobs: our choice.
// Assumptions: history of the same arrangement, arm and state.
// Degenerate cases: no history and no measured gap: see above; history of one pack a side tells
//   drag and scatter only.
// Reference test: tests/core/mechanics/swivel/force_prior_test.cpp.

namespace sw::mechanics {

/// One side of a closed job.
struct HistoricSide {
  std::vector<PackPulls> packs;
};

struct ShopHistory {
  std::size_t sides = 0;  ///< that told something
  std::vector<double> slopeWeights;
  Force drag, dragSpread;
  struct Knee {
    Length pack, spread;
  };
  std::optional<Knee> knee;
  double slopeLow = 0, slopeMiddle = 0, slopeHigh = 0;  ///< N/m, of the next axle, middle 95 %
};

struct ScatterWords {
  Force scatter;
  double readings = 2;
};

/// Nothing where no side has a pull.
[[nodiscard]] std::optional<ShopHistory> learnedFrom(std::span<const HistoricSide> sides,
                                                     ShimEffect effect,
                                                     const ScatterWords& scatter);

/// A measured place of the knee: the pack that just takes up the float.
struct MeasuredKnee {
  Length pack;
  Length standardUncertainty;
};

struct PriorKnowledge {
  Length thinnest, thickest;  ///< of the packs that can be made or were measured
  ShimEffect effect = ShimEffect::ThinnerRaises;
  ScatterWords scatter;
  Force rebuildScatter;
  std::vector<Length> measured;  ///< packs that were pulled: between them the knee is sought finely
  Force lowestPull;              ///< the lowest mean
  std::optional<MeasuredKnee> knee;
  const ShopHistory* history = nullptr;
};
/// What packs that were pulled add to it: their range, their places and the lowest mean.
void takePulls(std::span<const PackPulls> packs, PriorKnowledge& knowledge);
[[nodiscard]] KneePrior priorFrom(const PriorKnowledge& knowledge);

}  // namespace sw::mechanics
