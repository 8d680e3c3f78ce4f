// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "units/quantity.h"

namespace sw::compute {

struct TyreDrawing {
  Length diameter;  ///< free, measured or nominal
  Length rimDiameter;
  Length width;
  std::optional<Length> least, most;  ///< what new ones of this size may measure
};

/// The tyre from the side and in section, to one scale.
[[nodiscard]] figure::Figure tyrePicture(const TyreDrawing& drawing, figure::Size size);

}  // namespace sw::compute
