// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/trail.h"

#include <cmath>
#include <string_view>
#include <utility>

#include "mechanics/wheels/value_checks.h"

namespace sw::mechanics {

namespace {

constexpr Angle kMostAngle = degrees(30);

std::optional<Error> checkAngle(std::string_view field, Angle angle) {
  return badAngle(field, angle, kMostAngle, "-30 to 30 deg");
}

}  // namespace

Result<Length> casterTrail(const TrailInput& input) {
  if (auto error = firstBad({{"loaded_radius", input.loadedRadius.si()},
                             {"hub_offset", input.hubOffset.si(), Need::Any}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = checkAngle("caster", input.caster)) {
    return tl::make_unexpected(std::move(*error));
  }
  return input.loadedRadius * std::tan(input.caster.si()) - input.hubOffset;
}

Result<Length> scrub(const ScrubInput& input) {
  if (auto error = firstBad({{"axis_to_wheel", input.axisToWheel.si(), Need::Any},
                             {"loaded_radius", input.loadedRadius.si()},
                             {"spacer", input.spacer.si(), Need::Any},
                             {"kingpin_inclination", input.inclination.si(), Need::Any},
                             {"camber", input.camber.si(), Need::Any}})) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = checkAngle("kingpin_inclination", input.inclination)) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = checkAngle("camber", input.camber)) {
    return tl::make_unexpected(std::move(*error));
  }
  const double lean = std::tan(input.inclination.si()) + std::tan(input.camber.si());
  return input.axisToWheel + input.spacer - input.loadedRadius * lean;
}

}  // namespace sw::mechanics
