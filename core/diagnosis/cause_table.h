// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/check_plan.h"

// What the ranking and the plan start from: causes, what is seen where they are, checks that find
// them and the set-up each needs. All of it is data: resources/causes/<id>.json, and a shop's own
// numbers over it.

namespace sw::diagnosis {

struct FeatureAnswer {
  std::string word;  ///< "yes"
  std::string text;  ///< as it is offered
};

/// Something about the shake that can be told: a question with answers that exclude each other.
struct Feature {
  std::string key;
  std::string ask;
  std::vector<FeatureAnswer> answers;

  [[nodiscard]] std::optional<std::size_t> answer(std::string_view word) const;
};

struct Cause {
  std::string key;
  std::string name;
  double weight = 0;  ///< jobs of a hundred
  /// Chance of each answer where this is the cause; a row a feature, each row sums to 1.
  std::vector<std::vector<double>> answers;
};

struct CauseTable {
  std::vector<Feature> features;
  std::vector<Cause> causes;
  std::size_t other = 0;  ///< the cause that stands for all that are not named

  [[nodiscard]] std::optional<std::size_t> feature(std::string_view key) const;
  [[nodiscard]] std::optional<std::size_t> cause(std::string_view key) const;
};

}  // namespace sw::diagnosis
