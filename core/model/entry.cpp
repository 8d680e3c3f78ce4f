// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/entry.h"

namespace sw::model {

std::string_view kindOf(const Payload& payload) {
  return std::visit([](const auto& fact) { return std::decay_t<decltype(fact)>::kKind; }, payload);
}

}  // namespace sw::model
