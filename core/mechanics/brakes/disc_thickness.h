// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/brakes/even_samples.h"
#include "mechanics/judged.h"

// METHOD CARD: thickness of a brake disc at even steps round it
// Formula: minimum, mean, variation = largest - smallest, orders 1 to 4 (even_samples.h); taper =
//   mean at the other radius - mean of the readings.
// Uncertainty: one reading: graduation d / sqrt(12), permissible error, repeatability. A difference
//   of two readings of one instrument: its own error cancels, graduation and repeatability count
//   twice, a stated local error stays. Difference of two means: the same, the repeatability over
//   the points, the graduation not (a coarse scale repeats its error).
// Verdicts: minimum against discard must be proved above it; it is undecided where the instrument's
//   error is unknown, and never within where a caliper stands on a lip of rust or wear, which reads
//   thick (below discard it still condemns). Variation against its limit: not within with fewer
//   than 8 points, which are blind to orders above the first; the instrument is too coarse where
//   even the middle of 0 to limit could not be proved, unless the variation lies outside anyway.
// Source: JCGM 100:2008, JCGM 106:2012 (from memory); eight to twelve points, common practice, no
//   source; four for wear: government maintenance manuals (micrometer, equally spaced, one radius).
// Valid range: 4 points or more at even steps, thickness > 0.
// Assumptions: clean bright faces, all points at one radius, anvils that reach the worn track.
// When not to use: the mean of few points says nothing of one thin spot between them; scatter of
//   the readings makes the variation read high, few points make it read low.
// Degenerate cases: equal readings: variation 0, the graduation stays.
// Reference test: tests/core/mechanics/brakes/disc_thickness_test.cpp.

namespace sw::mechanics {

/// What touched the disc. A caliper over a lip spans lip and track.
enum class ThicknessGauge { Micrometer, CaliperOverLip };
[[nodiscard]] std::string_view word(ThicknessGauge gauge);

inline constexpr int kFewestWearPoints = 4;
inline constexpr int kFewestJudderPoints = 8;
inline constexpr int kUsualPoints = 12;
/// A typed variation limit above this is probably a slipped decimal.
inline constexpr Length kLargeVariationLimit = millimetres(0.05);

struct DiscThicknessInput {
  std::vector<Length> readings;     ///< at even steps, one radius
  std::vector<Length> otherRadius;  ///< a second set, or empty
  InstrumentCapability instrument;
  std::optional<PooledScatter> repeatability;  ///< of readings repeated at one spot
  ThicknessGauge gauge = ThicknessGauge::Micrometer;
  std::optional<Length> discard;
  std::optional<Length> variationLimit;
  double confidence = 0.95;
};

struct DiscThickness {
  Extent extent;                                 ///< of the first set
  Judged<Length> minimum;                        ///< of both sets, against discard
  Judged<Length> variation;                      ///< the larger of both sets, against its limit
  Verdict variationDecision = Verdict::NoLimit;  ///< by probability alone
  std::vector<Order> orders;                     ///< of the first set
  std::optional<Judged<Length>> taper;           ///< without a limit
  bool instrumentErrorKnown = true;
};

/// Errors: OutOfRange "disc_thickness.too_few_points" (field; details: points, least);
/// "measure.not_positive", "measure.not_finite", "measure.bad_confidence".
[[nodiscard]] Result<DiscThickness> discThickness(const DiscThicknessInput& input);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::ThicknessGauge> {
  using E = mechanics::ThicknessGauge;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Micrometer, "micrometer"}, {E::CaliperOverLip, "caliper_over_lip"}}};
};

}  // namespace sw
