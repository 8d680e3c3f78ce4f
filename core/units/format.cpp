// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/format.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace sw {

namespace {

constexpr int kMaximumPlaces = 100;
constexpr int kFullDigits = 15;

std::string nonFiniteText(double value) {
  if (std::isnan(value)) return "nan";
  return value < 0.0 ? "-inf" : "inf";
}

/// Correctly rounded decimal text that no locale can change.
std::string toFixed(double value, int places) {
  std::array<char, 450> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                          std::chars_format::fixed, places);
  return error == std::errc{} ? std::string(buffer.data(), end) : std::string{};
}

/// The magnitude, nudged up so that a half that is not exact in binary still rounds away from zero.
double nudged(double magnitude, int places) {
  const double place = std::pow(10.0, -places);
  return magnitude + std::min(1e-9 * magnitude, 1e-3 * place);
}

/// Fifteen significant digits without the point, and the exponent of the first: 18.5 is
/// {"185000000000000", 1}.
struct Scientific {
  std::string digits;
  int exponent = 0;
};

Scientific scientificOf(double magnitude) {
  std::array<char, 32> buffer{};
  const char* const end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), magnitude,
                                        std::chars_format::scientific, kFullDigits - 1)
                              .ptr;
  const std::string_view text(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
  const std::size_t e = text.find('e');
  std::string_view power = text.substr(e + 1);
  if (power.starts_with('+')) power.remove_prefix(1);
  Scientific parts{std::string(text.substr(0, 1)), 0};
  parts.digits += text.substr(2, e - 2);
  std::from_chars(power.data(), power.data() + power.size(), parts.exponent);
  return parts;
}

/// How many places show `significant` digits of the magnitude once it is rounded (9.96 with two
/// digits is 10, not 10.0).
int placesFor(double magnitude, int significant) {
  const int places = significant - 1 - scientificOf(magnitude).exponent;
  const double place = std::pow(10.0, -places);
  const bool carries =
      std::floor(nudged(magnitude, places) / place + 0.5) >= std::pow(10.0, significant);
  return carries ? places - 1 : places;
}

std::string withoutTrailingZeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

}  // namespace

std::string fixedDecimal(double value, int places) {
  if (!std::isfinite(value)) return nonFiniteText(value);
  const int shown = std::clamp(places, -kMaximumPlaces, kMaximumPlaces);
  const double magnitude = nudged(std::abs(value), shown);
  std::string text =
      shown >= 0 ? toFixed(magnitude, shown) : toFixed(magnitude / std::pow(10.0, -shown), 0);
  if (text.find_first_not_of("0.") == std::string::npos) return shown >= 0 ? text : "0";
  if (shown < 0) text.append(static_cast<std::size_t>(-shown), '0');
  return value < 0.0 ? "-" + text : text;
}

RoundedPair roundToUncertainty(double value, double expandedUncertainty) {
  if (!std::isfinite(expandedUncertainty) || expandedUncertainty <= 0.0) {
    return {fullPrecision(value), fullPrecision(expandedUncertainty)};
  }
  const int places = placesFor(expandedUncertainty, 2);
  return {fixedDecimal(value, places), fixedDecimal(expandedUncertainty, places)};
}

std::string fullPrecision(double value) {
  if (!std::isfinite(value)) return nonFiniteText(value);
  if (value == 0.0) return "0";
  const auto [digits, exponent] = scientificOf(std::abs(value));
  std::string plain;
  if (exponent < 0) {
    plain = "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0') + digits;
  } else if (const auto whole = static_cast<std::size_t>(exponent) + 1; whole >= digits.size()) {
    plain = digits + std::string(whole - digits.size(), '0');
  } else {
    plain = digits.substr(0, whole) + "." + digits.substr(whole);
  }
  plain = withoutTrailingZeros(std::move(plain));
  return value < 0.0 ? "-" + plain : plain;
}

std::string exactText(double si, const Unit& unit) {
  std::string text = fullPrecision(si / unit.toSi);
  if (!unit.symbol.empty()) text.append(" ").append(unit.symbol);
  return text;
}

std::string displayText(double si, const Unit& unit, int significant) {
  const double value = si / unit.toSi;
  const bool plain = !std::isfinite(value) || value == 0.0;
  std::string text =
      plain ? fullPrecision(value)
            : fixedDecimal(value, placesFor(std::abs(value), std::clamp(significant, 1, 15)));
  if (!unit.symbol.empty()) text.append(" ").append(unit.symbol);
  return text;
}

}  // namespace sw
