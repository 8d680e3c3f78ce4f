// SPDX-License-Identifier: GPL-3.0-or-later
#include "check_race.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <thread>

#include "check_heuristics.h"
#include "diagnosis/ranking.h"
#include "simulated_vehicle.h"

namespace sw::eval {

namespace {

using diagnosis::CauseFile;
using diagnosis::Evidence;
using diagnosis::PlanProblem;
using diagnosis::testing::Rule;

constexpr double kNeverGivenUp = 1e9;  // minutes: every check pays

/// A check that was made; what it was alarmed about was put right in vain.
struct Made {
  std::size_t check = 0;
  std::optional<std::size_t> inVain = std::nullopt;
};

/// What is known when the next check is chosen.
struct Known {
  const std::vector<std::optional<std::size_t>>* answers = nullptr;
  std::vector<Made> made = {};
  std::size_t setup = 0;
};

std::string patternOf(const std::vector<std::optional<std::size_t>>& answers) {
  std::string text;
  for (const auto& one : answers) text += one ? static_cast<char>('0' + *one) : '?';
  return text;
}

/// The order in which checks were made tells nothing.
std::string keyOf(const RaceTerms& terms, Way way, const Known& known) {
  auto made = known.made;
  std::sort(made.begin(), made.end(),
            [](const Made& a, const Made& b) { return a.check < b.check; });
  std::string key = patternOf(*known.answers);
  for (const auto number : {static_cast<std::size_t>(way), static_cast<std::size_t>(terms.stopping),
                            terms.preset, known.setup}) {
    key += " " + std::to_string(number);
  }
  for (const Made& one : made) {
    key += " " + std::to_string(one.check) + (one.inVain ? "!" : "");
  }
  return key;
}

std::vector<Evidence> evidenceOf(const CauseFile& file, const Known& known) {
  std::vector<Evidence> evidence;
  for (std::size_t feature = 0; feature < known.answers->size(); ++feature) {
    const auto& answer = (*known.answers)[feature];
    if (answer) evidence.push_back(answered(file.table, feature, *answer));
  }
  for (const Made& one : known.made) {
    const auto& check = file.checks[one.check];
    diagnosis::PlannedCheck made;
    made.finds = check.finds;
    made.falseAlarm = check.falseAlarm;
    if (one.inVain) {
      evidence.push_back(causeFound(file.table, check.key, made, *one.inVain));
      evidence.push_back(repaired(file.table, *one.inVain));
    } else {
      evidence.push_back(nothingFound(file.table, check.key, made));
    }
  }
  return evidence;
}

PlanProblem problemOf(const CauseFile& file, const RaceTerms& terms, const Known& known) {
  const auto& shop = file.presets[terms.preset];
  diagnosis::Circumstances here;
  here.support = shop.support;
  here.equipment = shop.equipment;
  here.setup = known.setup;
  here.fallbackMinutes = terms.stopping == Stopping::Never ? kNeverGivenUp : file.fallbackMinutes;
  for (const Made& one : known.made) here.leftOut.push_back(one.check);
  auto problem = problemFor(file, here);
  problem.causes = probabilities(file.table, evidenceOf(file, known));
  return problem;
}

Course plannedCourse(const PlanProblem& problem) {
  const auto plan = bestPlan(problem).value();
  Course course{{}, plan.minutes};
  for (const auto& step : plan.steps) course.steps.push_back({step.check, step.setup});
  return course;
}

std::vector<std::size_t> orderOf(const CauseFile& file, const PlanProblem& problem, Way way) {
  switch (way) {
    case Way::PerMinuteThere:
      return orderBy(problem, Rule::PerMinuteThere);
    case Way::PerMinute:
      return orderBy(problem, Rule::PerMinute);
    case Way::MostProbable:
      return orderBy(problem, Rule::MostProbable);
    case Way::Plan:
    case Way::FixedOrder:
      break;
  }
  return diagnosis::testing::bulletinOrder(file, problem);
}

Course courseOf(const CauseFile& file, const RaceTerms& terms, Way way, const Known& known) {
  const auto problem = problemOf(file, terms, known);
  if (way == Way::Plan) return plannedCourse(problem);
  auto order = orderOf(file, problem, way);
  if (terms.stopping == Stopping::WhereItPays) {
    order = diagnosis::testing::bestPrefix(problem, order).order;
  }
  Course course;
  std::size_t state = known.setup;
  for (const std::size_t check : order) {
    const auto& setups = problem.checks[check].setups;
    state = *std::min_element(setups.begin(), setups.end(), [&](std::size_t a, std::size_t b) {
      return problem.moves(state, a) < problem.moves(state, b);
    });
    course.steps.push_back({check, state});
  }
  return course;
}

/// What an alarm is taken for.
std::size_t likeliestOf(const CauseFile& file, const diagnosis::Check& check) {
  const auto worth = [&](const diagnosis::Detection& one) {
    return file.table.causes[one.cause].weight * one.chance;
  };
  return std::max_element(check.finds.begin(), check.finds.end(),
                          [&](const auto& a, const auto& b) { return worth(a) < worth(b); })
      ->cause;
}

struct End {
  double minutes = 0;
  bool found = false;
  double stated = 0;
};

/// One way of looking, through all vehicles of one thread.
class Searcher {
 public:
  Searcher(const CauseFile& file, const RaceTerms& terms, Courses& courses)
      : m_file(file), m_terms(terms), m_courses(courses) {
    Known nothing;
    const std::vector<std::optional<std::size_t>> none(file.table.features.size());
    nothing.answers = &none;
    m_problem = problemOf(file, terms, nothing);  // for its moves and minutes
  }

  [[nodiscard]] End search(Way way, const SimulatedVehicle& vehicle) {
    Known known;
    known.answers = &vehicle.answers;
    const Course* course = &courseFor(way, known);
    End end{0, false, course->stated};
    std::size_t at = 0;
    while (at < course->steps.size()) {
      const auto& step = course->steps[at++];
      const auto& check = m_problem.checks[step.check];
      end.minutes += m_problem.moves(known.setup, step.setup) + check.minutes;
      known.setup = step.setup;
      known.made.push_back({step.check});
      const CheckLuck& luck = vehicle.luck[step.check];
      end.found = luck.finds;
      if (end.found) return end;
      if (!luck.alarms) continue;
      end.minutes += check.falseAlarmMinutes;
      known.made.back().inVain = likeliestOf(m_file, m_file.checks[step.check]);
      course = &courseFor(way, known);
      at = 0;
    }
    end.minutes += m_file.fallbackMinutes;
    return end;
  }

 private:
  const Course& courseFor(Way way, const Known& known) {
    const std::string key = keyOf(m_terms, way, known);
    const auto kept = m_courses.find(key);
    if (kept != m_courses.end()) return kept->second;
    return m_courses.emplace(key, courseOf(m_file, m_terms, way, known)).first->second;
  }

  const CauseFile& m_file;
  const RaceTerms& m_terms;
  Courses& m_courses;
  PlanProblem m_problem = {};
};

std::vector<SimulatedVehicle> drawVehicles(const CauseFile& file, const RaceTerms& terms) {
  std::vector<SimulatedVehicle> vehicles;
  std::mt19937_64 random(terms.seed);
  CauseFile truth = file;
  for (int i = 0; i < terms.vehicles; ++i) {
    if (i % kVehiclesATable == 0 && terms.perturbed > 0) {
      truth = perturbed(file, terms.perturbed, random);
    }
    vehicles.push_back(drawVehicle(truth, random));
  }
  return vehicles;
}

using Ends = std::array<End, kWays>;  ///< of one vehicle

double meanOf(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Half width of the 95 % interval of the mean.
double halfWidth(const std::vector<double>& values) {
  const double mean = meanOf(values);
  double squares = 0;
  for (const double one : values) squares += (one - mean) * (one - mean);
  const auto count = static_cast<double>(values.size());
  return 1.96 * std::sqrt(squares / (count - 1) / count);
}

WayResult resultOf(const std::vector<Ends>& ends, std::size_t way) {
  WayResult result;
  std::vector<double> minutes, more;
  for (const Ends& one : ends) {
    minutes.push_back(one[way].minutes);
    more.push_back(one[way].minutes - one[0].minutes);
    result.found += one[way].found ? 1 : 0;
  }
  result.found /= static_cast<double>(ends.size());
  result.mean = meanOf(minutes);
  result.dearer = meanOf(more);
  result.dearerBy = halfWidth(more);
  std::sort(minutes.begin(), minutes.end());
  result.of90 = minutes[(minutes.size() * 9 + 9) / 10 - 1];
  return result;
}

}  // namespace

CheckRace CheckRacer::race(const RaceTerms& terms) {
  const auto vehicles = drawVehicles(m_file, terms);
  std::vector<Ends> ends(vehicles.size());
  std::array<std::thread, 2> threads;
  for (std::size_t t = 0; t < threads.size(); ++t) {
    threads[t] = std::thread([&, t] {
      Searcher searcher(m_file, terms, m_courses[t]);
      for (std::size_t i = 0; i < vehicles.size(); ++i) {
        // Vehicles of the same answers share their courses.
        const auto pattern = std::hash<std::string>{}(patternOf(vehicles[i].answers));
        if (pattern % threads.size() != t) continue;
        for (std::size_t way = 0; way < kWays; ++way) {
          ends[i][way] = searcher.search(Way(way), vehicles[i]);
        }
      }
    });
  }
  for (auto& thread : threads) thread.join();
  CheckRace race;
  for (std::size_t way = 0; way < kWays; ++way) race.ways[way] = resultOf(ends, way);
  std::vector<double> apart;
  for (const Ends& one : ends) {
    race.stated += one[0].stated / static_cast<double>(ends.size());
    apart.push_back(one[0].minutes - one[0].stated);
  }
  race.statedBy = halfWidth(apart);
  return race;
}

}  // namespace sw::eval
