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
    Calculation{"unbalance", "What weights on a turning wheel do", Subject::Wheels,
                describeUnbalance, runUnbalance},
    Calculation{"balance-one-plane", "Balance in one plane from a trial weight", Subject::Wheels,
                describeBalanceOnePlane, runBalanceOnePlane},
    Calculation{"balance-two-plane", "Balance in two planes from two trial weights",
                Subject::Wheels, describeBalanceTwoPlane, runBalanceTwoPlane},
    Calculation{"balance-four-run", "Balance in four runs without a phase mark", Subject::Wheels,
                describeBalanceFourRun, runBalanceFourRun},
};

}  // namespace

std::span<const Calculation> wheelCalculations() {
  return kTable;
}

}  // namespace sw::compute
