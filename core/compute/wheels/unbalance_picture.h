// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "measure/evaluation.h"
#include "mechanics/wheels/unbalance.h"

namespace sw::compute {

struct UnbalanceDrawing {
  mechanics::UnbalanceAtSpeed unbalance;
  Length radius;  ///< of the weights
  std::optional<Mass> limitEachPlane;
  Verdict inner = Verdict::NoLimit;
  Verdict outer = Verdict::NoLimit;
};
/// The vectors of both planes and their sum against the limit, and what they do.
[[nodiscard]] figure::Figure unbalancePicture(const UnbalanceDrawing& drawing, figure::Size size);

}  // namespace sw::compute
