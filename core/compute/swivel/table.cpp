// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/calculations.h"
#include "compute/swivel/swivel.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"shim-pack", "Which shim pack next?", Subject::Swivel, describeShimPack,
                runShimPack},
    Calculation{"first-pack", "The first shim pack, from a measurement", Subject::Swivel,
                describeFirstPack, runFirstPack},
    Calculation{"starting-force", "Swivel torque from the starting pull", Subject::Swivel,
                describeStartingForce, runStartingForce},
};

}  // namespace

std::span<const Calculation> swivelCalculations() {
  return kTable;
}

}  // namespace sw::compute
