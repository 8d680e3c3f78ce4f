// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/calculations.h"
#include "compute/wheels/wheels.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"tyre", "What the marking of a tyre says", Subject::Wheels, describeTyre, runTyre},
    Calculation{"wheel-frequency", "How often a wheel shakes at a speed, and the speed for a shake",
                Subject::Wheels, describeWheelFrequency, runWheelFrequency},
};

}  // namespace

std::span<const Calculation> wheelCalculations() {
  return kTable;
}

}  // namespace sw::compute
