// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

// METHOD CARD: two faults at once
// Formula: an answer is seen where any present cause brings it about, or by itself: P = 1 - (1 -
//   leak) product over present causes of (1 - q) (noisy OR). With causes that are there or not
//   independently of each other, each pair and each cause alone is weighed by its prior and by the
//   chance of the answers.
// Source: Pearl, Probabilistic Reasoning in Intelligent Systems (1988, from memory).
// Assumptions: at most two faults; causes come independently.
// Degenerate cases: no answers: the priors. Answers that no cause brings about, and three causes
//   that are surely there: each such chance counts a millionth, so that shares still add up.
// Reference test: tests/core/diagnosis/two_faults_test.cpp.

namespace sw::diagnosis {

/// Chance of an answer while these causes are there; q of each brings it about.
[[nodiscard]] double noisyOr(double leak, std::span<const double> brings);

/// One yes/no answer that was seen or not.
struct SeenFeature {
  double leak = 0;
  std::vector<double> brings;  ///< q of each cause
  bool seen = true;
};

struct FaultSet {
  std::vector<std::size_t> causes;  ///< none, one or two
  double probability = 0;
};

/// All sets of at most two causes, the most likely first. `priors`: chance of each cause to be
/// there.
[[nodiscard]] std::vector<FaultSet> faultSets(std::span<const double> priors,
                                              std::span<const SeenFeature> features);

}  // namespace sw::diagnosis
