// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/scores.h"

#include <algorithm>
#include <cmath>

namespace sw::diagnosis {

namespace {

constexpr double kLeastChance = 1e-12;  // keeps a forecast of 0 from a score without end

void addTo(Scores& scores, const Forecast& forecast) {
  const double share = 1.0 / static_cast<double>(forecast.truth.size());
  std::vector<double> outcome(forecast.probabilities.size(), 0.0);
  for (const std::size_t cause : forecast.truth) {
    outcome[cause] += share;
    scores.log -= share * std::log(std::max(kLeastChance, forecast.probabilities[cause]));
  }
  for (std::size_t cause = 0; cause < outcome.size(); ++cause) {
    const double apart = forecast.probabilities[cause] - outcome[cause];
    scores.brier += apart * apart;
  }
  const auto leader =
      std::max_element(forecast.probabilities.begin(), forecast.probabilities.end());
  const auto first = static_cast<std::size_t>(leader - forecast.probabilities.begin());
  if (outcome[first] > 0) scores.firstRight += 1;
}

}  // namespace

Scores scoresOf(std::span<const Forecast> forecasts) {
  Scores scores;
  scores.jobs = forecasts.size();
  if (forecasts.empty()) return scores;
  for (const Forecast& forecast : forecasts) addTo(scores, forecast);
  const auto jobs = static_cast<double>(forecasts.size());
  scores.brier /= jobs;
  scores.log /= jobs;
  scores.firstRight /= jobs;
  return scores;
}

}  // namespace sw::diagnosis
