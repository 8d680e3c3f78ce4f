// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <initializer_list>
#include <string_view>

// Check values in tables: what we compute beside what the source says. Sources, as the rows name
// them:
//   "JCGM 100" etc. with (mem): from memory of the named document, the printed digits recomputed;
//   GSL: GNU Scientific Library, statistics/test_nist.c (NIST StRD certified values);
//   Boost examples: outputs in the comments of the Boost.Math examples, quoting NIST/SEMATECH;
//   GTC, propagate, suncal: documentation of those uncertainty libraries;
//   SciPy 1.10.1: computed with it.

namespace sw::test {

struct CheckRow {
  std::string_view id;
  double got;
  double expected;
  double tolerance;  ///< absolute
  std::string_view source;
};

inline void check(std::initializer_list<CheckRow> rows) {
  for (const CheckRow& row : rows) {
    EXPECT_NEAR(row.got, row.expected, row.tolerance) << row.id << ", source: " << row.source;
  }
}

/// A relative tolerance as an absolute one.
inline double relative(double expected, double tolerance) {
  return std::abs(expected) * tolerance;
}

}  // namespace sw::test
