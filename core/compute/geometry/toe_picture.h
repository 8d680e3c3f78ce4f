// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "measure/evaluation.h"
#include "units/quantity.h"

namespace sw::compute {

struct ToeDrawing {
  Angle left, right;  ///< toe-in positive
  Length total;       ///< at the diameter
  Length diameter;
  Length standardUncertainty;
  std::optional<LimitBand> limit;  ///< as an angle
  Verdict verdict = Verdict::NoLimit;
};

/// The wheels from above, their angles enlarged, and the total against its limits.
[[nodiscard]] figure::Figure toePicture(const ToeDrawing& drawing, figure::Size size);

}  // namespace sw::compute
