// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "mechanics/wheels/balance.h"
#include "mechanics/wheels/balance_four_run.h"

namespace sw::compute {

/// The wheel with the weight to fit, and beside it the readings with what the trial did.
[[nodiscard]] figure::Figure onePlanePicture(const mechanics::OnePlaneRuns& runs,
                                             const mechanics::OnePlaneBalance& balance,
                                             const std::optional<mechanics::WeightVector>& fitted,
                                             figure::Size size);

/// Inner and outer plane side by side with the weights to fit.
[[nodiscard]] figure::Figure twoPlanePicture(const mechanics::TwoPlaneBalance& balance,
                                             const std::optional<mechanics::WeightPair>& fitted,
                                             figure::Size size);

/// The wheel with the weight to fit, and beside it how the circles of the runs meet.
[[nodiscard]] figure::Figure fourRunPicture(const mechanics::FourRuns& runs,
                                            const mechanics::FourRunBalance& balance,
                                            figure::Size size);

}  // namespace sw::compute
