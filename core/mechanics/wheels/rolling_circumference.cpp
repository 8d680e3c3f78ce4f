// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/rolling_circumference.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/value_checks.h"

namespace sw {

template <>
struct Words<mechanics::RollingConvention> {
  static constexpr std::array<std::pair<mechanics::RollingConvention, std::string_view>, 5> table{
      {{mechanics::RollingConvention::Geometric, "geometric"},
       {mechanics::RollingConvention::DynamicRadial, "dynamic_radial"},
       {mechanics::RollingConvention::DynamicDiagonal, "dynamic_diagonal"},
       {mechanics::RollingConvention::StaticRadius, "static_radius"},
       {mechanics::RollingConvention::RollOut, "roll_out"}}};
};

namespace mechanics {

namespace {

constexpr double kRadialFactor = 3.05;
constexpr double kDiagonalFactor = 2.99;
constexpr double kReferenceSpeed = 60;     // km/h
constexpr double kSpeedForDouble = 10000;  // km/h
constexpr double kMostSpeed = 300;         // km/h
constexpr int kMostTurns = 100;
constexpr double kMostUncertainty = 0.2;
constexpr double kMostWorn = 0.1;

std::optional<double> factorOf(RollingConvention convention) {
  switch (convention) {
    case RollingConvention::Geometric:
      return std::numbers::pi;
    case RollingConvention::DynamicRadial:
      return kRadialFactor;
    case RollingConvention::DynamicDiagonal:
      return kDiagonalFactor;
    case RollingConvention::StaticRadius:
    case RollingConvention::RollOut:
      break;
  }
  return std::nullopt;
}

/// C over C60.
double growth(double kilometresPerHour) {
  return 1 + (kilometresPerHour - kReferenceSpeed) / kSpeedForDouble;
}

/// The circumference at 60 km/h. What was measured standing or rolled by hand counts as at 0.
Length atReferenceSpeed(const RollingCircumference& rolling) {
  const bool standing = rolling.convention == RollingConvention::StaticRadius ||
                        rolling.convention == RollingConvention::RollOut;
  return rolling.circumference / growth(standing ? 0 : kReferenceSpeed);
}

}  // namespace

std::string_view word(RollingConvention convention) {
  return wordOf(convention);
}
std::optional<RollingConvention> rollingConventionFromWord(std::string_view text) {
  return fromWord<RollingConvention>(text);
}

RollingConvention conventionOf(TyreConstruction construction) {
  return construction == TyreConstruction::Diagonal ? RollingConvention::DynamicDiagonal
                                                    : RollingConvention::DynamicRadial;
}

Length RollingCircumference::dynamicRadius() const {
  return circumference / (2 * std::numbers::pi);
}

double RollingCircumference::turnsPerKilometre() const {
  return metres(1000) / circumference;
}

Result<RollingCircumference> circumferenceFromDiameter(Length diameter,
                                                       RollingConvention convention,
                                                       Length treadWorn) {
  if (auto error = firstBad(
          {{"diameter", diameter.si()}, {"tread_worn", treadWorn.si(), Need::NotNegative}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (treadWorn > diameter * kMostWorn) {
    return tl::make_unexpected(outOfRange("tread_worn", "0 to a tenth of the diameter"));
  }
  const auto factor = factorOf(convention);
  if (!factor) {
    return tl::make_unexpected(
        outOfRange("convention", "one that goes by the diameter of the tyre"));
  }
  return RollingCircumference{*factor * (diameter - 2 * treadWorn), kUncertaintyOfMarking,
                              convention};
}

Result<RollingCircumference> circumferenceFromStaticRadius(Length radius) {
  if (auto error = firstBad({{"static_radius", radius.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  return RollingCircumference{2 * std::numbers::pi * radius, kUncertaintyOfMarking,
                              RollingConvention::StaticRadius};
}

Result<RollingCircumference> circumferenceFromRollOut(Length way, int turns) {
  if (auto error = firstBad({{"roll_out", way.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (turns < 1 || turns > kMostTurns) return tl::make_unexpected(outOfRange("turns", "1 to 100"));
  return RollingCircumference{way / turns, kUncertaintyOfRollOut, RollingConvention::RollOut};
}

Result<RollingCircumference> withUncertainty(RollingCircumference rolling, double relative) {
  if (!(relative > 0 && relative <= kMostUncertainty)) {
    return tl::make_unexpected(outOfRange("circumference_uncertainty", "more than 0, up to 0.2"));
  }
  rolling.relativeUncertainty = relative;
  return rolling;
}

Result<RollingCircumference> atSpeed(RollingCircumference rolling, Speed speed) {
  const double kilometres = inKilometresPerHour(speed);
  if (!(kilometres >= 0 && kilometres <= kMostSpeed)) {
    return tl::make_unexpected(outOfRange("speed", "0 to 300 km/h"));
  }
  rolling.circumference = atReferenceSpeed(rolling) * growth(kilometres);
  return rolling;
}

Result<RollingCircumference> atTurnRate(RollingCircumference rolling, Frequency turns) {
  if (auto error = firstBad({{"frequency", turns.si(), Need::NotNegative}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const Length reference = atReferenceSpeed(rolling);
  const Speed unhindered = Speed::fromSi(turns.si() * reference.si());
  const double share = inKilometresPerHour(unhindered) / kSpeedForDouble;
  const double fastest = growth(kMostSpeed);
  const double grown = share < 1 ? growth(0) / (1 - share) : fastest;
  rolling.circumference = reference * std::min(grown, fastest);
  return rolling;
}

}  // namespace mechanics
}  // namespace sw
