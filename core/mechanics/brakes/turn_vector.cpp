// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/turn_vector.h"

#include <cmath>
#include <numbers>

namespace sw::mechanics {

Angle onOneTurn(double radiansOfAny) {
  constexpr double kTurn = 2 * std::numbers::pi;
  double turned = std::fmod(radiansOfAny, kTurn);
  if (turned < 0) turned += kTurn;
  // A hair below 0 may round up to the whole turn.
  return radians(turned < kTurn ? turned + 0.0 : 0.0);
}

VectorAmount fromComplex(std::complex<double> inMetres) {
  return {metres(std::abs(inMetres)), onOneTurn(std::arg(inMetres))};
}

std::complex<double> toComplex(const VectorAmount& vector) {
  return std::polar(vector.amount.si(), vector.angle.si());
}

}  // namespace sw::mechanics
