// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "diagnosis/cause_file.h"

// How many workshop minutes until what shakes is found or given up, on simulated vehicles:
// - the plan: the order that costs least;
// - chance of finding it over the minutes of check and set-up; over the minutes of the check alone;
//   the most probable first; the fixed order that is preached: fasteners, tyres and balance,
//   bushes, play, swivel, then the rest.
// All begin with the walk-round, pay for the same set-ups, keep to what must come before what, know
// the same answers, rank by the same shipped table and stop by the same rule.
// A vehicle: one cause by the weights; four questions (kAsked) answered by its chances; a check
// finds its cause with its chance, each is made once; where none of its causes is there it alarms
// with its own chance, and then the likeliest of its causes is put right in vain, which takes the
// minutes of its alarm, and the search is planned anew. What is found is cured; the repair is not
// counted, it is the same for all. Giving up costs the fallback. Every way meets the same vehicles
// and luck. The truth is the shipped table, or that table moved by factors that no way knows
// (perturbed), anew for every kVehiclesATable vehicles.

namespace sw::eval {

enum class Way { Plan, PerMinuteThere, PerMinute, MostProbable, FixedOrder };
inline constexpr std::size_t kWays = 5;

enum class Stopping {
  WhereItPays,  ///< where, by the table, going on in this way's order costs more than giving up
  Never         ///< when every check was made that can find something
};

inline constexpr int kVehiclesATable = 50;

struct WayResult {
  double mean = 0;      ///< minutes
  double of90 = 0;      ///< nine of ten vehicles took no more
  double found = 0;     ///< share
  double dearer = 0;    ///< mean minutes more than the plan, vehicle by vehicle
  double dearerBy = 0;  ///< half width of its 95 % interval
};

struct CheckRace {
  std::array<WayResult, kWays> ways;
  double stated = 0;    ///< mean of the minutes that the plans expected
  double statedBy = 0;  ///< half width of the 95 % interval of (taken - expected)
};

struct RaceTerms {
  std::size_t preset = 0;
  int vehicles = 5000;
  double perturbed = 0;  ///< standard deviation of the logarithm of the factors
  Stopping stopping = Stopping::WhereItPays;
  std::uint64_t seed = 20261127;
};

/// A way's checks and the states they are made in.
struct Course {
  struct Step {
    std::size_t check = 0;
    std::size_t setup = 0;
  };
  std::vector<Step> steps;
  double stated = 0;  ///< minutes that the plan expects
};

/// Courses once worked out, by what was known.
using Courses = std::map<std::string, Course>;

/// Keeps the courses, so that the next race need not work them out again.
class CheckRacer {
 public:
  explicit CheckRacer(const diagnosis::CauseFile& file) : m_file(file) {}
  /// Two threads; the same numbers whatever their pace.
  [[nodiscard]] CheckRace race(const RaceTerms& terms);

 private:
  const diagnosis::CauseFile& m_file;
  std::array<Courses, 2> m_courses;  ///< one a thread
};

}  // namespace sw::eval
