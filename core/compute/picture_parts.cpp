// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/picture_parts.h"

#include <algorithm>
#include <utility>

namespace sw::compute {

figure::Figure newFigure(figure::Size size, std::string title, std::string description) {
  figure::Figure figure;
  figure.size = size;
  figure.title = std::move(title);
  figure.description = std::move(description);
  return figure;
}

std::string degreesLabel(Angle angle, int decimals) {
  return shortNumber(inDegrees(angle), decimals) + "\u00b0";
}

std::string millimetresLabel(Length length, int decimals) {
  return fixedDecimal(inMillimetres(length), decimals) + " mm";
}

std::string withoutZeros(const std::string& quantity) {
  const std::size_t end = std::min(quantity.find(' '), quantity.size());
  std::string number = quantity.substr(0, end);
  if (number.find('.') != std::string::npos) {
    number.erase(number.find_last_not_of('0') + 1);
    if (number.back() == '.') number.pop_back();
  }
  return number + quantity.substr(end);
}

std::string shortNumber(double value, int most) {
  return withoutZeros(fixedDecimal(value, most));
}

}  // namespace sw::compute
