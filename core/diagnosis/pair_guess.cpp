// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/pair_guess.h"

#include <string_view>
#include <vector>

namespace sw::diagnosis {

namespace {

constexpr std::string_view kNo = "no";

/// Shares of the causes, that of "other" nought.
std::vector<double> priorsOf(const CauseTable& table) {
  double sum = 0;
  for (const Cause& cause : table.causes) sum += cause.weight;
  std::vector<double> priors;
  for (const Cause& cause : table.causes) priors.push_back(cause.weight / sum);
  priors[table.other] = 0;
  return priors;
}

}  // namespace

std::optional<FaultSet> likelyPair(const CauseTable& table, std::span<const GivenAnswer> answers) {
  std::vector<SeenFeature> seen;
  for (const GivenAnswer& given : answers) {
    const auto no = table.features[given.feature].answer(kNo);
    if (!no) continue;
    SeenFeature feature{kLeak, {}, given.answer != *no};
    for (const Cause& cause : table.causes) {
      feature.brings.push_back(1 - cause.answers[given.feature][*no]);
    }
    seen.push_back(std::move(feature));
  }
  if (seen.empty()) return std::nullopt;
  for (FaultSet& set : faultSets(priorsOf(table), seen)) {
    if (set.causes.size() == 2) return std::move(set);
    if (set.causes.size() == 1) return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace sw::diagnosis
