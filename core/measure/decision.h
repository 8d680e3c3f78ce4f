// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "measure/distributions.h"
#include "measure/evaluation.h"

// METHOD CARD: deciding against a limit
// Formula: p_c = Fn((TU - y) / u) - Fn((TL - y) / u), Fn normal, or Student t where nu is finite; a
//   missing limit drops its term. Within if p_c >= bar; outside if 1 - p_c >= bar and y itself lies
//   beyond a limit; else undecided. (In a band much narrower than u even a value at its centre has
//   1 - p_c >= bar: that condemns the measurement, not the part.)
//   The same thing as a guard band: one-sided g = t_bar(nu) u; two-sided g solves p_c = bar.
// Older rule (guard band k = 2): within if y keeps 2u from every limit, outside if y lies more than
// 2u
//   beyond one; false acceptance at the edge 2.28 %.
// Too coarse: 2 Phi(T / (2 u_B)) - 1 < P with the u_B of the instrument alone (normal): even a
// value at
//   the centre could not pass. A few scattered readings never condemn a good scale that way.
// Source: JCGM 106:2012 and ISO 14253-1:2017 (from memory; 95 % confirmed in a national foreword);
//   ISO 14253-1:1998 for k = 2; bounds after ILAC-G8:09/2019.
// Bar: P for a number of readings fixed beforehand. Whoever looks after each reading and stops when
// it
//   looks good passes 13-15 % of values on the limit instead of 5 %; so after an extension the bar
//   is 1 - 0.5 (1 - P) up to 5 readings (0.975), 1 - 0.26 (1 - P) up to 10 (0.987), beyond that 1 -
//   0.1 (1 - P) (0.995). Source: simulation, repeated in the test.
// Valid range: u >= 0; 0.5 < P < 1; a limit with at least one side.
// Degenerate cases: u = 0 decides by position, the limit itself belongs to "within".
// Reference test: tests/core/measure/decision_test.cpp, verdict_boundary_test.cpp.

namespace sw::measure {

/// A value with its combined standard uncertainty, SI.
struct Estimate {
  double value = 0;
  double standardUncertainty = 0;
  DegreesOfFreedom degreesOfFreedom;
};

/// The three shares of probability; each keeps its digits when it is small.
struct Conformance {
  double inside = 0;
  double below = 0;
  double above = 0;
  [[nodiscard]] double outside() const { return below + above; }
};
[[nodiscard]] Conformance conformance(const Estimate& estimate, const LimitBand& limit);

/// The probability asked for, given how the series came about.
enum class SeriesPlan { FixedBeforehand, Extended };
[[nodiscard]] double decisionBar(double confidence, int readings, SeriesPlan plan);

struct Decision {
  Verdict verdict = Verdict::Undecided;  ///< Within, Outside or Undecided
  LimitSide side = LimitSide::None;
  Conformance conformance;
};
struct DecisionTerms {
  double bar = 0.95;
  DecisionRule rule = DecisionRule::ConformanceProbability;
  SeriesPlan plan = SeriesPlan::FixedBeforehand;
};
/// After an extension the k = 2 rule must meet the raised bar as well.
[[nodiscard]] Decision decide(const Estimate& estimate, const LimitBand& limit,
                              const DecisionTerms& terms);

/// Whether a band is too narrow for an instrument. One-sided limits never are.
[[nodiscard]] bool instrumentTooCoarse(const LimitBand& limit, double instrumentUncertainty,
                                       double confidence, DecisionRule rule);
/// C_m = T / (4 u); 1 is the least useful value. Empty for a one-sided limit.
[[nodiscard]] std::optional<double> measurementCapability(const LimitBand& limit,
                                                          double standardUncertainty);

/// Distance to keep from a single limit: t_bar(nu) u.
[[nodiscard]] double guardBand(double standardUncertainty, DegreesOfFreedom nu, double bar);
/// Distance to keep from both limits of a band of this width; empty where even the centre cannot
/// reach the bar.
[[nodiscard]] std::optional<double> guardBandTwoSided(double width, double standardUncertainty,
                                                      DegreesOfFreedom nu, double bar);

}  // namespace sw::measure
