// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/support/stand_load.h"

namespace sw::compute {

/// The axle on its stands, and what each must be rated for beside what it is rated for.
[[nodiscard]] figure::Figure standLoadPicture(const StandInput& input, const StandOutcome& load,
                                              figure::Size size);

}  // namespace sw::compute
