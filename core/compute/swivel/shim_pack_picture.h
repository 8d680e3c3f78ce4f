// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/swivel/pack_advice.h"

namespace sw::compute {

/// Force over pack: the prediction with its middle 95 %, the limits, the pulls, the packs that can
/// be made and the one recommended.
[[nodiscard]] figure::Figure shimPackPicture(const mechanics::PackQuestion& question,
                                             const mechanics::PackAdvice& advice,
                                             figure::Size size);

}  // namespace sw::compute
