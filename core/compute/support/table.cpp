// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/calculations.h"
#include "compute/support/support.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"stand-load", "Are the stands under an axle strong enough?", Subject::Support,
                describeStandLoad, runStandLoad},
};

}  // namespace

std::span<const Calculation> supportCalculations() {
  return kTable;
}

}  // namespace sw::compute
