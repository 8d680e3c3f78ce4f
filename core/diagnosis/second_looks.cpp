// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/second_looks.h"

#include <cmath>
#include <limits>

namespace sw::diagnosis {

std::optional<std::size_t> nextLook(std::span<const Look> looks) {
  std::optional<std::size_t> next;
  double most = 0;
  for (std::size_t i = 0; i < looks.size(); ++i) {
    const Look& look = looks[i];
    const double found = look.chance *
                         std::pow(1 - look.detection, static_cast<double>(look.taken)) *
                         look.detection;
    if (!(found > 0)) continue;
    const double worth =
        look.minutes > 0 ? found / look.minutes : std::numeric_limits<double>::infinity();
    if (next && worth <= most) continue;
    most = worth;
    next = i;
  }
  return next;
}

}  // namespace sw::diagnosis
