// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/json.h"
#include "units/kind_of.h"

// How numbers leave a calculation: 15 significant digits, so that the last bits of a double, which
// differ between machines, do not show.

namespace sw::compute {

/// A plain number of 15 significant digits. Needs a finite value.
[[nodiscard]] model::Json plainNumber(double value);
/// A number, or "infinity" where there is none.
[[nodiscard]] model::Json degreesOfFreedomJson(const std::optional<double>& degreesOfFreedom);
/// "18.5 N": text of 15 significant digits in the kind's default unit.
[[nodiscard]] std::string quantityText(double si, QuantityKind kind);
/// The same for a quantity of its type: quantityText(millimetres(0.8)) is "0.8 mm".
template <class Dimension>
[[nodiscard]] std::string quantityText(Quantity<Dimension> value) {
  return quantityText(value.si(), kKindOf<Quantity<Dimension>>);
}

}  // namespace sw::compute
