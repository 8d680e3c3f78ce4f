// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace sw {

/// A number that names one kind of thing; ids of different kinds do not mix. Valid ids are >= 1.
template <class Tag>
struct Id {
  std::int64_t value = 0;

  [[nodiscard]] constexpr bool valid() const { return value > 0; }
  friend constexpr auto operator<=>(const Id&, const Id&) = default;
};

}  // namespace sw

template <class Tag>
struct std::hash<sw::Id<Tag>> {
  std::size_t operator()(const sw::Id<Tag>& id) const noexcept {
    return std::hash<std::int64_t>{}(id.value);
  }
};
