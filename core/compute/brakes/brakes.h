// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeDiscThickness();
[[nodiscard]] Result<Outcome> runDiscThickness(const Json& json);
[[nodiscard]] Description describeDiscDecision();
[[nodiscard]] Result<Outcome> runDiscDecision(const Json& json);
[[nodiscard]] Description describeDiscRunout();
[[nodiscard]] Result<Outcome> runDiscRunout(const Json& json);
[[nodiscard]] Description describeRunoutAtTrack();
[[nodiscard]] Result<Outcome> runRunoutAtTrack(const Json& json);
[[nodiscard]] Description describeDiscIndex();
[[nodiscard]] Result<Outcome> runDiscIndex(const Json& json);
[[nodiscard]] Description describeDiscWear();
[[nodiscard]] Result<Outcome> runDiscWear(const Json& json);
[[nodiscard]] Description describeBrakeTorqueVariation();
[[nodiscard]] Result<Outcome> runBrakeTorqueVariation(const Json& json);

}  // namespace sw::compute
