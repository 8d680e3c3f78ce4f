// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/calculations.h"

namespace sw::compute {

std::span<const Calculation> brakeCalculations() {
  return {};
}

}  // namespace sw::compute
