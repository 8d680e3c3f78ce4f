// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/knee_line.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numeric>

// The mixture is held against the plain conjugate line where the knee is out of the way, and
// against an integration of prior times likelihood over drag, slope, knee and scatter on a grid
// that shares no formula with it.

namespace sw::mechanics {
namespace {

PackPulls pulls(double pack, std::initializer_list<double> forces) {
  PackPulls pulled{millimetres(pack), {}};
  for (const double force : forces) pulled.pulls.push_back(newtons(force));
  return pulled;
}

std::vector<double> onlySlope(std::size_t cell) {
  std::vector<double> weights(kSlopeCells, 0.0);
  weights[cell] = 1.0;
  return weights;
}

KneePrior priorWith(std::vector<KneeCell> knees, std::vector<double> slopes) {
  return {.drag = newtons(5),
          .dragSpread = newtons(2),
          .slopeWeights = std::move(slopes),
          .knees = std::move(knees),
          .scatter = newtons(0.5),
          .scatterReadings = 4,
          .rebuildScatter = newtons(0)};
}

const std::vector kMeasured{pulls(1.0, {5.5, 6.0, 5.5}), pulls(0.9, {8.0, 8.5, 8.5}),
                            pulls(0.8, {13.0, 12.5, 13.5})};

TEST(KneeLine, WithOneKneeAndOneSlopeItIsTheConjugateLine) {
  constexpr std::size_t kCell = 10;
  const KneeLine line(priorWith({{millimetres(0.95), 1.0}}, onlySlope(kCell)),
                      ShimEffect::ThinnerRaises, kMeasured);
  const double slope = slopeOfCell(kCell).si();
  std::vector<measure::LineGroup> groups;
  for (const PackPulls& pack : kMeasured) {
    std::vector<double> forces;
    for (const Force force : pack.pulls) forces.push_back(force.si());
    groups.push_back(measure::groupOf(std::max(0.0, 0.00095 - pack.pack.si()), forces));
  }
  const auto plain = measure::updated(measure::beliefOf({.intercept = 5,
                                                         .interceptSpread = 2,
                                                         .slope = slope,
                                                         .slopeSpread = kSlopeCellSpread * slope,
                                                         .scatter = 0.5,
                                                         .scatterReadings = 4}),
                                      groups)
                         .belief;
  for (const double pack : {1.2, 0.95, 0.85, 0.7}) {
    const auto place = plain.at(std::max(0.0, 0.00095 - pack / 1000));
    const auto truth = line.trueForce(millimetres(pack), {});
    EXPECT_NEAR(truth.mean(), place.location, 1e-9) << pack;
    for (const double force : {6.0, 9.0, 16.0}) {
      EXPECT_NEAR(
          truth.cdf(force),
          measure::studentCdf((force - place.location) / place.scale, plain.degreesOfFreedom()),
          1e-6)
          << pack;
    }
  }
}

struct Question {
  double pack, limit;
  double below = 0;  ///< P(true force at the pack <= limit)
  double flat = 0;   ///< P(the pack leaves float)
};

struct State {
  double drag, slope, knee, scatter;
  [[nodiscard]] double force(double packMm) const {
    return drag + slope * std::max(0.0, knee - packMm / 1000);
  }
};

double logLikelihood(const State& state, const std::vector<PackPulls>& measured) {
  double sum = 0;
  for (const PackPulls& pulled : measured) {
    for (const Force force : pulled.pulls) {
      const double residual =
          (force.si() - state.force(inMillimetres(pulled.pack))) / state.scatter;
      sum += -0.5 * residual * residual - std::log(state.scatter);
    }
  }
  return sum;
}

/// Prior times likelihood summed over a grid of drag, slope, knee and scatter. Given the scatter,
/// drag and slope are normal with spreads in proportion to it, as the conjugate prior has it.
void answerByGrid(const KneePrior& prior, const std::vector<PackPulls>& measured,
                  std::vector<Question>& questions) {
  double total = 0;
  const double a = prior.scatterReadings / 2;
  const double s0 = prior.scatter.si();
  for (double logS = std::log(0.12); logS < std::log(3.0); logS += 0.05) {
    const double s = std::exp(logS);
    const double pScatter = std::pow(s * s, -a) * std::exp(-a * s0 * s0 / (s * s));
    for (const KneeCell& knee : prior.knees) {
      for (std::size_t cell = 0; cell < kSlopeCells; ++cell) {
        if (prior.slopeWeights[cell] == 0) continue;
        const double mean = slopeOfCell(cell).si();
        for (double t = -4; t <= 4; t += 0.25) {
          for (double q = -4; q <= 4; q += 0.25) {
            const State state{prior.drag.si() + t * prior.dragSpread.si() / s0 * s,
                              mean + q * kSlopeCellSpread * mean / s0 * s, knee.pack.si(), s};
            const double weight =
                knee.weight * prior.slopeWeights[cell] * pScatter *
                std::exp(logLikelihood(state, measured) - 0.5 * (t * t + q * q) + 10);
            total += weight;
            for (Question& question : questions) {
              if (state.force(question.pack) <= question.limit) question.below += weight;
              if (state.knee <= question.pack / 1000) question.flat += weight;
            }
          }
        }
      }
    }
  }
  for (Question& question : questions) {
    question.below /= total;
    question.flat /= total;
  }
}

TEST(KneeLine, AgreesWithAnIntegrationOverEverything) {
  std::vector<double> slopes(kSlopeCells, 0.0);
  slopes[9] = 0.3;
  slopes[10] = 0.5;
  slopes[11] = 0.2;
  std::vector<KneeCell> knees;
  for (double pack = 0.88; pack < 1.1; pack += 0.04) knees.push_back({millimetres(pack), 1.0});
  const auto prior = priorWith(knees, slopes);
  const std::vector measured{pulls(1.0, {5.5, 6.0}), pulls(0.9, {8.0, 8.5})};
  const KneeLine line(prior, ShimEffect::ThinnerRaises, measured);
  std::vector<Question> questions;
  for (const double pack : {0.981, 0.85, 0.8}) {
    for (const double limit : {6.5, 9.5, 11.0}) questions.push_back({pack, limit});
  }
  answerByGrid(prior, measured, questions);
  for (const Question& asked : questions) {
    const Length pack = millimetres(asked.pack);
    EXPECT_NEAR(line.trueForce(pack, {}).cdf(asked.limit), asked.below, 0.01)
        << asked.pack << " " << asked.limit;
    EXPECT_NEAR(line.flatProbability(pack), asked.flat, 0.01) << asked.pack;
  }
}

TEST(KneeLine, TheOtherLayoutIsTheMirrorImage) {
  std::vector<KneeCell> flange;
  std::vector<KneeCell> inner;
  for (double away = -0.1; away < 0.15; away += 0.02) {
    flange.push_back({millimetres(1.0 - away), 1.0});
    inner.push_back({millimetres(1.0 + away), 1.0});
  }
  const std::vector<double> slopes(kSlopeCells, 1.0 / kSlopeCells);
  std::vector<PackPulls> mirrored = kMeasured;
  for (PackPulls& pack : mirrored) pack.pack = millimetres(2.0) - pack.pack;
  const KneeLine a(priorWith(flange, slopes), ShimEffect::ThinnerRaises, kMeasured);
  const KneeLine b(priorWith(inner, slopes), ShimEffect::ThickerRaises, mirrored);
  const PredictionTerms film{.film = SealantFilm{millimetres(0.01), millimetres(0.05)},
                             .instrumentUncertainty = newtons(0.2),
                             .graduationUncertainty = newtons(0.1)};
  for (const double pack : {1.1, 0.95, 0.75}) {
    for (const auto& terms : {PredictionTerms{}, film}) {
      EXPECT_NEAR(a.trueForce(millimetres(pack), terms).cdf(10),
                  b.trueForce(millimetres(2.0 - pack), terms).cdf(10), 1e-9);
    }
  }
}

TEST(KneeLine, AFilmLowersTheForceInEitherLayout) {
  std::vector<KneeCell> knees{{millimetres(1.0), 1.0}};
  const std::vector<double> slopes(kSlopeCells, 1.0 / kSlopeCells);
  const PredictionTerms film{.film = SealantFilm{millimetres(0.02), millimetres(0.04)}};
  const KneeLine line(priorWith(knees, slopes), ShimEffect::ThinnerRaises, kMeasured);
  const double dry = line.trueForce(millimetres(0.8), {}).mean();
  const double sealed = line.trueForce(millimetres(0.8), film).mean();
  // As much as the mean film on the slope.
  EXPECT_NEAR(dry - sealed, 0.00003 * line.slope().middle, 0.1);
  const KneeLine inner(priorWith(knees, slopes), ShimEffect::ThickerRaises,
                       std::vector{pulls(1.0, {6, 6}), pulls(1.1, {10, 10})});
  EXPECT_LT(inner.trueForce(millimetres(1.1), film).mean(),
            inner.trueForce(millimetres(1.1), {}).mean());
}

TEST(KneeLine, ForceRisesWithPreloadAndProbabilityWithTheLimit) {
  std::vector<KneeCell> knees;
  for (double pack = 0.8; pack < 1.2; pack += 0.02) knees.push_back({millimetres(pack), 1.0});
  const std::vector<double> slopes(kSlopeCells, 1.0 / kSlopeCells);
  const KneeLine line(priorWith(knees, slopes), ShimEffect::ThinnerRaises, kMeasured);
  double before = 0;
  for (double pack = 1.3; pack > 0.5; pack -= 0.01) {
    const double mean = line.trueForce(millimetres(pack), {}).mean();
    EXPECT_GE(mean, before - 1e-9);
    before = mean;
  }
  double share = 0;
  for (double limit = 0; limit < 40; limit += 0.5) {
    const double p = line.trueForce(millimetres(0.75), {}).cdf(limit);
    EXPECT_GE(p, share);
    share = p;
  }
}

TEST(KneeLine, ScalingAllForcesLeavesEveryProbability) {
  // The slope cells stay where they are, so only a shift of one whole cell is an exact scaling.
  constexpr std::size_t kCell = 10;
  const double c = slopeOfCell(kCell + 1) / slopeOfCell(kCell);
  KneePrior prior = priorWith({{millimetres(1.0), 1.0}, {millimetres(0.9), 2.0}}, onlySlope(kCell));
  const KneeLine line(prior, ShimEffect::ThinnerRaises, kMeasured);
  prior.slopeWeights = onlySlope(kCell + 1);
  prior.drag = c * prior.drag;
  prior.dragSpread = c * prior.dragSpread;
  prior.scatter = c * prior.scatter;
  std::vector<PackPulls> scaled = kMeasured;
  for (PackPulls& pack : scaled) {
    for (Force& force : pack.pulls) force = c * force;
  }
  const KneeLine other(prior, ShimEffect::ThinnerRaises, scaled);
  for (const double limit : {7.0, 12.0, 15.0}) {
    EXPECT_NEAR(line.trueForce(millimetres(0.78), {}).cdf(limit),
                other.trueForce(millimetres(0.78), {}).cdf(limit * c), 1e-6);
  }
}

TEST(KneeLine, TheScalesOwnErrorWidensTheTruthAndNotWhatItShows) {
  const std::vector<double> slopes(kSlopeCells, 1.0 / kSlopeCells);
  const KneeLine line(priorWith({{millimetres(1.0), 1.0}}, slopes), ShimEffect::ThinnerRaises,
                      kMeasured);
  const auto width = [](const measure::StudentMixture& mixture) {
    return mixture.quantile(0.975) - mixture.quantile(0.025);
  };
  const PredictionTerms coarse{.instrumentUncertainty = newtons(1.0)};
  EXPECT_GT(width(line.trueForce(millimetres(0.8), coarse)),
            1.5 * width(line.trueForce(millimetres(0.8), {})));
  EXPECT_DOUBLE_EQ(width(line.shownForce(millimetres(0.8), coarse)),
                   width(line.shownForce(millimetres(0.8), {})));
}

}  // namespace
}  // namespace sw::mechanics
