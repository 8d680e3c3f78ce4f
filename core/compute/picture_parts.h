// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "compute/verdict_mark.h"
#include "figure/figure.h"
#include "measure/evaluation.h"
#include "units/format.h"
#include "units/kind_of.h"

// What the pictures of many calculations say and mark alike.

namespace sw::compute {

/// An empty one with its caption and what it shows.
[[nodiscard]] figure::Figure newFigure(figure::Size size, std::string title,
                                       std::string description);

/// "6.00 N m" as "6 N m".
[[nodiscard]] std::string withoutZeros(const std::string& quantity);
/// "33.1 g" for people, in the kind's default unit, without zeros at the end of its number.
template <class Dimension>
[[nodiscard]] std::string labelText(Quantity<Dimension> value, int significant = 3) {
  return withoutZeros(
      displayText(value.si(), defaultUnit(kKindOf<Quantity<Dimension>>), significant));
}
/// "2.4°", "18°": at most so many places.
[[nodiscard]] std::string degreesLabel(Angle angle, int decimals = 1);
/// "12.5 mm", "0 mm": lengths with fixed places.
[[nodiscard]] std::string millimetresLabel(Length length, int decimals);
/// A plain number with at most so many places, without zeros at its end.
[[nodiscard]] std::string shortNumber(double value, int most);

}  // namespace sw::compute
