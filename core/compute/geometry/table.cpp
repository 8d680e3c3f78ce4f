// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/calculations.h"

namespace sw::compute {

std::span<const Calculation> geometryCalculations() {
  return {};
}

}  // namespace sw::compute
