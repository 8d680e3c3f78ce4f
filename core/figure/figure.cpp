// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/figure.h"

#include <utility>

namespace sw::figure {

// Made in place and out of line: inlined moves of the variant make g++ 12 warn of members that were
// never set.

void Figure::add(Path path) {
  items.emplace_back(std::in_place_type<Path>, std::move(path));
}

void Figure::add(const Mark& mark) {
  items.emplace_back(std::in_place_type<Mark>, mark);
}

void Figure::add(Text text) {
  items.emplace_back(std::in_place_type<Text>, std::move(text));
}

void Figure::add(Item item) {
  std::visit([this](auto& each) { add(std::move(each)); }, item);
}

}  // namespace sw::figure
