// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: how fast a disc wears, and how far it may go until it is looked at again
// Formula: straight line through (odometer x, minimum t), weights 1 / u^2: wear w = -slope,
//   u(w)^2 = 1 / S, S = sum (x - xm)^2 / u^2, u(tm)^2 = 1 / sum 1 / u^2, xm and tm the weighted
//   means. Where the visits scatter more than their uncertainties allow (chi^2 > n - 2), both are
//   multiplied by sqrt(chi^2 / (n - 2)) and k is Student's for n - 2, else the normal one.
//   Distance: where the line meets discard, from the last visit on; its interval is that of a
//   quotient (Fieller): all q with (m - w q)^2 <= k^2 (u(tm)^2 + q^2 u(w)^2), m = tm - discard,
//   q counted from xm; lower end C / (B + sqrt(B^2 - A C)), A = w^2 - k^2 u(w)^2, B = w m,
//   C = m^2 - k^2 u(tm)^2. It has no upper end where wear is not proved (A <= 0).
//   Recheck: half of the lower end, because wear speeds up (a thinner disc runs hotter, pads and
//   use change), but no further than the road the visits span.
// Source: weighted least squares (textbook), Birge ratio for the scatter (from memory), Fieller's
//   theorem (from memory). Half of the lower end and the road spanned: common practice, no source.
// Valid range: two visits or more at different odometer readings, u > 0.
// Assumptions: the same disc, not machined between, the same place and kind of gauge; errors of the
//   visits independent (one micrometer throughout makes the interval too wide, not too narrow).
// When not to use: one visit tells no rate; a thickness that rises means another disc or a
//   measuring fault, so both are refused.
// Degenerate cases: last line value at or below discard: distance 0.
// Reference test: tests/core/mechanics/brakes/disc_wear_test.cpp.

namespace sw::mechanics {

inline constexpr Length kWearBase = metres(10000000);  ///< rates are per 10 000 km

struct WearVisit {
  Length odometer;
  Length minimum;
  Length standardUncertainty;
};

struct DiscWearInput {
  std::vector<WearVisit> visits;  ///< in any order
  Length discard;
  double confidence = 0.95;
};

struct DiscWear {
  Length rate, rateLeast, rateMost;    ///< per kWearBase; the least may be negative
  Length thickness;                    ///< of the line at the last visit
  Length spanned;                      ///< between first and last visit
  Length distance, distanceLeast;      ///< to discard, from the last visit; 0 or more
  std::optional<Length> distanceMost;  ///< empty: wear is not proved
  Length recheck;                      ///< half of distanceLeast, at most `spanned`
  bool atDiscard = false;              ///< the line has reached it
  bool scatterRaised = false;          ///< chi^2 > n - 2
  double coverageFactor = 2;
};

/// Errors: Degenerate "disc_wear.too_few_visits" (fewer than two different odometer readings;
/// details: visits), "disc_wear.thicker_later" (details: earlier, later), "disc_wear.no_wear";
/// OutOfRange "measure.not_positive", "measure.not_finite", "measure.bad_confidence".
[[nodiscard]] Result<DiscWear> discWear(const DiscWearInput& input);

}  // namespace sw::mechanics
