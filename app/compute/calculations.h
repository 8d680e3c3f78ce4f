// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"

// One pair of functions a calculation, each in <name>_compute.cpp; the table is in calculation.cpp.

namespace sw::compute {

[[nodiscard]] Description describeSeries();
[[nodiscard]] Result<Outcome> runSeries(const Json& json);

[[nodiscard]] Description describeConvert();
[[nodiscard]] Result<Outcome> runConvert(const Json& json);

[[nodiscard]] Description describeCompareFigures();
[[nodiscard]] Result<Outcome> runCompareFigures(const Json& json);

[[nodiscard]] Description describeStartingForce();
[[nodiscard]] Result<Outcome> runStartingForce(const Json& json);

[[nodiscard]] Description describeStandLoad();
[[nodiscard]] Result<Outcome> runStandLoad(const Json& json);

[[nodiscard]] Description describeTighteningOrder();
[[nodiscard]] Result<Outcome> runTighteningOrder(const Json& json);

}  // namespace sw::compute
