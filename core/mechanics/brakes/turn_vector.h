// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>

#include "units/quantity.h"

// Once-a-turn faults as vectors: how far out, and where on the turn.

namespace sw::mechanics {

/// Amount and direction of one wave round the turn.
struct VectorAmount {
  Length amount;
  Angle angle;  ///< 0 to below 360 degrees
};

/// The angle on 0 to below a full turn; the same for 0 and for minus 0.
[[nodiscard]] Angle onOneTurn(double radians);
[[nodiscard]] VectorAmount fromComplex(std::complex<double> metres);
[[nodiscard]] std::complex<double> toComplex(const VectorAmount& vector);

}  // namespace sw::mechanics
