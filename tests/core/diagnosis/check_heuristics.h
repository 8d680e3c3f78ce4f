// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>
#include <span>
#include <string_view>
#include <vector>

#include "diagnosis/cause_file.h"
#include "diagnosis/check_plan.h"

// Rules of thumb that the plan is raced against; none of them is shipped.

namespace sw::diagnosis::testing {

enum class Rule {
  MostProbable,     ///< p d: what is most likely to find it
  PerMinute,        ///< p d / c, without a thought of set-ups
  PerMinuteThere,   ///< p d / (c + move)
  BlockOfOneSetUp,  ///< (sum of p d) / (move + sum of c) over the best members of one set-up
};
inline constexpr std::array kAllRules{Rule::MostProbable, Rule::PerMinute, Rule::PerMinuteThere,
                                      Rule::BlockOfOneSetUp};

/// Works checks off, keeps what is left of each cause and where the vehicle stands.
class Hunt {
 public:
  explicit Hunt(const PlanProblem& problem)
      : m_problem(problem),
        m_left(problem.causes),
        m_state(problem.start),
        m_done(problem.checks.size(), 0) {
    for (const std::size_t check : problem.first) make(check);
    for (const PlannedCheck& check : problem.checks) m_useful.push_back(finds(check) > 0 ? 1 : 0);
  }

  [[nodiscard]] const std::vector<std::size_t>& order() const { return m_order; }

  void make(std::size_t check) {
    m_order.push_back(check);
    m_done[check] = 1;
    m_state = nearest(m_problem.checks[check]);
    take(m_left, m_problem.checks[check]);
  }

  /// Not made yet, of some use, and everything that must come before it was made.
  [[nodiscard]] bool open(std::size_t check) const {
    const auto& before = m_problem.checks[check].after;
    return m_done[check] == 0 && m_useful[check] != 0 &&
           std::all_of(before.begin(), before.end(),
                       [this](std::size_t one) { return m_done[one] != 0 || m_useful[one] == 0; });
  }

  /// What the rule would do now; nothing where nothing is left.
  [[nodiscard]] std::vector<std::size_t> next(Rule rule) const {
    if (rule == Rule::BlockOfOneSetUp) return bestBlock();
    std::vector<std::size_t> best;
    double most = 0;
    for (std::size_t check = 0; check < m_done.size(); ++check) {
      if (!open(check)) continue;
      const double worth = worthOf(rule, m_problem.checks[check]);
      if (worth <= most * (1 + kTie)) continue;
      most = worth;
      best = {check};
    }
    return best;
  }

 private:
  static constexpr double kTie = 1e-9;      // equal but for rounding: the first
  static constexpr double kNoTime = 1e-12;  // keeps what costs nothing from a division by zero

  static double findsIn(const std::vector<double>& left, const PlannedCheck& check) {
    double sum = 0;
    for (const Detection& one : check.finds) sum += left[one.cause] * one.chance;
    return sum;
  }
  static void take(std::vector<double>& left, const PlannedCheck& check) {
    for (const Detection& one : check.finds) left[one.cause] *= 1 - one.chance;
  }
  [[nodiscard]] double finds(const PlannedCheck& check) const { return findsIn(m_left, check); }

  [[nodiscard]] std::size_t nearest(const PlannedCheck& check) const {
    return *std::min_element(check.setups.begin(), check.setups.end(),
                             [this](std::size_t a, std::size_t b) {
                               return m_problem.moves(m_state, a) < m_problem.moves(m_state, b);
                             });
  }

  [[nodiscard]] double worthOf(Rule rule, const PlannedCheck& check) const {
    if (rule == Rule::MostProbable) return finds(check);
    const double move =
        rule == Rule::PerMinuteThere ? m_problem.moves(m_state, nearest(check)) : 0.0;
    return finds(check) / std::max(kNoTime, check.minutes + move);
  }

  [[nodiscard]] std::vector<std::size_t> membersOf(std::size_t state) const {
    std::vector<std::size_t> members;
    for (std::size_t check = 0; check < m_done.size(); ++check) {
      const auto& setups = m_problem.checks[check].setups;
      const bool here = std::find(setups.begin(), setups.end(), state) != setups.end();
      if (here && open(check)) members.push_back(check);
    }
    std::stable_sort(members.begin(), members.end(), [this](std::size_t a, std::size_t b) {
      return worthOf(Rule::PerMinute, m_problem.checks[a]) >
             worthOf(Rule::PerMinute, m_problem.checks[b]);
    });
    return members;
  }

  [[nodiscard]] std::vector<std::size_t> bestBlock() const {
    std::vector<std::size_t> best;
    double most = 0;
    for (std::size_t state = 0; state < m_problem.moves.states; ++state) {
      std::vector<std::size_t> block;
      auto left = m_left;
      double found = 0, minutes = m_problem.moves(m_state, state);
      for (const std::size_t check : membersOf(state)) {
        block.push_back(check);
        found += findsIn(left, m_problem.checks[check]);
        minutes += m_problem.checks[check].minutes;
        take(left, m_problem.checks[check]);
        const double worth = found / std::max(kNoTime, minutes);
        if (worth <= most * (1 + kTie)) continue;
        most = worth;
        best = block;
      }
    }
    return best;
  }

  const PlanProblem& m_problem;
  std::vector<double> m_left;
  std::size_t m_state;
  std::vector<char> m_done;
  std::vector<char> m_useful = {};
  std::vector<std::size_t> m_order = {};
};

/// All checks in the order of the rule, the forced ones first.
inline std::vector<std::size_t> orderBy(const PlanProblem& problem, Rule rule) {
  Hunt hunt(problem);
  for (auto next = hunt.next(rule); !next.empty(); next = hunt.next(rule)) {
    for (const std::size_t check : next) hunt.make(check);
  }
  return hunt.order();
}

struct Prefix {
  std::vector<std::size_t> order;
  double minutes = 0;
};

/// Where it is best to stop in this order; what is forced is never left out.
inline Prefix bestPrefix(const PlanProblem& problem, std::span<const std::size_t> order) {
  Prefix best;
  for (std::size_t made = problem.first.size(); made <= order.size(); ++made) {
    const auto part = order.first(made);
    const double minutes = minutesOf(problem, part);
    if (made > problem.first.size() && minutes >= best.minutes) continue;
    best = {{part.begin(), part.end()}, minutes};
  }
  return best;
}

/// The order that is preached: fasteners, tyres and balance, bushes, play, swivel, then the rest;
/// without what this problem cannot do.
inline std::vector<std::size_t> bulletinOrder(const CauseFile& file, const PlanProblem& problem) {
  constexpr auto kOrder = std::to_array<std::string_view>(
      {"walk_round",    "tyres_and_rims",  "tyre_runout", "balance",      "swap_wheels",
       "arm_bushes",    "joints",          "panhard",     "steering_box", "rock_wheels",
       "swivel_pull",   "damper",          "discs",       "hub_faces",    "spin_wheels",
       "spring_clamps", "shock_absorbers", "propshaft",   "toe",          "caster",
       "swap_wheels"});
  Hunt hunt(problem);
  const auto balance = file.check("balance");
  const bool balancer = balance && !problem.checks[*balance].finds.empty();
  for (std::size_t place = 0; place < kOrder.size(); ++place) {
    // Who has a balancer swaps wheels last, if at all.
    if (kOrder[place] == "swap_wheels" && balancer && place + 1 < kOrder.size()) continue;
    const auto check = file.check(kOrder[place]);
    if (check && hunt.open(*check)) hunt.make(*check);
  }
  return hunt.order();
}

}  // namespace sw::diagnosis::testing
