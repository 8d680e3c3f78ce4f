// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/axle_lift.h"

#include <cmath>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/value_checks.h"

namespace sw {

namespace mechanics {

namespace {

constexpr Angle kMostWedge = degrees(45);
constexpr Angle kMostCaster = degrees(30);

double signOf(ArmLayout layout) {
  switch (layout) {
    case ArmLayout::Leading:
      return -1;
    case ArmLayout::Trailing:
      return 1;
    case ArmLayout::Parallel:
      break;
  }
  return 0;
}

}  // namespace

std::string_view word(ArmLayout layout) {
  return wordOf(layout);
}

Result<Angle> casterChange(const AxleLift& lift) {
  if (auto error = firstBad({{"arm_length", lift.armLength.si()},
                             {"pivot_height", lift.pivotHeight.si(), Need::Any},
                             {"lift", lift.lift.si(), Need::Any}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const double before = lift.pivotHeight / lift.armLength;
  const double after = (lift.pivotHeight + lift.lift) / lift.armLength;
  if (std::abs(before) >= 1) {
    return tl::make_unexpected(outOfRange("pivot_height", "less than the length of the arm"));
  }
  if (std::abs(after) >= 1) {
    return tl::make_unexpected(
        outOfRange("lift", "so that the pivot stays less than the arm's length above the axle"));
  }
  return radians(signOf(lift.layout) * (std::asin(after) - std::asin(before)));
}

Result<Angle> casterAfter(Angle before, Angle change) {
  if (auto error = badAngle("caster_before", before, kMostCaster, "-30 to 30 deg")) {
    return tl::make_unexpected(std::move(*error));
  }
  return before + change;
}

Result<Angle> wedgeAngle(const Wedge& wedge) {
  if (auto error = firstBad({{"wedge_length", wedge.length.si()},
                             {"wedge_rise", wedge.rise.si(), Need::NotNegative}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (wedge.rise >= wedge.length) {
    return tl::make_unexpected(outOfRange("wedge_rise", "less than the length of the wedge"));
  }
  return radians(std::atan(wedge.rise / wedge.length));
}

Result<Length> wedgeRise(Angle angle, Length length) {
  if (auto error = firstBad({{"wedge_length", length.si()}, {"angle", angle.si(), Need::Any}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (std::abs(angle.si()) >= kMostWedge.si()) {
    return tl::make_unexpected(outOfRange("angle", "less than 45 deg"));
  }
  return length * std::tan(std::abs(angle.si()));
}

}  // namespace mechanics
}  // namespace sw
