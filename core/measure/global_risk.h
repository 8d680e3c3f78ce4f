// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "base/result.h"
#include "measure/evaluation.h"

// METHOD CARD: global risks, where the spread of the parts themselves is known
// Formula: with part density g0 and acceptance [AL, AU], h(e) = Phi((AU-e)/u_m) - Phi((AL-e)/u_m):
//   R_C = integral of g0 h outside the tolerance (bad parts accepted),
//   R_P = integral of g0 (1 - h) inside it (good parts rejected);
//   share of bad among accepted = R_C / integral of g0 h everywhere.
// Source: JCGM 106:2012 clause 9 (from memory).
// When not to use: for a single part. A workshop has no g0; this is for fleet history and tests.
// Method: adaptive Gauss-Kronrod (7, 15) between the tolerance and acceptance limits.
// Valid range: u_m > 0; the density is 0 outside its support.
// Accuracy: 1e-10 absolute.
// Reference test: tests/core/measure/global_risk_test.cpp (JCGM 106 9.5.4 and published cases).

namespace sw::measure {

/// How the true values of the parts are spread.
struct PartSpread {
  std::function<double(double)> density;
  double supportMin = 0;  ///< finite ends that hold practically all parts
  double supportMax = 0;
};

struct RiskQuestion {
  PartSpread parts;
  LimitBand tolerance;
  LimitBand acceptance;
  double measurementUncertainty = 0;  ///< u_m > 0
};

struct GlobalRisk {
  double outOfTolerance = 0;  ///< share of parts beyond the tolerance
  double consumer = 0;        ///< R_C
  double producer = 0;        ///< R_P
  double accepted = 0;        ///< share of parts accepted
  [[nodiscard]] double badAmongAccepted() const { return accepted > 0 ? consumer / accepted : 0; }
};

/// Errors: OutOfRange "measure.not_positive" (u_m or an empty support); Missing "measure.no_limit".
[[nodiscard]] Result<GlobalRisk> globalRisk(const RiskQuestion& question);

/// The guard band w, the same on each limit of the tolerance, that brings R_C to `consumerRisk`.
/// The acceptance of the question is not looked at. May be negative where the risk is lower without
/// one. Errors: as globalRisk; Degenerate "measure.no_guard_band" where none within the support
/// does it.
[[nodiscard]] Result<double> guardForConsumerRisk(const RiskQuestion& question,
                                                  double consumerRisk);

}  // namespace sw::measure
