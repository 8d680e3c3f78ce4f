// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

#include "diagnosis/cause_file.h"

// What a shop learns from its closed jobs, where the truth is known: how often the 95 % interval of
// a cause's weight holds the true one, and whether the learned table forecasts jobs better than the
// starting one, each job forecast by a table that was learned without it.
// A closed job: one cause by the true weights, every question of the table answered by its true
// chances or left open with kLeftOpen; the cause on record is the true one.

namespace sw::eval {

enum class Truth {
  AsStarted,   ///< the starting table itself
  FromBelief,  ///< drawn from what the learning takes for possible: Dirichlet, its own strengths
  Moved        ///< the starting table moved by factors, log-normal with 0.7
};

struct ShopTerms {
  Truth truth = Truth::FromBelief;
  int shops = 100;
  int jobs = 200;
  std::uint64_t seed = 20261128;
};

/// Means over the shops.
struct LearningShops {
  double held = 0;  ///< share of weights within their 95 % interval
  double learnedBrier = 0, startingBrier = 0;
  double learnedLog = 0, startingLog = 0;
  double used = 0;  ///< share of shops that use what they learned
};

[[nodiscard]] LearningShops learnInShops(const diagnosis::CauseFile& start, const ShopTerms& terms);

}  // namespace sw::eval
