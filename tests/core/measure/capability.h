// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "measure/evaluation.h"

namespace sw::test {

inline InstrumentCapability capability(double graduation,
                                       std::optional<double> permissibleError = {}) {
  InstrumentCapability instrument;
  instrument.graduation = graduation;
  instrument.permissibleError = permissibleError;
  return instrument;
}

/// Readings are differences of two, e.g. the runout of a disc.
inline InstrumentCapability differenceOfTwo(double graduation, double localError) {
  InstrumentCapability instrument = capability(graduation);
  instrument.differenceOfTwo = true;
  instrument.localError = localError;
  return instrument;
}

}  // namespace sw::test
