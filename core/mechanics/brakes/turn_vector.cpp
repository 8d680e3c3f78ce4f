// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/turn_vector.h"

#include "mechanics/polar.h"

namespace sw::mechanics {

VectorAmount fromComplex(std::complex<double> inMetres) {
  const Polar polar = toPolar(inMetres);
  return {metres(polar.amount), polar.angle};
}

std::complex<double> toComplex(const VectorAmount& vector) {
  return toComplex(Polar{vector.amount.si(), vector.angle});
}

}  // namespace sw::mechanics
