// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/brakes/disc_index.h"
#include "mechanics/judged.h"

namespace sw::compute {

/// What tilt adds to the total at each way round, the best one marked; where there is room, the
/// disc with the way it is turned on.
[[nodiscard]] figure::Figure discIndexPicture(const mechanics::DiscIndex& index,
                                              const mechanics::Judged<Length>& best,
                                              const std::optional<Length>& limit,
                                              figure::Size size);

}  // namespace sw::compute
