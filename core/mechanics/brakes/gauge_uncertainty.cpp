// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/gauge_uncertainty.h"

#include <cmath>

#include "measure/series_budget.h"
#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

/// The lines of one value of this gauge; `readings` is how many of them the value is made from.
std::vector<BudgetLine> linesOf(const GaugeReading& gauge, double readings) {
  SeriesInput input;
  input.kind = QuantityKind::Length;
  input.instrument = gauge.instrument;
  input.instrument.check.reset();
  input.instrument.differenceOfTwo = readings > 1;
  measure::SeriesCentre centre;
  if (gauge.repeatability) {
    centre.scatter = {gauge.repeatability->standardDeviation,
                      gauge.repeatability->degreesOfFreedom};
    centre.spreadFactor = std::sqrt(readings / gauge.averagedOver);
  }
  return measure::budgetOf(input, centre, {}, 1);
}

}  // namespace

measure::Combined uncertaintyOfReading(const GaugeReading& gauge) {
  return measure::combineLines(linesOf(gauge, 1));
}

measure::Combined uncertaintyOfDifference(const GaugeReading& gauge) {
  return measure::combineLines(linesOf(gauge, 2));
}

double instrumentPartOfDifference(const GaugeReading& gauge) {
  return measure::instrumentUncertainty(linesOf(gauge, 2));
}

Result<void> checkGauge(const GaugeReading& gauge) {
  NumberChecks checks;
  checks.positive("instrument/graduation", gauge.instrument.graduation)
      .positive("instrument/permissible_error", gauge.instrument.permissibleError)
      .positive("instrument/local_error", gauge.instrument.localError);
  if (gauge.repeatability) {
    checks.positive("repeatability/amount", gauge.repeatability->standardDeviation)
        .positive("repeatability/readings", gauge.repeatability->degreesOfFreedom);
  }
  return checks.done();
}

}  // namespace sw::mechanics
