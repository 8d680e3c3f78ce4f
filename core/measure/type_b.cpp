// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/type_b.h"

#include <cmath>
#include <numbers>

namespace sw::measure {

namespace {

/// Below this the exact u(cos) is a difference of nearly equal numbers.
constexpr double kSmallAngle = 3.0 * std::numbers::pi / 180.0;

struct LengthCoefficients {
  double fixed;     ///< a, mm
  double perMetre;  ///< b, mm per started metre
  double endFace;   ///< c, mm
};

LengthCoefficients coefficientsOf(LengthClass accuracyClass) {
  switch (accuracyClass) {
    case LengthClass::One:
      return {0.1, 0.1, 0.1};
    case LengthClass::Two:
      return {0.3, 0.2, 0.2};
    case LengthClass::Three:
      return {0.6, 0.4, 0.3};
  }
  return {0.6, 0.4, 0.3};
}

}  // namespace

double rectangular(double halfWidth) {
  return halfWidth / std::sqrt(3.0);
}
double triangular(double halfWidth) {
  return halfWidth / std::sqrt(6.0);
}
double arcsine(double halfWidth) {
  return halfWidth / std::sqrt(2.0);
}
double graduationUncertainty(double graduation) {
  return graduation / std::sqrt(12.0);
}

double Trapezoid::standardUncertainty() const {
  const double a = wide + narrow;
  if (a == 0) return 0;
  const double beta = (wide - narrow) / a;
  return a * std::sqrt((1 + beta * beta) / 6);
}

double Trapezoid::coverageFactor(double probability) const {
  const double a = wide + narrow;
  const double beta = a == 0 ? 0 : (wide - narrow) / a;
  const double square = beta * beta;
  return (1 - std::sqrt((1 - probability) * (1 - square))) / std::sqrt((1 + square) / 6);
}

double fromCertificate(double expandedUncertainty, double coverageFactor) {
  return expandedUncertainty / coverageFactor;
}

double fromConfidenceLimits(double halfWidth, double probability, DegreesOfFreedom nu) {
  return halfWidth / studentQuantile((1 + probability) / 2, nu);
}

ShiftedUncertainty asymmetric(double above, double below) {
  return {(above - below) / 2, (above + below) / std::sqrt(12.0)};
}

double degreesOfFreedomFromDoubt(double relativeDoubt) {
  return 0.5 / (relativeDoubt * relativeDoubt);
}

Result<AngleFactor> pullAngleFactor(double halfWidthRadians) {
  const double a = halfWidthRadians;
  if (!std::isfinite(a))
    return fail(ErrorCode::OutOfRange, "measure.not_finite", "pull_angle_within");
  if (a < 0 || a >= std::numbers::pi / 2) {
    return fail(ErrorCode::OutOfRange, "measure.angle_too_large", "pull_angle_within");
  }
  if (a == 0) return AngleFactor{};
  const double mean = std::sin(a) / a;
  if (a < kSmallAngle) return AngleFactor{mean, a * a / std::sqrt(45.0)};
  return AngleFactor{mean, std::sqrt(0.5 + std::sin(2 * a) / (4 * a) - mean * mean)};
}

double measuredAngleUncertainty(double reading, double angle, double angleUncertainty) {
  return std::abs(reading * std::sin(angle)) * angleUncertainty;
}

double lengthMeasureError(LengthClass accuracyClass, double length, LengthStart start) {
  const LengthCoefficients c = coefficientsOf(accuracyClass);
  // A length that is a whole number of metres but for rounding must not start another metre.
  const double metresStarted = std::ceil(length - 1e-9);
  const double fromFace = start == LengthStart::EndFace ? c.endFace : 0.0;
  return (c.fixed + c.perMetre * metresStarted + fromFace) / 1000.0;
}

}  // namespace sw::measure
