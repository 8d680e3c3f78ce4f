// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "base/result.h"
#include "mechanics/wheels/tyre_designation.h"
#include "units/quantity.h"

// METHOD CARD: nominal dimensions of a tyre from its marking
// Formula: D = d + 2 H, d = 25.4 mm * rim code, H = aspect * section width (metric); D as marked in
//   inches and H = (D - d) / 2 (flotation). Free diameter of a metric radial: d + 2 H * 0.97 to
//   d + 2 H * 1.04. Section width on another rim: S = S1 + 0.4 (A - A1), A1 the rim it is measured
//   on.
// Source: ISO 4000-1, UN R30 (from memory); the 0.4 from the clauses on section width of UN
//   amendments.
// Assumptions: a metric radial without a marked aspect has `assumedAspect`: trade lists say 82 %,
//   public explanations 80 %, 1.1 % of diameter apart, so it is a setting and is shown.
// When not to use: for a frequency finer than 3 %; measure the roll-out. The inches of a flotation
//   size are nominal: the tyre may be more than 1 % smaller.
// Valid range: assumed aspect 60 to 100 %; rim widths > 0, within 100 mm of each other.
// Degenerate cases: a size marked by its width in inches, or a metric one without aspect that is
//   not a radial, does not tell the diameter.
// Accuracy: 25.4 mm * code against whole millimetres in regulation tables: 0.4 mm.
// Reference test: tests/core/mechanics/wheels/tyre_dimensions_test.cpp.

namespace sw::mechanics {

inline constexpr double kUsualAspect = 82;

enum class AspectSource { Marked, Assumed, FromDiameter };
[[nodiscard]] std::string_view word(AspectSource source);

struct TyreDimensions {
  Length diameter;  ///< free, nominal
  Length rimDiameter;
  Length sectionHeight;
  double aspect = 0;  ///< percent
  AspectSource aspectSource = AspectSource::Marked;
};

[[nodiscard]] Length rimDiameter(const TyreDesignation& tyre);

/// Errors: Degenerate "tyre.not_computable"; OutOfRange "wheels.out_of_range" (assumed_aspect).
[[nodiscard]] Result<TyreDimensions> nominalDimensions(const TyreDesignation& tyre,
                                                       double assumedAspect = kUsualAspect);

struct LengthBand {
  Length least;
  Length most;
};
/// What new tyres of this size may measure, free; empty where no band is known: only metric radials
/// have one.
[[nodiscard]] std::optional<LengthBand> freeDiameterBand(const TyreDesignation& tyre,
                                                         const TyreDimensions& dimensions);

struct RimWidths {
  Length measured;  ///< the rim the section width is stated for
  Length fitted;
};
/// Errors: OutOfRange "measure.not_positive", "wheels.out_of_range" (rim_width).
[[nodiscard]] Result<Length> sectionWidthOnRim(Length sectionWidth, const RimWidths& rims);

}  // namespace sw::mechanics
