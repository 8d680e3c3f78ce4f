// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/brakes/brakes.h"
#include "compute/calculations.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"disc-thickness", "Thickness of a brake disc round the turn", Subject::Brakes,
                describeDiscThickness, runDiscThickness},
    Calculation{"disc-runout", "Runout of a brake disc and what it is made of", Subject::Brakes,
                describeDiscRunout, runDiscRunout},
    Calculation{"runout-at-track", "What a fault at the hub seat does at the brake track",
                Subject::Brakes, describeRunoutAtTrack, runRunoutAtTrack},
    Calculation{"disc-index", "Which way round a disc goes on its hub", Subject::Brakes,
                describeDiscIndex, runDiscIndex},
    Calculation{"disc-decision", "What becomes of the two discs of an axle", Subject::Brakes,
                describeDiscDecision, runDiscDecision},
    Calculation{"disc-wear", "Wear of a disc from visit to visit", Subject::Brakes,
                describeDiscWear, runDiscWear},
    Calculation{"brake-torque-variation", "Brake torque from a disc of uneven thickness",
                Subject::Brakes, describeBrakeTorqueVariation, runBrakeTorqueVariation},
};

}  // namespace

std::span<const Calculation> brakeCalculations() {
  return kTable;
}

}  // namespace sw::compute
