// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "base/result.h"

// METHOD CARD: the order of checks that costs the fewest minutes
// Formula: V(done, s) = min( K R(done), min over a check i not done and a state t it can be made in
//   of R(done)(T[s][t] + c_i) + (R(done) - m_i(done)) f_i g_i + V(done + i, t) ). R = chance that
//   the fault is not found yet; T = minutes from one set-up state to another; c = minutes of the
//   check; m = the part of R that the check looks for; f, g = chance and minutes of a false alarm;
//   K = what giving up costs. A check that looks for cause j finds it with its detection d; what it
//   misses stays in R. The repair of what is found costs the same in every order and is not
//   counted.
// Source: dynamic programming over sets (Bellman 1962, Held and Karp 1962, from memory) on the
//   troubleshooting model of Heckerman, Breese and Rommelse, Comm. ACM 38 (1995) 49-57 (from
//   memory).
// Assumptions: one fault; a check that finds it ends the search; looks are independent given the
//   fault; minutes are what a pair of hands needs, not what is billed.
// Valid range: up to kMostPlanned checks beside those that are forced; 2^n k numbers are kept.
// When not to use: two faults at once; plan anew after every repair.
// Degenerate cases: no check pays: the plan is empty and costs K. A check that cannot find anything
//   is never taken, one that costs nothing is taken first.
// Reference test: tests/core/diagnosis/check_plan_test.cpp.

namespace sw::diagnosis {

inline constexpr std::size_t kMostPlanned = 20;

/// Minutes from each set-up state (row) to each (column).
struct SetupMoves {
  std::size_t states = 1;
  std::vector<double> minutes{0.0};  ///< states * states, row by row

  [[nodiscard]] double operator()(std::size_t from, std::size_t to) const {
    return minutes[from * states + to];
  }
};

/// A set-up state is opened from its parent and closed back to it; the root has no parent.
struct SetupState {
  std::optional<std::size_t> parent;
  double open = 0;   ///< minutes
  double close = 0;  ///< minutes
};
/// Everything of one state that the other lacks is closed, and the other way round opened.
[[nodiscard]] SetupMoves movesBetween(std::span<const SetupState> states);

struct Detection {
  std::size_t cause = 0;
  double chance = 1;  ///< of finding it where it is, 0..1
};

struct PlannedCheck {
  std::vector<Detection> finds;
  std::vector<std::size_t> setups{0};  ///< states it can be made in
  double minutes = 0;
  double falseAlarm = 0;         ///< chance where none of its causes is there, 0..1
  double falseAlarmMinutes = 0;  ///< of the needless repair and the drive after it
  /// Checks that must be made before it; one that is not planned at all does not hinder.
  std::vector<std::size_t> after = {};
};

struct PlanProblem {
  std::vector<double> causes;  ///< weights, not negative; shares of their sum
  std::vector<PlannedCheck> checks;
  SetupMoves moves;
  std::size_t start = 0;           ///< the set-up state the vehicle is in
  double fallback = 0;             ///< minutes that giving up costs
  std::vector<std::size_t> first;  ///< done before anything else, in this order
};

struct PlanStep {
  std::size_t check = 0;
  std::size_t setup = 0;   ///< the state it is made in
  double notFound = 1;     ///< chance that the fault is still looked for when it begins
  double moveMinutes = 0;  ///< of the set-up before it
};

/// The best plan that begins with one check.
struct Beginning {
  std::size_t check = 0;
  double minutes = 0;
};

struct CheckPlan {
  std::vector<PlanStep> steps;        ///< the forced ones first
  double minutes = 0;                 ///< expected, giving up included
  double notFound = 1;                ///< chance that the fault is not found by it
  std::vector<Beginning> beginnings;  ///< each check that may come next, the best first
};

/// Errors: OutOfRange "plan.too_many_checks" (details checks, most), "plan.no_weights";
/// InvalidInput "plan.bad_check" (detail check: its number from 1): a chance outside 0 to 1,
/// minutes below 0 or not finite, a state or a cause that is not there.
[[nodiscard]] Result<CheckPlan> bestPlan(const PlanProblem& problem);

/// Expected minutes of the checks in this order, each in the state that serves best, and of giving
/// up after them; the forced ones are not added. The problem must be one that bestPlan takes.
[[nodiscard]] double minutesOf(const PlanProblem& problem, std::span<const std::size_t> order);

}  // namespace sw::diagnosis
