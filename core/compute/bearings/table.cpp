// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/bearings/bearings.h"
#include "compute/calculations.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"wheel-bearing", "Setting of a wheel bearing by its kind", Subject::Bearings,
                describeWheelBearing, runWheelBearing},
    Calculation{"rock-test", "Wheel bearing or swivel? Rock with the brake on and off",
                Subject::Bearings, describeRockTest, runRockTest},
    Calculation{"play-limits", "Play a roadworthiness inspection lets pass", Subject::Bearings,
                describePlayLimits, runPlayLimits},
    Calculation{"bearing-friction", "Friction torque of a running bearing", Subject::Bearings,
                describeBearingFriction, runBearingFriction},
    Calculation{"bearing-stiffness", "How far a taper bearing gives along its axis",
                Subject::Bearings, describeBearingStiffness, runBearingStiffness},
};

}  // namespace

std::span<const Calculation> bearingCalculations() {
  return kTable;
}

}  // namespace sw::compute
