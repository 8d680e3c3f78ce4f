// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/brakes/decision_texts.h"
#include "compute/calculation.h"

namespace sw::compute {

/// Both discs of the axle: thickness between discard and machining, now and after a cut; variation,
/// runout and flatness as parts of their limits.
[[nodiscard]] figure::Figure discDecisionPicture(const DecisionInput& input,
                                                 const mechanics::DiscDecision& decision,
                                                 figure::Size size);

}  // namespace sw::compute
