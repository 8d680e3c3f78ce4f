// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/description.h"
#include "compute/input_reader.h"
#include "mechanics/swivel/shim_packs.h"

// What the calculations about shim packs have in common.

namespace sw::compute {

/// "layout": "cap_flange" | "inner".
[[nodiscard]] mechanics::ShimEffect readLayout(InputReader& reader);
/// "shims", "max_pack", "max_count".
[[nodiscard]] mechanics::ShimStock readStock(InputReader& reader);
/// {"pack","shims","count"}.
[[nodiscard]] Json packJson(const mechanics::AllowedPack& pack);

[[nodiscard]] FieldDescription layoutField();
[[nodiscard]] std::vector<FieldDescription> stockFields();
[[nodiscard]] std::vector<FieldDescription> packFields();

}  // namespace sw::compute
