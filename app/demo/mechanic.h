// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <string>

#include "workshop/workshop.h"

// A simulated mechanic who works through a job by the same commands as a person: the demonstration
// shop is made by it, and the tests of complete jobs use it. Everything is reproducible: a fixed
// clock that moves with the minutes of the steps, and a small generator with a given seed.

namespace sw::app::demo {

/// How a simulated hub answers a pull: flat drag until the play is gone, then a steep line.
struct Hub {
  double dragNewtons = 6.0;
  double newtonsPerMillimetre = 90.0;
  double kneeMillimetres = 0.30;          ///< of interference, counted from the pack found
  double interferenceMillimetres = 0.30;  ///< with the pack found
};

/// What happens to the vehicle and what the mechanic has at hand.
struct Situation {
  Hub left, right;
  std::string scale = "Spring scale 50 N";
  std::string micrometer = "Micrometer 0-25";
  std::string dial = "Dial indicator";
  std::string rule = "Steel rule";
  std::string tape = "Tape measure";  ///< for what is longer than the rule
  std::string feeler = "Feeler set";
  std::string gauge = "Tyre gauge";
  std::string smallWrench = "Wrench small";
  std::string largeWrench = "Wrench large";
  std::string packFound = "0.50 + 0.25";
  model::SupportKind support = model::SupportKind::Stands;
  model::ShakeResult afterDrive = model::ShakeResult::None;  ///< of the first drive
  double scatterNewtons = 0.25;
};

class Mechanic {
 public:
  /// `clock` is moved on; `initials` name a person of the shop.
  Mechanic(workshop::Workshop& shop, ManualClock& clock, std::string initials, std::uint64_t seed);

  /// Is told every command before it is sent (to write a script of the job).
  using Listener = std::function<void(const workshop::Command&)>;
  void setListener(Listener listener) { m_listener = std::move(listener); }

  /// Does steps in working order until nothing is left or `stop` says so (asked before each step).
  using Stop = std::function<bool(const workshop::JobState&, std::size_t step)>;
  [[nodiscard]] Result<void> work(model::JobId job, const Situation& situation,
                                  const Stop& stop = {});
  /// Sends one action as this person about this job.
  [[nodiscard]] Result<workshop::Outcome> send(workshop::Command command);
  [[nodiscard]] Result<workshop::Outcome> send(model::JobId job, workshop::Action action);

 private:
  class StepWork;

  [[nodiscard]] Result<void> doOne(model::JobId job, const Situation& situation,
                                   const workshop::JobState& state, std::size_t step);
  void passMinutes(double minutes);
  [[nodiscard]] double nextNormal();

  workshop::Workshop& m_shop;
  ManualClock& m_clock;
  std::string m_initials;
  std::uint64_t m_random;
  int m_drives = 0;
  bool m_morePullsAsked = false;  ///< by the answer to the last command
  Listener m_listener;
};

}  // namespace sw::app::demo
