// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "units/quantity.h"
#include "units/unit.h"

namespace sw {

/// A number as a person typed it, kept beside its SI value; shown again as typed, never rounded.
/// `number` is the decimal text with a point ("4.6", trailing zeros kept: "25.0"), `unit` the
/// symbol it was read in ("kgf"), `si` the value in SI (finite).
struct TypedQuantity {
  QuantityKind kind = QuantityKind::Number;
  std::string number;
  std::string unit;
  double si = 0.0;

  /// "4.6 kgf": number, space, unit; only the number where the unit is empty.
  [[nodiscard]] std::string text() const;
  /// Half of the last typed place, in SI: the half-width of the rounding interval of the figure as
  /// typed ("25" -> 0.5, "25.0" -> 0.05 in its unit). Zero if the unit is not in the table.
  [[nodiscard]] double roundingHalfWidthSi() const;

  template <class Q>
  [[nodiscard]] Q as() const {
    return Q::fromSi(si);
  }
  friend bool operator==(const TypedQuantity&, const TypedQuantity&) = default;
};

}  // namespace sw
