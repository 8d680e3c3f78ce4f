// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/typed_quantity.h"

#include <cmath>

namespace sw {

std::string TypedQuantity::text() const {
  return unit.empty() ? number : number + " " + unit;
}

double TypedQuantity::roundingHalfWidthSi() const {
  const auto known = findUnit(kind, unit);
  if (!known) return 0.0;
  const auto point = number.find('.');
  const std::size_t places = point == std::string::npos ? 0 : number.size() - point - 1;
  return 0.5 * std::pow(10.0, -static_cast<double>(places)) * known->toSi;
}

}  // namespace sw
