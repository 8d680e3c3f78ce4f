// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/wheel_frequency.h"

#include <cmath>

#include "mechanics/wheels/value_checks.h"

namespace sw::mechanics {

Result<UncertainFrequency> frequencyAtSpeed(const UncertainSpeed& speed,
                                            const RollingCircumference& rolling, double multiple) {
  if (auto error =
          firstBad({{"speed", speed.speed.si(), Need::NotNegative},
                    {"speed_uncertainty", speed.standardUncertainty.si(), Need::NotNegative},
                    {"circumference", rolling.circumference.si()},
                    {"multiple", multiple}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const double perSpeed = multiple / rolling.circumference.si();
  const double spread =
      std::hypot(speed.standardUncertainty.si(), speed.speed.si() * rolling.relativeUncertainty);
  return UncertainFrequency{Frequency::fromSi(speed.speed.si() * perSpeed),
                            Frequency::fromSi(spread * perSpeed)};
}

Result<UncertainSpeed> speedAtFrequency(const UncertainFrequency& frequency,
                                        const RollingCircumference& rolling, double multiple) {
  if (auto error = firstBad(
          {{"frequency", frequency.frequency.si(), Need::NotNegative},
           {"frequency_uncertainty", frequency.standardUncertainty.si(), Need::NotNegative},
           {"circumference", rolling.circumference.si()},
           {"multiple", multiple}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const double perFrequency = rolling.circumference.si() / multiple;
  const double spread = std::hypot(frequency.standardUncertainty.si(),
                                   frequency.frequency.si() * rolling.relativeUncertainty);
  return UncertainSpeed{Speed::fromSi(frequency.frequency.si() * perFrequency),
                        Speed::fromSi(spread * perFrequency)};
}

double trueOverDial(const RollingCircumference& tyreOn, const RollingCircumference& builtWith) {
  return tyreOn.circumference / builtWith.circumference;
}

}  // namespace sw::mechanics
