// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "units/unit.h"

namespace sw {

/// Value and uncertainty to the same place, U to two significant digits, round half up to nearest
/// (after adding 1e-9 relative), e.g. {"18.80", "0.76"}. Source: JCGM 100:2008 7.2.6 (from memory).
struct RoundedPair {
  std::string value;
  std::string uncertainty;
};
[[nodiscard]] RoundedPair roundToUncertainty(double value, double expandedUncertainty);

/// A decimal with exactly `places` digits after the point, C locale, half away from zero.
[[nodiscard]] std::string fixedDecimal(double value, int places);
/// The shortest text with at most 15 significant digits ("18.5", "1.0e-12" never: plain decimal).
[[nodiscard]] std::string fullPrecision(double value);
/// "18.5 N" with 15 significant digits in that unit: what the command line prints and can read again.
[[nodiscard]] std::string exactText(double si, const Unit& unit);
/// For people: a value given in SI, in the unit, with `significant` significant digits: "73.8 lbf ft".
[[nodiscard]] std::string displayText(double si, const Unit& unit, int significant = 3);

}  // namespace sw
