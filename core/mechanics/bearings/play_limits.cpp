// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/play_limits.h"

#include <array>

#include "base/words.h"
#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

constexpr double kKingpinShare = 10.0 / 500.0;
constexpr Mass kHeavy = kilograms(10000 * factor::kKilogramsPerPound);
constexpr Length kBoxLash = millimetres(75);
constexpr Length kRackLash = millimetres(13);
constexpr Length kLashWheel = millimetres(380);

/// From this size on the limit is this.
struct LashStep {
  Length from, limit;
};
constexpr std::array kLashSteps{LashStep{inches(22), inches(2.75)},
                                LashStep{inches(20), inches(2.5)},
                                LashStep{inches(18), inches(2.25)}, LashStep{Length{}, inches(2)}};

// A size typed in millimetres is not below its inches by a rounding.
constexpr Length kRounding = metres(1e-9);

Result<void> diameterChecked(std::string_view field, Length diameter) {
  return NumberChecks().positive(field, diameter).done();
}

}  // namespace

std::string_view word(SteeringGear gear) {
  return wordOf(gear);
}

Result<Length> kingpinRockLimit(Length wheelDiameter) {
  if (auto checked = diameterChecked("wheel_diameter", wheelDiameter); !checked) {
    return failAs(checked);
  }
  return kKingpinShare * wheelDiameter;
}

Result<Length> linkageRockLimit(Length rimDiameter, Mass grossMass) {
  const auto checked =
      NumberChecks().positive("rim_diameter", rimDiameter).positive("gross_mass", grossMass).done();
  if (!checked) return failAs(checked);
  if (grossMass <= kHeavy || rimDiameter <= inches(16) + kRounding) return inches(0.25);
  return rimDiameter <= inches(18) + kRounding ? inches(0.375) : inches(0.5);
}

Result<Length> steeringLashLimit(Length steeringWheelDiameter) {
  const auto checked = diameterChecked("steering_wheel_diameter", steeringWheelDiameter);
  if (!checked) return failAs(checked);
  for (const LashStep& step : kLashSteps) {
    if (steeringWheelDiameter >= step.from - kRounding) return step.limit;
  }
  return kLashSteps.back().limit;
}

Result<Length> steeringLashLimit(Length steeringWheelDiameter, SteeringGear gear) {
  const auto checked = diameterChecked("steering_wheel_diameter", steeringWheelDiameter);
  if (!checked) return failAs(checked);
  const Length lash = gear == SteeringGear::Box ? kBoxLash : kRackLash;
  return lash * (steeringWheelDiameter / kLashWheel);
}

}  // namespace sw::mechanics
