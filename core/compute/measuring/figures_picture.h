// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "measure/compare_figures.h"
#include "units/typed_quantity.h"

namespace sw::compute {

/// Two figures of one limit as the ranges of values that round to them, one above the other.
[[nodiscard]] figure::Figure figuresPicture(const TypedQuantity& first, const TypedQuantity& second,
                                            const FigureComparison& compared, figure::Size size);

}  // namespace sw::compute
