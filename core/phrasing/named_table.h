// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <algorithm>
#include <array>
#include <cstddef>

#include "phrasing/template_text.h"

namespace sw::phrasing {

template <class E>
struct Named {
  E value;
  Source source;
};

/// The name in the table, or nothing for what is not in it.
template <class E, std::size_t N>
[[nodiscard]] QString nameIn(const std::array<Named<E>, N>& table, E value) {
  const auto found = std::find_if(table.begin(), table.end(),
                                  [&](const Named<E>& row) { return row.value == value; });
  return found == table.end() ? QString() : translated(found->source);
}

}  // namespace sw::phrasing
