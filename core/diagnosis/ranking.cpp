// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/ranking.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace sw::diagnosis {

namespace {

/// No evidence excludes a cause altogether: the table may be wrong (starting value, no source).
constexpr double kLeastChance = 1e-6;

std::vector<double> weightsOf(const CauseTable& table) {
  std::vector<double> weights;
  for (const Cause& cause : table.causes) weights.push_back(cause.weight);
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  for (double& weight : weights) weight /= sum;
  return weights;
}

Evidence evenly(const CauseTable& table, EvidenceKind kind, std::string key, double likelihood) {
  return {kind, std::move(key), std::vector<double>(table.causes.size(), likelihood)};
}

/// The weights times the evidence, all but one piece of it.
std::vector<double> product(std::vector<double> weights, std::span<const Evidence> evidence,
                            double damping, std::optional<std::size_t> without) {
  for (std::size_t piece = 0; piece < evidence.size(); ++piece) {
    if (piece == without) continue;
    const EvidenceKind kind = evidence[piece].kind;
    const bool damped =
        damping != 1 && (kind == EvidenceKind::Answer || kind == EvidenceKind::Trace);
    for (std::size_t cause = 0; cause < weights.size(); ++cause) {
      const double chance = std::max(kLeastChance, evidence[piece].likelihood[cause]);
      weights[cause] *= damped ? std::pow(chance, damping) : chance;
    }
  }
  return weights;
}

void bringToOne(std::vector<double>& values) {
  const double sum = std::accumulate(values.begin(), values.end(), 0.0);
  for (double& value : values) value /= sum;
}

}  // namespace

Evidence answered(const CauseTable& table, std::size_t feature, std::size_t answer) {
  const Feature& asked = table.features[feature];
  Evidence evidence{EvidenceKind::Answer, asked.key, {}, asked.answers[answer].word};
  for (const Cause& cause : table.causes) {
    evidence.likelihood.push_back(cause.answers[feature][answer]);
  }
  return evidence;
}

Evidence supported(const CauseTable& table, std::size_t feature, std::span<const double> ratios) {
  Evidence evidence{EvidenceKind::Trace, table.features[feature].key, {}};
  for (const Cause& cause : table.causes) {
    const auto& chances = cause.answers[feature];
    evidence.likelihood.push_back(
        std::inner_product(chances.begin(), chances.end(), ratios.begin(), 0.0));
  }
  return evidence;
}

Evidence nothingFound(const CauseTable& table, const std::string& key, const PlannedCheck& check) {
  Evidence evidence = evenly(table, EvidenceKind::Check, key, 1 - check.falseAlarm);
  for (const Detection& one : check.finds) evidence.likelihood[one.cause] = 1 - one.chance;
  return evidence;
}

Evidence causeFound(const CauseTable& table, const std::string& key, const PlannedCheck& check,
                    std::size_t cause) {
  Evidence evidence = evenly(table, EvidenceKind::Check, key, check.falseAlarm);
  for (const Detection& one : check.finds) {
    if (one.cause == cause) evidence.likelihood[cause] = one.chance;
  }
  return evidence;
}

Evidence repaired(const CauseTable& table, std::size_t cause) {
  Evidence evidence = evenly(table, EvidenceKind::Repair, table.causes[cause].key, 1.0);
  evidence.likelihood[cause] = kRepairFails;
  return evidence;
}

std::vector<double> probabilities(std::vector<double> weights, std::span<const Evidence> evidence,
                                  double damping) {
  auto values = product(std::move(weights), evidence, damping, std::nullopt);
  bringToOne(values);
  return values;
}

std::vector<double> probabilities(const CauseTable& table, std::span<const Evidence> evidence,
                                  double damping) {
  return probabilities(weightsOf(table), evidence, damping);
}

Ranking rank(const CauseTable& table, std::span<const Evidence> evidence, double damping) {
  Ranking ranking;
  const auto prior = weightsOf(table);
  const auto values = probabilities(table, evidence, damping);
  const auto joint = product(prior, evidence, 1, std::nullopt);
  ranking.evidenceChance = std::accumulate(joint.begin(), joint.end(), 0.0);
  ranking.surprising = ranking.evidenceChance < kSurprising;
  for (std::size_t cause = 0; cause < values.size(); ++cause) {
    ranking.causes.push_back({cause, values[cause], {}});
  }
  for (std::size_t piece = 0; piece < evidence.size(); ++piece) {
    auto without = product(prior, evidence, damping, piece);
    bringToOne(without);
    for (RankedCause& one : ranking.causes) one.shifts.push_back({piece, without[one.cause]});
  }
  std::stable_sort(
      ranking.causes.begin(), ranking.causes.end(),
      [](const RankedCause& a, const RankedCause& b) { return a.probability > b.probability; });
  return ranking;
}

}  // namespace sw::diagnosis
