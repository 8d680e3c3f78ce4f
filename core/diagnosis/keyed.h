// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace sw::diagnosis {

/// The place of the item with this key; nothing where there is none.
template <class Item>
[[nodiscard]] std::optional<std::size_t> placeOfKey(const std::vector<Item>& items,
                                                    std::string_view key) {
  const auto found =
      std::find_if(items.begin(), items.end(), [key](const Item& item) { return item.key == key; });
  if (found == items.end()) return std::nullopt;
  return static_cast<std::size_t>(found - items.begin());
}

}  // namespace sw::diagnosis
