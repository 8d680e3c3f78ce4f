// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/bolts/bolts.h"
#include "compute/calculations.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"thread", "Diameters, stress area, strength and look-alikes of a thread",
                Subject::Bolts, describeThread, runThread},
    Calculation{"clamp-force",
                "Torque and clamp force of a bolt, and how much of its strength they use",
                Subject::Bolts, describeClampForce, runClampForce},
    Calculation{"torque-plausibility", "Is a tightening torque believable for this bolt?",
                Subject::Bolts, describeTorquePlausibility, runTorquePlausibility},
    Calculation{"wrench-setting", "What to set a torque wrench to, which one, and is it right?",
                Subject::Bolts, describeWrenchSetting, runWrenchSetting},
    Calculation{"prevailing-torque", "Drag of a self-locking nut, and may a used one go on again?",
                Subject::Bolts, describePrevailingTorque, runPrevailingTorque},
    Calculation{"castle-nut", "A castellated nut: fit the pin, tighten on, or change the washer?",
                Subject::Bolts, describeCastleNut, runCastleNut},
    Calculation{"tighten-pattern", "The crosswise order of fasteners on one circle", Subject::Bolts,
                describeTightenPattern, runTightenPattern},
    Calculation{"wheel-nut-recheck", "At which readings are wheel nuts checked again?",
                Subject::Bolts, describeWheelNutRecheck, runWheelNutRecheck},
};

}  // namespace

std::span<const Calculation> boltCalculations() {
  return kTable;
}

}  // namespace sw::compute
