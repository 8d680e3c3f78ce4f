// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/check_plan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <string>
#include <utility>

namespace sw::diagnosis {

namespace {

constexpr std::size_t kMostFinds = 16;
constexpr double kNever = std::numeric_limits<double>::infinity();

/// From a state up to the root.
std::vector<std::size_t> pathUp(std::span<const SetupState> states, std::size_t state) {
  std::vector<std::size_t> path{state};
  while (states[path.back()].parent && path.size() <= states.size()) {
    path.push_back(*states[path.back()].parent);
  }
  return path;
}

bool chance(double value) {
  return value >= 0 && value <= 1;
}

bool minutes(double value) {
  return std::isfinite(value) && value >= 0;
}

bool sound(const PlannedCheck& check, const PlanProblem& problem) {
  if (check.finds.size() > kMostFinds) return false;
  const bool finds = std::all_of(check.finds.begin(), check.finds.end(), [&](const Detection& one) {
    return one.cause < problem.causes.size() && chance(one.chance);
  });
  const bool states =
      !check.setups.empty() && std::all_of(check.setups.begin(), check.setups.end(),
                                           [&](std::size_t s) { return s < problem.moves.states; });
  const bool after = std::all_of(check.after.begin(), check.after.end(),
                                 [&](std::size_t c) { return c < problem.checks.size(); });
  return finds && states && after && minutes(check.minutes) && chance(check.falseAlarm) &&
         minutes(check.falseAlarmMinutes);
}

Result<void> checkProblem(const PlanProblem& problem) {
  const auto weight = [](double w) { return std::isfinite(w) && w >= 0; };
  const double sum = std::accumulate(problem.causes.begin(), problem.causes.end(), 0.0);
  if (!std::all_of(problem.causes.begin(), problem.causes.end(), weight) || !(sum > 0)) {
    return fail(ErrorCode::OutOfRange, "plan.no_weights", "causes", {});
  }
  for (std::size_t i = 0; i < problem.checks.size(); ++i) {
    if (sound(problem.checks[i], problem)) continue;
    return fail(ErrorCode::InvalidInput, "plan.bad_check", "checks",
                {{"check", std::to_string(i + 1)}});
  }
  return {};
}

/// What is left of each cause while checks are made.
class Search {
 public:
  explicit Search(const PlanProblem& problem) : m_left(problem.causes) {
    const double sum = std::accumulate(m_left.begin(), m_left.end(), 0.0);
    for (double& one : m_left) one /= sum;
  }

  [[nodiscard]] double notFound() const { return m_notFound; }

  /// Of the check itself, without what moving to it costs.
  [[nodiscard]] double cost(const PlannedCheck& check) const {
    const double alarm = check.falseAlarm * check.falseAlarmMinutes;
    const double plain = m_notFound * check.minutes;
    return alarm > 0 ? plain + std::max(0.0, m_notFound - target(check)) * alarm : plain;
  }

  /// The chance that it finds the fault now.
  [[nodiscard]] double finds(const PlannedCheck& check) const {
    double sum = 0;
    for (const Detection& one : check.finds) sum += m_left[one.cause] * one.chance;
    return sum;
  }

  void take(const PlannedCheck& check) {
    m_notFound = std::max(0.0, m_notFound - finds(check));
    for (const Detection& one : check.finds) m_left[one.cause] *= 1 - one.chance;
  }

  /// Takes it, does the rest, and puts back what was there.
  template <class Rest>
  void within(const PlannedCheck& check, const Rest& rest) {
    const double before = m_notFound;
    std::array<double, kMostFinds> kept{};
    const std::size_t count = check.finds.size();
    for (std::size_t i = 0; i < count; ++i) kept[i] = m_left[check.finds[i].cause];
    take(check);
    rest();
    for (std::size_t i = 0; i < count; ++i) m_left[check.finds[i].cause] = kept[i];
    m_notFound = before;
  }

 private:
  [[nodiscard]] double target(const PlannedCheck& check) const {
    double sum = 0;
    for (const Detection& one : check.finds) sum += m_left[one.cause];
    return sum;
  }

  std::vector<double> m_left;
  double m_notFound = 1;
};

struct Next {
  std::size_t check = 0;
  std::size_t setup = 0;
  double minutes = 0;
};

/// For each check, the set of those that must be made before it.
std::vector<std::size_t> setsBefore(const PlanProblem& problem,
                                    const std::vector<std::size_t>& checks) {
  std::vector<std::size_t> sets;
  for (const std::size_t check : checks) {
    std::size_t& set = sets.emplace_back(0);
    for (const std::size_t before : problem.checks[check].after) {
      const auto found = std::find(checks.begin(), checks.end(), before);
      if (found != checks.end()) set |= std::size_t{1} << (found - checks.begin());
    }
  }
  return sets;
}

/// The cost to go of every set of checks done and every set-up state.
class Table {
 public:
  Table(const PlanProblem& problem, const std::vector<std::size_t>& checks, const Search& begun)
      : m_problem(problem),
        m_before(setsBefore(problem, checks)),
        m_states(problem.moves.states),
        m_best(m_states),
        m_values((std::size_t{1} << checks.size()) * m_states) {
    for (const std::size_t check : checks) m_checks.push_back(&problem.checks[check]);
    Search search = begun;
    fill(search, m_checks.size(), 0);
  }

  /// Whether the check may be made next.
  [[nodiscard]] bool open(std::size_t check, std::size_t done) const {
    return (done >> check & 1U) == 0 && (done & m_before[check]) == m_before[check];
  }

  [[nodiscard]] double value(std::size_t done, std::size_t state) const {
    return m_values[done * m_states + state];
  }

  /// The best plan that goes on with this check, and the state it is made in.
  [[nodiscard]] Next goingOn(const Search& search, std::size_t done, std::size_t from,
                             std::size_t check) const {
    const PlannedCheck& next = *m_checks[check];
    Next best{check, next.setups.front(), kNever};
    for (const std::size_t to : next.setups) {
      const double minutes = search.notFound() * m_problem.moves(from, to) + search.cost(next) +
                             value(done | std::size_t{1} << check, to);
      if (minutes < best.minutes) best = {check, to, minutes};
    }
    return best;
  }

  /// What to do next; nothing where giving up costs no more.
  [[nodiscard]] std::optional<Next> best(const Search& search, std::size_t done,
                                         std::size_t from) const {
    double least = search.notFound() * m_problem.fallback;
    std::optional<Next> best;
    for (std::size_t check = 0; check < m_checks.size(); ++check) {
      if (!open(check, done)) continue;
      const Next next = goingOn(search, done, from, check);
      if (next.minutes >= least) continue;
      least = next.minutes;
      best = next;
    }
    return best;
  }

 private:
  /// Sets with a check come before the same without it, so that what they rest on is there.
  void fill(Search& search, std::size_t bits, std::size_t done) {
    if (bits == 0) return solve(search, done);
    const std::size_t bit = bits - 1;
    search.within(*m_checks[bit], [&] { fill(search, bit, done | std::size_t{1} << bit); });
    fill(search, bit, done);
  }

  void solve(const Search& search, std::size_t done) {
    std::fill(m_best.begin(), m_best.end(), kNever);
    for (std::size_t check = 0; check < m_checks.size(); ++check) {
      const std::size_t bit = std::size_t{1} << check;
      if (!open(check, done)) continue;
      const PlannedCheck& next = *m_checks[check];
      const double cost = search.cost(next);
      for (const std::size_t to : next.setups) {
        m_best[to] = std::min(m_best[to], cost + value(done | bit, to));
      }
    }
    const double left = search.notFound();
    for (std::size_t from = 0; from < m_states; ++from) {
      double least = left * m_problem.fallback;
      for (std::size_t to = 0; to < m_states; ++to) {
        least = std::min(least, left * m_problem.moves(from, to) + m_best[to]);
      }
      m_values[done * m_states + from] = least;
    }
  }

  const PlanProblem& m_problem;
  std::vector<const PlannedCheck*> m_checks = {};
  std::vector<std::size_t> m_before;
  std::size_t m_states;
  std::vector<double> m_best;  ///< by set-up state, of the set being solved
  std::vector<double> m_values;
};

/// Does a check: the step it becomes, and its minutes added.
void makeStep(const PlanProblem& problem, std::size_t check, std::size_t setup, Search& search,
              std::size_t& state, CheckPlan& plan) {
  const PlannedCheck& one = problem.checks[check];
  const double move = problem.moves(state, setup);
  plan.steps.push_back({check, setup, search.notFound(), move});
  plan.minutes += search.notFound() * move + search.cost(one);
  search.take(one);
  state = setup;
}

/// The state of a check that is nearest.
std::size_t nearest(const PlanProblem& problem, std::size_t from, const PlannedCheck& check) {
  return *std::min_element(check.setups.begin(), check.setups.end(),
                           [&](std::size_t a, std::size_t b) {
                             return problem.moves(from, a) < problem.moves(from, b);
                           });
}

/// Checks that are not forced and can find something.
std::vector<std::size_t> freeChecks(const PlanProblem& problem, const Search& search) {
  std::vector<std::size_t> free;
  for (std::size_t check = 0; check < problem.checks.size(); ++check) {
    const bool forced =
        std::find(problem.first.begin(), problem.first.end(), check) != problem.first.end();
    if (!forced && search.finds(problem.checks[check]) > 0) free.push_back(check);
  }
  return free;
}

}  // namespace

SetupMoves movesBetween(std::span<const SetupState> states) {
  SetupMoves moves;
  moves.states = states.size();
  moves.minutes.assign(moves.states * moves.states, 0.0);
  for (std::size_t from = 0; from < moves.states; ++from) {
    const auto leave = pathUp(states, from);
    for (std::size_t to = 0; to < moves.states; ++to) {
      const auto reach = pathUp(states, to);
      double& minutes = moves.minutes[from * moves.states + to];
      const auto in = [](const std::vector<std::size_t>& path, std::size_t state) {
        return std::find(path.begin(), path.end(), state) != path.end();
      };
      for (const std::size_t state : leave) {
        if (!in(reach, state)) minutes += states[state].close;
      }
      for (const std::size_t state : reach) {
        if (!in(leave, state)) minutes += states[state].open;
      }
    }
  }
  return moves;
}

Result<CheckPlan> bestPlan(const PlanProblem& problem) {
  if (auto sound = checkProblem(problem); !sound) return failAs(sound);
  CheckPlan plan;
  Search search(problem);
  std::size_t state = problem.start;
  for (const std::size_t check : problem.first) {
    makeStep(problem, check, nearest(problem, state, problem.checks[check]), search, state, plan);
  }
  const auto free = freeChecks(problem, search);
  if (free.size() > kMostPlanned) {
    return fail(ErrorCode::OutOfRange, "plan.too_many_checks", "checks",
                {{"checks", std::to_string(free.size())}, {"most", std::to_string(kMostPlanned)}});
  }
  const Table table(problem, free, search);

  for (std::size_t i = 0; i < free.size(); ++i) {
    if (!table.open(i, 0)) continue;
    const Next next = table.goingOn(search, 0, state, i);
    plan.beginnings.push_back({free[i], plan.minutes + next.minutes});
  }
  std::stable_sort(plan.beginnings.begin(), plan.beginnings.end(),
                   [](const Beginning& a, const Beginning& b) { return a.minutes < b.minutes; });

  std::size_t done = 0;
  while (const auto next = table.best(search, done, state)) {
    makeStep(problem, free[next->check], next->setup, search, state, plan);
    done |= std::size_t{1} << next->check;
  }
  plan.notFound = search.notFound();
  plan.minutes += plan.notFound * problem.fallback;
  return plan;
}

double minutesOf(const PlanProblem& problem, std::span<const std::size_t> order) {
  Search search(problem);
  std::vector<double> reached(problem.moves.states, kNever);  // least minutes to be in a state
  reached[problem.start] = 0;
  for (const std::size_t check : order) {
    const PlannedCheck& one = problem.checks[check];
    std::vector<double> after(reached.size(), kNever);
    for (const std::size_t to : one.setups) {
      for (std::size_t from = 0; from < reached.size(); ++from) {
        const double move = search.notFound() * problem.moves(from, to);
        after[to] = std::min(after[to], reached[from] + move + search.cost(one));
      }
    }
    reached = std::move(after);
    search.take(one);
  }
  return *std::min_element(reached.begin(), reached.end()) + search.notFound() * problem.fallback;
}

}  // namespace sw::diagnosis
