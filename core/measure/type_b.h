// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/result.h"
#include "measure/distributions.h"

// METHOD CARD: uncertainty from knowledge other than repetition (type B evaluation)
// Formula: standard uncertainty of a quantity known to lie within +/-a
//   rectangular a / sqrt(3); triangular a / sqrt(6); arcsine (cycling between the ends) a /
//   sqrt(2); trapezoid of two rectangular parts a1 >= a2: a sqrt((1 + b^2) / 6), a = a1 + a2, b =
//   (a1 - a2) / a, coverage factor k_p = (1 - sqrt((1 - p)(1 - b^2))) / sqrt((1 + b^2) / 6);
//   graduation d read to the nearest mark: rectangular with half-width d / 2;
//   certificate U with factor k: U / k; limits +/-a at probability p with nu: a / t_{(1+p)/2}(nu);
//   limits +b1 / -b2: (b1 + b2) / sqrt(12), value shifted by (b1 - b2) / 2.
// Source: JCGM 100:2008 4.3 and F.2 (from memory); EA-4/02 S10 (from memory) for the trapezoid.
// Pull angle: useful force F = R cos(th). With th anywhere within +/-a: mean of cos = sin(a) / a,
//   u(cos) = sqrt(1/2 + sin(2a) / (4a) - mean^2), below 3 degrees a^2 / sqrt(45) because the exact
//   form cancels. A pull off the line always reads high, so the mean is corrected, not only
//   widened.
// Length measures: MPE = a + b L mm, L in metres rounded up; the classes of UK SI 2016/1153
//   schedule 1I (seen).
// Valid range: half-widths >= 0; angle 0 <= a < pi / 2; probabilities in (0, 1).
// Degenerate cases: a = 0 gives factor 1 and u = 0.
// Reference test: tests/core/measure/type_b_test.cpp.

namespace sw::measure {

[[nodiscard]] double rectangular(double halfWidth);
[[nodiscard]] double triangular(double halfWidth);
[[nodiscard]] double arcsine(double halfWidth);
/// One reading to the nearest mark.
[[nodiscard]] double graduationUncertainty(double graduation);

/// Sum of two rectangular errors.
struct Trapezoid {
  double wide = 0;    ///< half-width of the wider part
  double narrow = 0;  ///< half-width of the narrower part

  [[nodiscard]] double standardUncertainty() const;
  /// Factor k_p for coverage probability p. Holds for p above the share of the flat top.
  [[nodiscard]] double coverageFactor(double probability) const;
};

[[nodiscard]] double fromCertificate(double expandedUncertainty, double coverageFactor);
/// Limits +/-a stated for probability p with nu degrees of freedom.
[[nodiscard]] double fromConfidenceLimits(double halfWidth, double probability,
                                          DegreesOfFreedom nu);

struct ShiftedUncertainty {
  double shift = 0;  ///< to be added to the value
  double standardUncertainty = 0;
};
/// Limits +above / -below around the value.
[[nodiscard]] ShiftedUncertainty asymmetric(double above, double below);

/// Degrees of freedom of a standard uncertainty that is itself in doubt by the fraction du / u.
/// Source: JCGM 100:2008 G.4.2 (from memory).
[[nodiscard]] double degreesOfFreedomFromDoubt(double relativeDoubt);

/// What a pull whose direction is only known within +/-a does to the reading.
struct AngleFactor {
  double factor = 1;               ///< mean of cos: multiply the reading by it
  double standardUncertainty = 0;  ///< of the factor
};
/// Errors: OutOfRange "measure.angle_too_large" unless 0 <= a < pi / 2; "measure.not_finite".
[[nodiscard]] Result<AngleFactor> pullAngleFactor(double halfWidthRadians);
/// Uncertainty of R cos(th) from a measured angle th.
[[nodiscard]] double measuredAngleUncertainty(double reading, double angle,
                                              double angleUncertainty);

enum class LengthClass { One, Two, Three };
enum class LengthStart { BetweenMarks, EndFace };
/// Largest permissible error, metres, of a material measure of length over `length` metres.
[[nodiscard]] double lengthMeasureError(LengthClass accuracyClass, double length,
                                        LengthStart start);

}  // namespace sw::measure
