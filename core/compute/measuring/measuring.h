// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

namespace sw::compute {

[[nodiscard]] Description describeSeries();
[[nodiscard]] Result<Outcome> runSeries(const Json& json);

[[nodiscard]] Description describeStraightLine();
[[nodiscard]] Result<Outcome> runStraightLine(const Json& json);

[[nodiscard]] Description describeConvert();
[[nodiscard]] Result<Outcome> runConvert(const Json& json);

[[nodiscard]] Description describeCompareFigures();
[[nodiscard]] Result<Outcome> runCompareFigures(const Json& json);

}  // namespace sw::compute
