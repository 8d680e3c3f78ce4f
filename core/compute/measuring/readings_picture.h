// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compute/calculation.h"
#include "measure/evaluation.h"
#include "units/unit.h"

namespace sw::compute {

/// Repeated readings against a limit; all values SI.
struct ReadingsShown {
  std::string title;  ///< of the picture
  std::string what;   ///< on the axis: "play"
  QuantityKind kind = QuantityKind::Force;
  std::vector<double> readings;
  std::optional<std::size_t> outlier;
  double value = 0;  ///< judged
  double expandedUncertainty = 0;
  LimitBand limit;
  std::string limitName;  ///< before its ends: "plausible"; empty: none
  Verdict verdict = Verdict::NoLimit;
  LimitSide side = LimitSide::None;
};

/// Value over the number of the reading; the mean with its uncertainty at the end; the limits.
[[nodiscard]] figure::Figure readingsPicture(const ReadingsShown& shown, figure::Size size);

}  // namespace sw::compute
