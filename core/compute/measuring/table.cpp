// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/calculations.h"
#include "compute/measuring/measuring.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"series", "Repeated readings judged against a limit", Subject::Measuring,
                describeSeries, runSeries},
    Calculation{"straight-line", "The straight line through points", Subject::Measuring,
                describeStraightLine, runStraightLine},
    Calculation{"convert", "A quantity in another unit", Subject::Measuring, describeConvert,
                runConvert},
    Calculation{"compare-figures", "Do two figures of one limit agree?", Subject::Measuring,
                describeCompareFigures, runCompareFigures},
};

}  // namespace

std::span<const Calculation> measuringCalculations() {
  return kTable;
}

}  // namespace sw::compute
