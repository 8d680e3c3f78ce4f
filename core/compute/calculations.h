// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "compute/calculation.h"

// The calculations of one area, each row in <area>/table.cpp and each calculation in
// <area>/<name>_compute.cpp.

namespace sw::compute {

[[nodiscard]] std::span<const Calculation> diagnosisCalculations();
[[nodiscard]] std::span<const Calculation> measuringCalculations();
[[nodiscard]] std::span<const Calculation> swivelCalculations();
[[nodiscard]] std::span<const Calculation> brakeCalculations();
[[nodiscard]] std::span<const Calculation> bearingCalculations();
[[nodiscard]] std::span<const Calculation> boltCalculations();
[[nodiscard]] std::span<const Calculation> wheelCalculations();
[[nodiscard]] std::span<const Calculation> geometryCalculations();
[[nodiscard]] std::span<const Calculation> supportCalculations();

}  // namespace sw::compute
