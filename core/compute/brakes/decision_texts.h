// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>
#include <vector>

#include "compute/calculation.h"
#include "mechanics/brakes/disc_decision.h"

namespace sw::compute {

struct DecisionInput {
  mechanics::DiscDecisionInput decision;
  std::array<std::string, mechanics::kDiscsOfAnAxle> sides;
  bool behindHub = false;
};

/// "left: variation 0.031 mm is over its limit of 0.014 mm"
[[nodiscard]] std::string reasonText(const mechanics::DiscFinding& finding,
                                     const DecisionInput& input);
/// What to do, and what it entails.
[[nodiscard]] std::vector<Note> decisionNotes(const DecisionInput& input,
                                              const mechanics::DiscDecision& decision);

}  // namespace sw::compute
