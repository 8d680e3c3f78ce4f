// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "mechanics/swivel/shim_packs.h"
#include "units/typed_quantity.h"

namespace sw::workshop {

/// Internal to core/workshop: what a stack of shims adds up to, as a pack records it, in mm.
[[nodiscard]] TypedQuantity stackTotal(const mechanics::ShimStack& stack);

}  // namespace sw::workshop
