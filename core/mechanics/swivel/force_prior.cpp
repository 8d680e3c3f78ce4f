// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/force_prior.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sw::mechanics {

namespace {

constexpr int kKneesBetween = 10;       // cells between two packs measured
constexpr int kKneesOutside = 8;        // cells on to the ends of the packs that can be made
constexpr int kKneesBeyond = 8;         // on the loose side, each wider than the one before
constexpr int kKneesAround = 21;        // about a measured place
constexpr double kMeasuredReach = 3.5;  // standard uncertainties
constexpr double kMeasuredTrust = 0.95;
constexpr double kLeastDragShare = 0.3;
constexpr std::size_t kSidesForKnee = 3;
constexpr double kLeastSpan = 0.0001;  // m
constexpr int kCentres = 45;
constexpr std::array kSpreads{0.08, 0.15, 0.25, 0.4, 0.6, 0.9, 1.3};
constexpr double kSpreadScale = 0.5;
constexpr int kHalvings = 40;

double normalDensity(double x, double mean, double spread) {
  const double t = (x - mean) / spread;
  return std::exp(-0.5 * t * t) / spread;
}

std::vector<double> normalized(std::vector<double> weights) {
  double sum = 0;
  for (const double w : weights) sum += w;
  for (double& w : weights) w /= sum;
  return weights;
}

/// Weights of the slope cells under a log-normal slope.
std::vector<double> logNormalWeights(double logCentre, double spread) {
  std::vector<double> weights(kSlopeCells);
  // A cell is itself spread; what is left of the spread lies between the cells.
  const double between =
      std::sqrt(std::max(spread * spread - kSlopeCellSpread * kSlopeCellSpread, 0.05 * 0.05));
  for (std::size_t i = 0; i < kSlopeCells; ++i) {
    weights[i] = normalDensity(std::log(slopeOfCell(i).si()), logCentre, between);
  }
  return normalized(std::move(weights));
}

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Slope cells of the next axle: every log-normal weighed by the evidence of the sides.
std::vector<double> nextSlope(const std::vector<std::vector<double>>& evidences) {
  const double lowest = std::log(slopeOfCell(0).si());
  const double highest = std::log(slopeOfCell(kSlopeCells - 1).si());
  struct Law {
    std::vector<double> weights;
    double logEvidence;
  };
  std::vector<Law> laws;
  double largest = -1e300;
  for (int c = 0; c < kCentres; ++c) {
    const double centre = lowest + (highest - lowest) * c / (kCentres - 1);
    for (const double spread : kSpreads) {
      Law law{logNormalWeights(centre, spread), -0.5 * std::pow(spread / kSpreadScale, 2)};
      for (const auto& evidence : evidences) {
        law.logEvidence += std::log(std::max(dot(law.weights, evidence), 1e-300));
      }
      largest = std::max(largest, law.logEvidence);
      laws.push_back(std::move(law));
    }
  }
  std::vector<double> weights(kSlopeCells, 0.0);
  for (const Law& law : laws) {
    const double share = std::exp(law.logEvidence - largest);
    for (std::size_t i = 0; i < kSlopeCells; ++i) weights[i] += share * law.weights[i];
  }
  return normalized(std::move(weights));
}

struct MeanAndSpread {
  double mean = 0;
  double spread = 0;
};

/// Mean and the spread of the next one.
MeanAndSpread nextOf(const std::vector<double>& values, double leastShare) {
  MeanAndSpread next;
  for (const double v : values) next.mean += v;
  const auto n = static_cast<double>(values.size());
  next.mean /= n;
  double squares = 0;
  for (const double v : values) squares += (v - next.mean) * (v - next.mean);
  const double sample = values.size() > 1 ? std::sqrt(squares / (n - 1.0)) : 0.0;
  const double floor = leastShare * std::abs(next.mean) * (values.size() > 1 ? 1.0 : 2.0);
  next.spread = std::max(sample * std::sqrt(1.0 + 1.0 / n), floor);
  return next;
}

/// Of the mixture of cells, each as wide as it is.
double slopeQuantile(const std::vector<double>& weights, double probability) {
  double low = 0.0;
  double high = 2.0 * slopeOfCell(kSlopeCells - 1).si();
  for (int step = 0; step < kHalvings; ++step) {
    const double slope = 0.5 * (low + high);
    double below = 0;
    for (std::size_t i = 0; i < kSlopeCells; ++i) {
      const double mean = slopeOfCell(i).si();
      below += weights[i] * measure::normalCdf((slope - mean) / (kSlopeCellSpread * mean));
    }
    (below < probability ? low : high) = slope;
  }
  return 0.5 * (low + high);
}

PriorKnowledge knowledgeOf(const HistoricSide& side, ShimEffect effect,
                           const ScatterWords& scatter) {
  PriorKnowledge knowledge;
  knowledge.thinnest = knowledge.thickest = side.packs.front().pack;
  knowledge.effect = effect;
  knowledge.scatter = scatter;
  takePulls(side.packs, knowledge);
  return knowledge;
}

/// Cells of equal density along the raising direction: each stands for the stretch around it.
class KneeStretches {
 public:
  explicit KneeStretches(ShimEffect effect) : m_thinner(effect == ShimEffect::ThinnerRaises) {}
  void add(double from, double to, int cells) {
    const double width = (to - from) / cells;
    for (int i = 0; width > 0 && i < cells; ++i) {
      const double z = from + (i + 0.5) * width;
      m_cells.push_back({Length::fromSi(m_thinner ? -z : z), width});
    }
  }
  std::vector<KneeCell> take() { return std::move(m_cells); }

 private:
  bool m_thinner;
  std::vector<KneeCell> m_cells;
};

/// Fine between the packs that were measured, coarse towards the tightest, ever wider beyond the
/// loosest.
std::vector<KneeCell> uniformKnees(const PriorKnowledge& knowledge) {
  KneeStretches stretches(knowledge.effect);
  double loosest = raising(knowledge.effect, knowledge.thinnest);
  double tightest = raising(knowledge.effect, knowledge.thickest);
  if (loosest > tightest) std::swap(loosest, tightest);
  const double span = std::max(tightest - loosest, kLeastSpan);
  std::vector<double> bounds{loosest, loosest + span};
  for (const Length pack : knowledge.measured) bounds.push_back(raising(knowledge.effect, pack));
  std::sort(bounds.begin(), bounds.end());
  const bool any = !knowledge.measured.empty();
  for (std::size_t i = 0; i + 1 < bounds.size(); ++i) {
    const bool between = any && i > 0 && i + 2 < bounds.size();
    stretches.add(bounds[i], bounds[i + 1], between || !any ? kKneesBetween : kKneesOutside);
  }
  double from = bounds.front();
  double away = span / kKneesBetween;
  for (int i = 0; i < kKneesBeyond; ++i) {
    stretches.add(from - away, from, 1);
    from -= away;
    away *= 1.7;
  }
  return stretches.take();
}

std::vector<KneeCell> kneesAround(Length pack, Length spread, double trust,
                                  const PriorKnowledge& knowledge) {
  std::vector<KneeCell> cells;
  double sum = 0;
  for (int i = 0; i < kKneesAround; ++i) {
    const double t = kMeasuredReach * (2.0 * i / (kKneesAround - 1) - 1.0);
    cells.push_back({Length::fromSi(pack.si() + t * spread.si()), std::exp(-0.5 * t * t)});
    sum += cells.back().weight;
  }
  for (KneeCell& cell : cells) cell.weight *= trust / sum;
  const auto elsewhere = uniformKnees(knowledge);
  double width = 0;
  for (const KneeCell& cell : elsewhere) width += cell.weight;
  for (const KneeCell& cell : elsewhere) {
    cells.push_back({cell.pack, cell.weight * (1.0 - trust) / width});
  }
  return cells;
}

}  // namespace

void takePulls(std::span<const PackPulls> packs, PriorKnowledge& knowledge) {
  for (const PackPulls& pulls : packs) {
    knowledge.thinnest = std::min(knowledge.thinnest, pulls.pack);
    knowledge.thickest = std::max(knowledge.thickest, pulls.pack);
    const Force mean = meanPull(pulls);
    const bool first = knowledge.measured.empty();
    knowledge.lowestPull = first ? mean : std::min(knowledge.lowestPull, mean);
    knowledge.measured.push_back(pulls.pack);
  }
}

KneePrior priorFrom(const PriorKnowledge& knowledge) {
  KneePrior prior;
  prior.scatter = knowledge.scatter.scatter;
  prior.scatterReadings = knowledge.scatter.readings;
  prior.rebuildScatter = knowledge.rebuildScatter;
  const double least = prior.scatter.si();
  prior.drag = 0.5 * knowledge.lowestPull;
  prior.dragSpread = Force::fromSi(std::max(prior.drag.si(), least));
  prior.slopeWeights.assign(kSlopeCells, 1.0 / kSlopeCells);
  prior.knees = uniformKnees(knowledge);
  if (const ShopHistory* history = knowledge.history) {
    prior.slopeWeights = history->slopeWeights;
    prior.drag = history->drag;
    prior.dragSpread = Force::fromSi(std::max(history->dragSpread.si(), least));
    if (history->knee) {
      prior.knees =
          kneesAround(history->knee->pack, history->knee->spread, kMeasuredTrust, knowledge);
    }
  }
  if (knowledge.knee) {
    prior.knees = kneesAround(knowledge.knee->pack, knowledge.knee->standardUncertainty,
                              kMeasuredTrust, knowledge);
  }
  return prior;
}

std::optional<ShopHistory> learnedFrom(std::span<const HistoricSide> sides, ShimEffect effect,
                                       const ScatterWords& scatter) {
  std::vector<std::vector<double>> evidences;
  std::vector<double> drags;
  std::vector<double> knees;
  for (const HistoricSide& side : sides) {
    if (side.packs.empty()) continue;
    const KneeLine line(priorFrom(knowledgeOf(side, effect, scatter)), effect, side.packs);
    drags.push_back(line.meanDrag());
    if (side.packs.size() < 2) continue;
    evidences.push_back(line.slopeEvidence());
    knees.push_back(line.knee().middle);
  }
  if (drags.empty()) return std::nullopt;
  ShopHistory history;
  history.sides = evidences.size();
  history.slopeWeights = nextSlope(evidences);
  const MeanAndSpread drag = nextOf(drags, kLeastDragShare);
  history.drag = Force::fromSi(drag.mean);
  history.dragSpread = Force::fromSi(drag.spread);
  if (knees.size() >= kSidesForKnee) {
    const MeanAndSpread knee = nextOf(knees, 0.0);
    history.knee = {Length::fromSi(knee.mean),
                    Length::fromSi(std::max(knee.spread, kLeastSpan / 4))};
  }
  history.slopeLow = slopeQuantile(history.slopeWeights, 0.025);
  history.slopeMiddle = slopeQuantile(history.slopeWeights, 0.5);
  history.slopeHigh = slopeQuantile(history.slopeWeights, 0.975);
  return history;
}

}  // namespace sw::mechanics
