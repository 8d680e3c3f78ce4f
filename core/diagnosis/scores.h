// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

// METHOD CARD: how good forecasts of the cause were
// Formula: Brier = mean over jobs of the sum over causes of (p - outcome)^2, from 0 to 2 (some
//   programs print half of it); log score = mean of -ln p(true cause), natural logarithm. Less is
//   better in both. A job with two causes has an outcome of a half in each, and half of each -ln p.
// Source: Brier, Monthly Weather Review 78 (1950) 1-3; Good, J. R. Stat. Soc. B 14 (1952) 107-114
//   (both from memory).
// Degenerate cases: no forecasts: zero jobs, scores 0; the uniform guess over n causes scores
//   1 - 1/n and ln n.
// Reference test: tests/core/diagnosis/scores_test.cpp.

namespace sw::diagnosis {

struct Forecast {
  std::vector<double> probabilities;
  std::vector<std::size_t> truth;  ///< one cause, or several that were there together
};

struct Scores {
  std::size_t jobs = 0;
  double brier = 0;
  double log = 0;
  double firstRight = 0;  ///< share of jobs whose cause led

  /// Better in both.
  [[nodiscard]] bool better(const Scores& other) const {
    return jobs > 0 && brier < other.brier && log < other.log;
  }
};

[[nodiscard]] Scores scoresOf(std::span<const Forecast> forecasts);

}  // namespace sw::diagnosis
