// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "procedures/instantiate.h"

// Walks through a job as it would be worked: procedure after procedure, every step made for the
// facts given, in working order.

namespace sw::test {

/// Words of the arrangement and the support; nothing observed.
using FactWords = std::map<std::string, std::string>;

struct PlannedRun {
  std::string procedure;
  std::string round = "first";
};

struct WalkedStep {
  const procedures::Procedure* procedure = nullptr;
  const procedures::Step* step = nullptr;
  std::optional<model::Side> side;
  procedures::Facts facts;
};

[[nodiscard]] std::vector<PlannedRun> runsOfPlan(const std::string& plan,
                                                 const std::string& round = "first");
[[nodiscard]] std::vector<WalkedStep> walk(const std::vector<PlannedRun>& runs,
                                           const FactWords& words,
                                           const std::vector<model::Side>& sides);
/// Combinations of words of the facts that removals, refits and torques ask for, spread so that
/// every pair of words of two facts is among them.
[[nodiscard]] std::vector<FactWords> manyFactWords();
[[nodiscard]] std::string describe(const FactWords& words);

}  // namespace sw::test
