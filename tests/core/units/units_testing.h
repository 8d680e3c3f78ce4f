// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <string_view>

#include "units/parse.h"

namespace sw::units_testing {

/// "starting force" in newtons unless a test says otherwise.
inline FieldSpec fieldOf(QuantityKind kind, std::string_view unit = {}) {
  return FieldSpec{"starting force", kind, std::string(unit)};
}

/// Equal to a relative 1e-12: exact factors in doubles stay within a few parts in 1e16, and a
/// factor that is wrong in any published digit is far outside.
inline testing::AssertionResult relativelyEqual(double actual, double expected,
                                                double tolerance = 1e-12) {
  if (std::abs(actual - expected) <= tolerance * std::abs(expected)) {
    return testing::AssertionSuccess();
  }
  return testing::AssertionFailure()
         << actual << " is not " << expected << " within " << tolerance << " relative";
}

}  // namespace sw::units_testing
