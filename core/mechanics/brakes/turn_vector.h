// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>

#include "units/quantity.h"

// Faults of discs as vectors: how far out, and where on the turn.

namespace sw::mechanics {

/// Amount and direction of one wave round the turn.
struct VectorAmount {
  Length amount;
  Angle angle;  ///< 0 to below 360 degrees
};

[[nodiscard]] VectorAmount fromComplex(std::complex<double> metres);
[[nodiscard]] std::complex<double> toComplex(const VectorAmount& vector);

}  // namespace sw::mechanics
