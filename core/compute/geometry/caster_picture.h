// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "measure/evaluation.h"
#include "units/quantity.h"

namespace sw::compute {

struct CasterDrawing {
  Angle caster;  ///< with the frame level
  std::optional<Angle> inclination;
  Angle standardUncertainty;
  std::optional<LimitBand> limit;
  Verdict verdict = Verdict::NoLimit;
};

/// The wheel from the side with its leaning axis, from the front where the inclination is known,
/// and the caster against its limits.
[[nodiscard]] figure::Figure casterPicture(const CasterDrawing& drawing, figure::Size size);

}  // namespace sw::compute
