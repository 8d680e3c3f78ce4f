// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "mechanics/swivel/first_pack.h"

namespace sw::compute {

/// A nip: the gaps at the bolts beside the packs that can be made. An end float: the chain from the
/// pack found to the pack wanted, and the packs beside it.
[[nodiscard]] figure::Figure firstPackPicture(const mechanics::FirstPackInput& input,
                                              const mechanics::FirstPack& first, figure::Size size);

}  // namespace sw::compute
