// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "diagnosis/cause_table.h"

// A table of sixteen causes and fifteen checks with invented numbers, and a generator of random
// problems, for which optimal costs are known from enumeration outside of this program.

namespace sw::diagnosis::testing {

/// Row of the table: weight; chance of yes for S B P L H T U W; set-up; minutes; detection.
struct InventedRow {
  const char* key;
  double weight;
  std::array<double, 8> yes;
  char setup;
  double minutes;
  double detection;
};
inline constexpr std::string_view kFeatureLetters = "SBPLHTUW";
inline constexpr std::string_view kSetupLetters = "GJWBKA";

inline const std::vector<InventedRow>& inventedRows() {
  static const std::vector<InventedRow> rows{
      {"unbalance", 20, {.90, .03, .05, .95, .10, .30, .03, .05}, 'B', 12, .95},
      {"tyre", 10, {.85, .05, .10, .95, .10, .40, .20, .05}, 'J', 8, .85},
      {"disc", 9, {.08, .95, .05, .90, .05, .25, .10, .02}, 'W', 20, .90},
      {"bearing", 6, {.45, .15, .35, .40, .30, .25, .10, .40}, 'J', 4, .85},
      {"rod", 8, {.40, .15, .60, .25, .50, .10, .05, .70}, 'G', 6, .85},
      {"bush", 7, {.35, .35, .55, .20, .45, .30, .20, .45}, 'G', 8, .70},
      {"panhard", 5, {.35, .10, .60, .20, .50, .25, .05, .65}, 'G', 4, .85},
      {"swivel_wear", 5, {.40, .15, .65, .20, .60, .10, .05, .40}, 'J', 5, .75},
      {"swivel_preload", 7, {.40, .12, .75, .20, .75, .08, .04, .25}, 'K', 10, .90},
      {"damper", 6, {.35, .12, .80, .15, .65, .05, .03, .15}, 'G', 10, .80},
      {"box", 2, {.30, .10, .45, .15, .40, .05, .05, .90}, 'G', 5, .80},
      {"caster", 2, {.45, .10, .55, .20, .50, .10, .35, .50}, 'A', 20, .85},
      {"toe", 3, {.35, .10, .30, .25, .30, .05, .15, .55}, 'A', 8, .90},
      {"fasteners", 2, {.60, .30, .30, .70, .15, .30, .10, .40}, 'G', 3, .98},
      {"propshaft", 4, {.75, .05, .05, .95, .05, .90, .02, .02}, 'G', 8, .75},
      {"other", 4, {.30, .15, .30, .40, .30, .30, .15, .30}, 'G', 0, 0}};
  return rows;
}

inline CauseTable inventedTable() {
  CauseTable table;
  for (const char letter : kFeatureLetters) {
    table.features.push_back({std::string(1, letter), "", {{"yes", "yes"}, {"no", "no"}}});
  }
  for (const InventedRow& row : inventedRows()) {
    Cause cause{row.key, row.key, row.weight, {}};
    for (const double yes : row.yes) cause.answers.push_back({yes, 1 - yes});
    table.causes.push_back(std::move(cause));
  }
  table.other = table.causes.size() - 1;
  return table;
}

/// Ground; stands under the axle; front wheels off; wheels at the balancer; rods off; alignment.
inline std::vector<SetupState> inventedSetups() {
  return {{std::nullopt, 0, 0}, {0, 10, 5}, {1, 8, 8}, {2, 10, 5}, {1, 12, 12}, {0, 10, 2}};
}

/// Checks of the table for these probabilities, giving up at `fallback`.
inline PlanProblem inventedProblem(std::vector<double> causes, double fallback) {
  PlanProblem problem;
  problem.causes = std::move(causes);
  problem.moves = movesBetween(inventedSetups());
  problem.fallback = fallback;
  const auto& rows = inventedRows();
  for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
    problem.checks.push_back(
        {{{i, rows[i].detection}}, {kSetupLetters.find(rows[i].setup)}, rows[i].minutes, 0, 0});
  }
  return problem;
}

/// A random problem by a linear congruential generator: n weights, costs, detections, set-ups.
inline PlanProblem randomProblem(std::size_t n, std::uint64_t seed, double fallback = 200) {
  std::uint64_t x = seed;
  const auto draw = [&x] {
    x = (1103515245 * x + 12345) % 2147483648U;
    return static_cast<double>(x) / 2147483648.0;
  };
  PlanProblem problem;
  problem.moves = movesBetween(inventedSetups());
  problem.fallback = fallback;
  double sum = 0;
  for (std::size_t i = 0; i < n; ++i) sum += problem.causes.emplace_back(draw());
  for (double& weight : problem.causes) weight *= 0.95 / sum;
  problem.causes.push_back(0.05);
  problem.checks.resize(n);
  for (auto& check : problem.checks) check.minutes = 2 + static_cast<int>(28 * draw());
  for (std::size_t i = 0; i < n; ++i) {
    problem.checks[i].finds = {{i, 0.6 + 0.1 * static_cast<int>(5 * draw())}};
  }
  for (auto& check : problem.checks) check.setups = {static_cast<std::size_t>(6 * draw())};
  return problem;
}

}  // namespace sw::diagnosis::testing
