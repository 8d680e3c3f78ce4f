// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "mechanics/swivel/shim_packs.h"
#include "model/words.h"

namespace sw::procedures {

/// What a thinner pack does under this layout. Source: interference = (bearings + pin + inner
/// shims) - (housing depth + flange shims), so flange shims take preload away and inner shims add
/// it.
[[nodiscard]] constexpr mechanics::ShimEffect shimEffect(model::ShimLayout layout) {
  return layout == model::ShimLayout::CapFlange ? mechanics::ShimEffect::ThinnerRaises
                                                : mechanics::ShimEffect::ThickerRaises;
}

}  // namespace sw::procedures
