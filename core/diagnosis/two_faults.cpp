// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/two_faults.h"

#include <algorithm>

namespace sw::diagnosis {

namespace {

/// Nothing is excluded altogether by what was seen: the numbers may be wrong (starting value, no
/// source).
constexpr double kLeastChance = 1e-6;

double chanceOf(std::span<const std::size_t> causes, std::span<const SeenFeature> features) {
  double chance = 1;
  for (const SeenFeature& feature : features) {
    std::vector<double> brings;
    for (const std::size_t cause : causes) brings.push_back(feature.brings[cause]);
    const double seen = noisyOr(feature.leak, brings);
    chance *= std::max(kLeastChance, feature.seen ? seen : 1 - seen);
  }
  return chance;
}

double priorOf(std::span<const std::size_t> causes, std::span<const double> priors) {
  double prior = 1;
  for (std::size_t cause = 0; cause < priors.size(); ++cause) {
    const bool there = std::find(causes.begin(), causes.end(), cause) != causes.end();
    prior *= there ? priors[cause] : std::max(kLeastChance, 1 - priors[cause]);
  }
  return prior;
}

}  // namespace

double noisyOr(double leak, std::span<const double> brings) {
  double none = 1 - leak;
  for (const double one : brings) none *= 1 - one;
  return 1 - none;
}

std::vector<FaultSet> faultSets(std::span<const double> priors,
                                std::span<const SeenFeature> features) {
  std::vector<FaultSet> sets{{{}, 0}};
  for (std::size_t one = 0; one < priors.size(); ++one) {
    sets.push_back({{one}, 0});
    for (std::size_t two = one + 1; two < priors.size(); ++two) sets.push_back({{one, two}, 0});
  }
  double sum = 0;
  for (FaultSet& set : sets) {
    set.probability = priorOf(set.causes, priors) * chanceOf(set.causes, features);
    sum += set.probability;
  }
  for (FaultSet& set : sets) set.probability /= sum;
  std::stable_sort(sets.begin(), sets.end(), [](const FaultSet& a, const FaultSet& b) {
    return a.probability > b.probability;
  });
  return sets;
}

}  // namespace sw::diagnosis
