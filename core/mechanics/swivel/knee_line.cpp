// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/knee_line.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace sw::mechanics {

namespace {

using measure::LineBelief;
using measure::LineGroup;
using measure::StudentMixture;

constexpr double kLeastSlope = 2000.0;  // N/m
constexpr double kSlopeRatio = 1.35;
constexpr double kWeightLeftOut = 1e-4;
constexpr int kFilmNodes = 5;

std::vector<LineGroup> groupsOf(ShimEffect effect, std::span<const PackPulls> measured) {
  std::vector<LineGroup> groups;
  for (const PackPulls& pack : measured) {
    std::vector<double> pulls;
    for (const Force pull : pack.pulls) pulls.push_back(pull.si());
    groups.push_back(measure::groupOf(raising(effect, pack.pack), pulls));
  }
  return groups;
}

/// The same groups as seen past a knee.
void pastKnee(std::span<const LineGroup> groups, double knee, std::vector<LineGroup>& out) {
  out.assign(groups.begin(), groups.end());
  for (LineGroup& group : out) group.x = std::max(0.0, group.x - knee);
}

/// What each slope cell believes before the pulls.
std::vector<LineBelief> slopeBeliefs(const KneePrior& prior) {
  std::vector<LineBelief> beliefs;
  for (std::size_t cell = 0; cell < kSlopeCells; ++cell) {
    const double slope = slopeOfCell(cell).si();
    beliefs.push_back(measure::beliefOf({.intercept = prior.drag.si(),
                                         .interceptSpread = prior.dragSpread.si(),
                                         .slope = slope,
                                         .slopeSpread = kSlopeCellSpread * slope,
                                         .scatter = prior.scatter.si(),
                                         .scatterReadings = prior.scatterReadings}));
  }
  return beliefs;
}

/// The middle and the bounds of the middle 95 % of weighted values.
KneeLine::Range rangeOf(std::vector<std::pair<double, double>> valuesAndWeights) {
  std::sort(valuesAndWeights.begin(), valuesAndWeights.end());
  double total = 0;
  for (const auto& [value, weight] : valuesAndWeights) total += weight;
  const auto at = [&](double probability) {
    double sum = 0;
    for (const auto& [value, weight] : valuesAndWeights) {
      sum += weight;
      if (sum >= probability * total) return value;
    }
    return valuesAndWeights.back().first;
  };
  return {at(0.5), at(0.025), at(0.975)};
}

}  // namespace

Force meanPull(const PackPulls& pack) {
  const Force sum = std::accumulate(pack.pulls.begin(), pack.pulls.end(), Force{});
  return sum / static_cast<double>(pack.pulls.size());
}

Stiffness slopeOfCell(std::size_t cell) {
  return Stiffness::fromSi(kLeastSlope * std::pow(kSlopeRatio, static_cast<double>(cell)));
}

KneeLine::KneeLine(const KneePrior& prior, ShimEffect effect, std::span<const PackPulls> measured)
    : m_effect(effect) {
  m_setUpRatio = std::pow(prior.rebuildScatter / prior.scatter, 2);
  const std::vector<LineGroup> groups = groupsOf(effect, measured);
  const std::vector<LineBelief> before = slopeBeliefs(prior);
  std::vector<Part> parts;
  std::vector<double> logEvidences;
  parts.reserve(prior.knees.size() * kSlopeCells);
  logEvidences.reserve(parts.capacity());
  std::vector<LineGroup> past;
  double largest = -std::numeric_limits<double>::infinity();
  for (const KneeCell& knee : prior.knees) {
    const double z0 = raising(effect, knee.pack);
    pastKnee(groups, z0, past);
    for (const LineBelief& belief : before) {
      const auto after = measure::updated(belief, past, m_setUpRatio);
      parts.push_back({knee.weight, z0, after.belief});
      logEvidences.push_back(after.logEvidence);
      largest = std::max(largest, after.logEvidence);
    }
  }
  m_slopeEvidence.assign(kSlopeCells, 0.0);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::size_t cell = i % kSlopeCells;
    parts[i].weight *= std::exp(logEvidences[i] - largest);
    m_slopeEvidence[cell] += parts[i].weight;
    parts[i].weight *= prior.slopeWeights[cell];
  }
  keepWeighty(std::move(parts));
  m_table = std::make_shared<measure::StudentTable>(m_parts.front().line.degreesOfFreedom());
}

void KneeLine::keepWeighty(std::vector<Part> parts) {
  double total = 0;
  double greatest = 0;
  for (const Part& part : parts) {
    total += part.weight;
    greatest = std::max(greatest, part.weight);
  }
  // Most weigh nothing; they need no sorting.
  const double least = kWeightLeftOut * greatest / static_cast<double>(parts.size());
  std::erase_if(parts, [least](const Part& part) { return part.weight < least; });
  std::sort(parts.begin(), parts.end(),
            [](const Part& a, const Part& b) { return a.weight > b.weight; });
  double kept = 0;
  for (const Part& part : parts) {
    if (!m_parts.empty() && kept >= (1.0 - kWeightLeftOut) * total) break;
    m_parts.push_back(part);
    kept += part.weight;
  }
  for (Part& part : m_parts) part.weight /= kept;
}

StudentMixture KneeLine::mixture(Length pack, const PredictionTerms& terms, double share,
                                 double extraVariance) const {
  const double z = raising(m_effect, pack);
  const int nodes = terms.film ? kFilmNodes : 1;
  std::vector<measure::MixturePart> parts;
  parts.reserve(m_parts.size() * static_cast<std::size_t>(nodes));
  for (int node = 0; node < nodes; ++node) {
    double film = 0;
    if (terms.film) {
      const double way = (node + 0.5) / nodes;
      film = terms.film->least.si() + way * (terms.film->most - terms.film->least).si();
    }
    for (const Part& part : m_parts) {
      auto place = part.line.at(std::max(0.0, z - film - part.knee), share + m_setUpRatio);
      place.scale = std::sqrt(place.scale * place.scale + extraVariance);
      parts.push_back({part.weight, place});
    }
  }
  return {*m_table, std::move(parts)};
}

StudentMixture KneeLine::trueForce(Length pack, const PredictionTerms& terms) const {
  const double u = std::hypot(terms.instrumentUncertainty.si(), terms.graduationUncertainty.si());
  return mixture(pack, terms, 0.0, u * u);
}

StudentMixture KneeLine::shownForce(Length pack, const PredictionTerms& terms) const {
  const double u = terms.graduationUncertainty.si();
  return mixture(pack, terms, 1.0 / terms.pulls, u * u);
}

double KneeLine::flatProbability(Length pack) const {
  const double z = raising(m_effect, pack);
  return std::accumulate(m_parts.begin(), m_parts.end(), 0.0, [z](double sum, const Part& part) {
    return part.knee >= z ? sum + part.weight : sum;
  });
}

KneeLine::Range KneeLine::knee() const {
  std::vector<std::pair<double, double>> values;
  for (const Part& part : m_parts) {
    values.emplace_back(m_effect == ShimEffect::ThinnerRaises ? -part.knee : part.knee,
                        part.weight);
  }
  return rangeOf(std::move(values));
}

KneeLine::Range KneeLine::slope() const {
  std::vector<measure::MixturePart> parts;
  for (const Part& part : m_parts) parts.push_back({part.weight, part.line.slopeAlone()});
  const StudentMixture slopes(*m_table, std::move(parts));
  return {slopes.quantile(0.5), slopes.quantile(0.025), slopes.quantile(0.975)};
}

double KneeLine::meanDrag() const {
  return std::accumulate(m_parts.begin(), m_parts.end(), 0.0, [](double sum, const Part& part) {
    return sum + part.weight * part.line.intercept;
  });
}

Force KneeLine::scatter() const {
  double variance = 0;
  for (const Part& part : m_parts) variance += part.weight * part.line.rate / part.line.shape;
  return Force::fromSi(std::sqrt(variance));
}

}  // namespace sw::mechanics
