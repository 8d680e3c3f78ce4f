// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/series_budget.h"

#include <cmath>

#include "measure/instrument.h"

namespace sw::measure {

namespace {

constexpr std::string_view kScatter = "scatter";
constexpr std::string_view kGraduation = "graduation";
constexpr std::string_view kPermissible = "permissible_error";
constexpr std::string_view kOwnCheck = "own_check";
constexpr std::string_view kLocal = "local_error";
constexpr std::string_view kAngle = "angle";

double permissibleUncertainty(const InstrumentCapability& instrument) {
  const double error = instrument.permissibleError.value_or(0);
  switch (instrument.errorShape) {
    case ErrorShape::Rectangular:
      return rectangular(error);
    case ErrorShape::Triangular:
      return triangular(error);
    case ErrorShape::Certificate:
      return fromCertificate(error, instrument.coverageFactor);
  }
  return rectangular(error);
}

void addInstrument(const InstrumentCapability& instrument, double centre, double factor,
                   std::vector<BudgetLine>& lines) {
  const double graduation = graduationUncertainty(instrument.graduation) * factor;
  if (instrument.differenceOfTwo) {
    lines.push_back({kGraduation, graduation * std::sqrt(2.0), {}});
    if (instrument.localError) {
      lines.push_back({kLocal, rectangular(*instrument.localError) * factor, {}});
    }
    return;
  }
  lines.push_back({kGraduation, graduation, {}});
  if (ownCheckCounts(instrument, centre)) {
    const auto own = correctionFrom(*instrument.check, instrument.graduation);
    lines.push_back({kOwnCheck, own.standardUncertainty * factor, {}});
  } else if (instrument.permissibleError) {
    lines.push_back({kPermissible, permissibleUncertainty(instrument) * factor, {}});
  }
}

template <class Predicate>
double rootOfSquares(const std::vector<BudgetLine>& lines, Predicate counts) {
  double squares = 0;
  for (const BudgetLine& line : lines) {
    if (counts(line)) squares += line.standardUncertainty * line.standardUncertainty;
  }
  return std::sqrt(squares);
}

}  // namespace

bool ownCheckCounts(const InstrumentCapability& instrument, double centre) {
  return instrument.check && !instrument.differenceOfTwo && covers(*instrument.check, centre);
}

bool instrumentErrorKnown(const InstrumentCapability& instrument, double centre) {
  return instrument.differenceOfTwo || instrument.permissibleError ||
         ownCheckCounts(instrument, centre);
}

Result<Correction> correctionOf(const SeriesInput& input, double centre) {
  const auto angle = pullAngleFactor(input.pullAngleWithin);
  if (!angle) return failAs(angle);
  Correction correction{*angle, 0};
  if (ownCheckCounts(input.instrument, centre)) {
    correction.offset =
        correctionFrom(*input.instrument.check, input.instrument.graduation).correction;
  }
  return correction;
}

std::vector<BudgetLine> budgetOf(const SeriesInput& input, const SeriesCentre& centre,
                                 const Correction& correction, int readings) {
  std::vector<BudgetLine> lines;
  const double factor = correction.angle.factor;
  if (centre.scatter) {
    const double u = centre.spreadFactor * centre.scatter->standardDeviation /
                     std::sqrt(static_cast<double>(readings));
    lines.push_back({kScatter, u * factor, centre.scatter->degreesOfFreedom});
  }
  addInstrument(input.instrument, centre.value, factor, lines);
  if (input.pullAngleWithin > 0) {
    const double reading = std::abs(centre.value + correction.offset);
    lines.push_back({kAngle, reading * correction.angle.standardUncertainty, {}});
  }
  return lines;
}

Combined combineLines(const std::vector<BudgetLine>& lines) {
  std::vector<Component> components;
  components.reserve(lines.size());
  for (const BudgetLine& line : lines) {
    components.push_back({line.standardUncertainty, line.degreesOfFreedom, 1});
  }
  return combine(components);
}

double instrumentUncertainty(const std::vector<BudgetLine>& lines) {
  return rootOfSquares(lines, [](const BudgetLine& line) {
    return line.source != kScatter && line.source != kAngle;
  });
}

double scatterUncertainty(const std::vector<BudgetLine>& lines) {
  return rootOfSquares(lines, [](const BudgetLine& line) { return line.source == kScatter; });
}

double otherUncertainty(const std::vector<BudgetLine>& lines) {
  return rootOfSquares(lines, [](const BudgetLine& line) { return line.source != kScatter; });
}

}  // namespace sw::measure
