// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/compare_figures.h"

#include <charconv>
#include <cmath>

#include "units/format.h"

namespace sw {

namespace {

/// Intervals that touch in decimal may miss each other by a rounding of the doubles.
constexpr double kTouching = 1e-9;

int typedPlaces(const TypedQuantity& figure) {
  const auto point = figure.number.find('.');
  if (point == std::string::npos) return 0;
  const auto end = figure.number.find_first_of("eE", point);
  const auto last = end == std::string::npos ? figure.number.size() : end;
  return static_cast<int>(last - point - 1);
}

Result<Unit> unitOf(const TypedQuantity& figure) {
  const auto unit = findUnit(figure.kind, figure.unit);
  if (!unit) {
    return fail(ErrorCode::InvalidInput, "units.unknown_unit", {}, {{"unit", figure.unit}});
  }
  return *unit;
}

/// A value in a unit, rounded to so many places, as if it had been typed.
TypedQuantity rounded(double value, const Unit& unit, int places) {
  TypedQuantity figure;
  figure.kind = unit.kind;
  figure.number = fixedDecimal(value, places);
  figure.unit = std::string(unit.symbol);
  double shown = 0;
  std::from_chars(figure.number.data(), figure.number.data() + figure.number.size(), shown);
  figure.si = shown * unit.toSi;
  return figure;
}

}  // namespace

Result<FigureComparison> compareFigures(const TypedQuantity& first, const TypedQuantity& second) {
  if (first.kind != second.kind) {
    return fail(
        ErrorCode::InvalidInput, "compare.kind_differs", {},
        {{"first", std::string(word(first.kind))}, {"second", std::string(word(second.kind))}});
  }
  const auto firstUnit = unitOf(first);
  if (!firstUnit) return failAs(firstUnit);
  const auto secondUnit = unitOf(second);
  if (!secondUnit) return failAs(secondUnit);
  FigureComparison result;
  result.firstInSecondUnit = first.si / secondUnit->toSi;
  result.secondInFirstUnit = second.si / firstUnit->toSi;
  result.besideFirst = rounded(result.firstInSecondUnit, *secondUnit, typedPlaces(second));
  result.besideSecond = rounded(result.secondInFirstUnit, *firstUnit, typedPlaces(first));
  const double reach = first.roundingHalfWidthSi() + second.roundingHalfWidthSi();
  const double apart = std::abs(first.si - second.si);
  if (apart > reach * (1 + kTouching)) {
    result.agreement = FigureAgreement::Query;
    result.gapSi = apart - reach;
  }
  return result;
}

}  // namespace sw
