// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/tyre_dimensions.h"

#include <array>
#include <cmath>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/value_checks.h"

namespace sw {

template <>
struct Words<mechanics::AspectSource> {
  static constexpr std::array<std::pair<mechanics::AspectSource, std::string_view>, 3> table{
      {{mechanics::AspectSource::Marked, "marked"},
       {mechanics::AspectSource::Assumed, "assumed"},
       {mechanics::AspectSource::FromDiameter, "from_diameter"}}};
};

namespace mechanics {

namespace {

constexpr double kPercent = 100;

Result<TyreDimensions> notComputable() {
  return fail(ErrorCode::Degenerate, "tyre.not_computable", "tyre");
}

TyreDimensions fromAspect(const TyreDesignation& tyre, double aspect, AspectSource source) {
  TyreDimensions result;
  result.aspect = aspect;
  result.aspectSource = source;
  result.rimDiameter = rimDiameter(tyre);
  result.sectionHeight = tyre.sectionWidth * (aspect / kPercent);
  result.diameter = result.rimDiameter + 2 * result.sectionHeight;
  return result;
}

TyreDimensions fromDiameter(const TyreDesignation& tyre, Length diameter) {
  TyreDimensions result;
  result.diameter = diameter;
  result.rimDiameter = rimDiameter(tyre);
  result.sectionHeight = (diameter - result.rimDiameter) / 2;
  result.aspect = kPercent * (result.sectionHeight / tyre.sectionWidth);
  result.aspectSource = AspectSource::FromDiameter;
  return result;
}

}  // namespace

std::string_view word(AspectSource source) {
  return wordOf(source);
}

Length rimDiameter(const TyreDesignation& tyre) {
  return inches(tyre.rimCode);
}

Result<TyreDimensions> nominalDimensions(const TyreDesignation& tyre, double assumedAspect) {
  if (!(assumedAspect >= 60 && assumedAspect <= 100)) {
    return tl::make_unexpected(outOfRange("assumed_aspect", "60 to 100"));
  }
  switch (tyre.form) {
    case SizeForm::MetricWithAspect:
      if (!tyre.aspect) return notComputable();
      return fromAspect(tyre, *tyre.aspect, AspectSource::Marked);
    case SizeForm::MetricWithoutAspect:
      if (tyre.construction != TyreConstruction::Radial) return notComputable();
      return fromAspect(tyre, assumedAspect, AspectSource::Assumed);
    case SizeForm::Flotation:
      if (!tyre.overallDiameter) return notComputable();
      return fromDiameter(tyre, *tyre.overallDiameter);
    case SizeForm::InchWidth:
      return notComputable();
  }
  return notComputable();
}

std::optional<LengthBand> freeDiameterBand(const TyreDesignation& tyre,
                                           const TyreDimensions& dimensions) {
  constexpr double kLeast = 0.97;
  constexpr double kMost = 1.04;
  const bool metric =
      tyre.form == SizeForm::MetricWithAspect || tyre.form == SizeForm::MetricWithoutAspect;
  if (!metric || tyre.construction != TyreConstruction::Radial) return std::nullopt;
  const Length heights = 2 * dimensions.sectionHeight;
  return LengthBand{dimensions.rimDiameter + kLeast * heights,
                    dimensions.rimDiameter + kMost * heights};
}

Result<Length> sectionWidthOnRim(Length sectionWidth, const RimWidths& rims) {
  constexpr double kWidthPerRimWidth = 0.4;
  constexpr Length kMostApart = millimetres(100);
  if (auto error = firstBad({{"section_width", sectionWidth.si()},
                             {"measuring_rim_width", rims.measured.si()},
                             {"rim_width", rims.fitted.si()}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const Length apart = rims.fitted - rims.measured;
  if (std::abs(apart.si()) > kMostApart.si()) {
    return tl::make_unexpected(
        outOfRange("rim_width", "within 100 mm of the rim it is measured on"));
  }
  return sectionWidth + kWidthPerRimWidth * apart;
}

}  // namespace mechanics
}  // namespace sw
