// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>

#include "units/quantity.h"

// Once-a-turn faults of wheels and discs as vectors: how much, and where on the turn.

namespace sw::mechanics {

/// An amount in any one unit, and an angle in the sense in which marks, weights and readings all
/// count.
struct Polar {
  double amount = 0;
  Angle angle;
};

[[nodiscard]] std::complex<double> toComplex(const Polar& polar);
/// The angle from 0 to below a full turn; 0 where there is no amount.
[[nodiscard]] Polar toPolar(const std::complex<double>& value);
/// The same angle, from 0 to below a full turn; the same for 0 and for minus 0.
[[nodiscard]] Angle withinATurn(Angle angle);

}  // namespace sw::mechanics
