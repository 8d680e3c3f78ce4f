// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/polar.h"

#include <cmath>
#include <numbers>

namespace sw::mechanics {

std::complex<double> toComplex(const Polar& polar) {
  return polar.amount *
         std::complex<double>(std::cos(polar.angle.si()), std::sin(polar.angle.si()));
}

Polar toPolar(const std::complex<double>& value) {
  return {std::abs(value), withinATurn(radians(std::arg(value)))};
}

Angle withinATurn(Angle angle) {
  constexpr double kTurn = 2 * std::numbers::pi;
  const double rest = std::fmod(angle.si(), kTurn);
  const double positive = rest < 0 ? rest + kTurn : rest;
  // A tiny negative angle plus a turn rounds to the turn itself.
  return radians(positive < kTurn ? positive + 0.0 : 0.0);
}

}  // namespace sw::mechanics
