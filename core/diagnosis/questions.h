// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "base/result.h"
#include "diagnosis/ranking.h"

// METHOD CARD: which question is worth asking before the first spanner
// Formula: value = expected minutes of the best plan now - sum over the answers of the chance of
// the
//   answer times the minutes of the best plan after it. Never below 0.
// Source: value of perfect information (Raiffa and Schlaifer 1961, from memory).
// Assumptions: those of the ranking and of the plan; the answer costs nothing.
// Degenerate cases: an answer that cannot be adds nothing.
// Reference test: tests/core/diagnosis/questions_test.cpp.

namespace sw::diagnosis {

struct QuestionValue {
  std::size_t feature = 0;
  double minutes = 0;               ///< saved on average by the answer
  std::vector<double> chances;      ///< of each answer
  std::vector<double> planMinutes;  ///< of the best plan after each
};

/// For these features, the most valuable first. `problem` is the plan's without the causes. Errors:
/// as bestPlan.
[[nodiscard]] Result<std::vector<QuestionValue>> questionValues(
    const CauseTable& table, std::span<const Evidence> evidence, const PlanProblem& problem,
    std::span<const std::size_t> features, double damping = 1);

}  // namespace sw::diagnosis
