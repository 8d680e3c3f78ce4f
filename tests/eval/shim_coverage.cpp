// SPDX-License-Identifier: GPL-3.0-or-later
#include "shim_coverage.h"

#include <array>
#include <cmath>

#include "measure/type_b.h"
#include "simulated_axle.h"

namespace sw::eval {

namespace {

using mechanics::KneePrior;
using mechanics::ShimEffect;

constexpr double kTightest = 0.5;  // mm, packs from here
constexpr double kLoosest = 1.2;   // to here
constexpr double kGraduation = 0.1;
constexpr double kScatter = 0.5;
constexpr double kScatterReadings = 8;
constexpr double kInstrument = 0.15;
constexpr double kFilmLeast = 0.01;
constexpr double kFilmMost = 0.05;
constexpr int kPulls = 5;
constexpr int kKnees = 40;
constexpr double kKneeTight = 0.75;
constexpr double kKneeLoose = 1.15;

/// Slopes about 20 to 130 N/mm, the knee anywhere over more than half of the packs.
KneePrior belief() {
  KneePrior prior;
  prior.drag = newtons(5);
  prior.dragSpread = newtons(1.2);
  prior.scatter = newtons(kScatter);
  prior.scatterReadings = kScatterReadings;
  prior.slopeWeights.assign(mechanics::kSlopeCells, 0.0);
  for (std::size_t cell = 8; cell <= 14; ++cell) prior.slopeWeights[cell] = 1.0 / 7.0;
  const double width = (kKneeLoose - kKneeTight) / kKnees;
  for (int i = 0; i < kKnees; ++i) {
    prior.knees.push_back({millimetres(kKneeTight + (i + 0.5) * width), 1.0});
  }
  return prior;
}

struct Axle {
  SimulatedSide side;
  SimulatedScale scale;
};

/// Drawn from the belief: given the scatter, the spreads go with it.
Axle drawAxle(Flaw flaw, std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> uniform;
  Axle axle;
  do {
    std::gamma_distribution<double> gamma(kScatterReadings / 2, 1.0);
    axle.scale.scatter = std::sqrt(kScatterReadings / 2 * kScatter * kScatter / gamma(random));
    const double ratio = axle.scale.scatter / kScatter;
    const double mean = mechanics::slopeOfCell(8 + random() % 7).si() / 1000;
    axle.side.drag = 5 + 1.2 * ratio * normal(random);
    axle.side.slope = mean * (1 + mechanics::kSlopeCellSpread * ratio * normal(random));
  } while (axle.side.drag < 0 || axle.side.slope <= 0);
  axle.side.knee = kKneeTight + (kKneeLoose - kKneeTight) * uniform(random);
  if (flaw == Flaw::Power) axle.side.power = 10.0 / 9.0;
  axle.scale.graduation = kGraduation;
  axle.scale.error = kInstrument * normal(random);
  return axle;
}

std::vector<double> packsOf(bool thick, std::mt19937_64& random) {
  std::uniform_real_distribution<double> uniform;
  if (thick) return {kLoosest, kLoosest - (0.5 + 0.3 * uniform(random)) * (kLoosest - kTightest)};
  std::vector<double> packs{1.1, 1.05 - 0.1 * uniform(random)};
  packs.push_back(packs.back() - 0.05 - 0.1 * uniform(random));
  if (random() % 2 == 0) packs.push_back(packs.back() - 0.05);
  return packs;
}

}  // namespace

Coverage simulateCoverage(int axles, Flaw flaw, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> uniform;
  const KneePrior prior = belief();
  Coverage coverage;
  for (int i = 0; i < axles; ++i) {
    const Axle axle = drawAxle(flaw, random);
    const bool thick = i % 2 == 0;
    const bool film = i % 4 >= 2;
    std::vector<mechanics::PackPulls> measured;
    for (const double pack : packsOf(thick, random)) {
      measured.push_back(pulledOn(axle.side, axle.scale, pack, kPulls, random));
    }
    if (flaw == Flaw::Misread) {
      measured.back().pulls.front() = measured.back().pulls.front() + newtons(3);
    }
    const mechanics::KneeLine line(prior, ShimEffect::ThinnerRaises, measured);
    mechanics::PredictionTerms terms;
    terms.instrumentUncertainty = newtons(kInstrument);
    terms.graduationUncertainty = newtons(measure::graduationUncertainty(kGraduation));
    if (film) terms.film = {millimetres(kFilmLeast), millimetres(kFilmMost)};
    const double pack = kTightest + (kLoosest - kTightest) * uniform(random);
    const double thickness = film ? kFilmLeast + (kFilmMost - kFilmLeast) * uniform(random) : 0.0;
    const double truth = axle.side.force(pack, thickness);
    const double share = line.trueForce(millimetres(pack), terms).cdf(truth);
    const bool held = share >= 0.025 && share <= 0.975;
    ++coverage.axles;
    coverage.held += held ? 1 : 0;
    coverage.thick += thick ? 1 : 0;
    coverage.thickHeld += thick && held ? 1 : 0;
    coverage.film += film ? 1 : 0;
    coverage.filmHeld += film && held ? 1 : 0;
  }
  return coverage;
}

}  // namespace sw::eval
