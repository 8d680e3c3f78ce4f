// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "units/unit.h"

// METHOD CARD
//   Formula      nearest decimal, halves away from zero, after adding 1e-9 of the value but at most
//                1/1000 of the last place shown (else a binary 0.145 prints as 0.14).
//   Source       JCGM 100:2008 7.2.6 and EA-4/02 M:2022 6.3 (both from memory): U to two
//   significant
//                digits, the value to the same place. Always nearest: 10.47 is 10, not 11.
//   Valid range  finite doubles. Text is plain decimal with a point in every locale, no exponent,
//   no
//                grouping, never "-0".
//   Degenerate   U zero, negative or not finite: the value in full and U as fullPrecision writes
//   it;
//                a non-finite number is "nan", "inf" or "-inf".
//   Reference    tests/core/units/format_test.cpp.

namespace sw {

/// Value and uncertainty to the same place, U to two significant digits, round half up to nearest
/// (after adding 1e-9 relative), e.g. {"18.80", "0.76"}. Source: JCGM 100:2008 7.2.6 (from memory).
struct RoundedPair {
  std::string value;
  std::string uncertainty;
};
[[nodiscard]] RoundedPair roundToUncertainty(double value, double expandedUncertainty);

/// A decimal with exactly `places` digits after the point, C locale, half away from zero; negative
/// `places` round left of the point. At most 100 places.
[[nodiscard]] std::string fixedDecimal(double value, int places);
/// The shortest text with at most 15 significant digits ("18.5", "1.0e-12" never: plain decimal).
[[nodiscard]] std::string fullPrecision(double value);
/// "18.5 N" with 15 significant digits in that unit: what the command line prints and can read
/// again.
[[nodiscard]] std::string exactText(double si, const Unit& unit);
/// For people: a value given in SI, in the unit, with `significant` significant digits: "73.8 lbf
/// ft".
[[nodiscard]] std::string displayText(double si, const Unit& unit, int significant = 3);

}  // namespace sw
