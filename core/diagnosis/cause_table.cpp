// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/cause_table.h"

#include <algorithm>

namespace sw::diagnosis {

namespace {

template <class Item, class Key>
std::optional<std::size_t> indexOf(const std::vector<Item>& items, std::string_view key,
                                   Key Item::*member) {
  const auto found = std::find_if(items.begin(), items.end(),
                                  [&](const Item& item) { return item.*member == key; });
  if (found == items.end()) return std::nullopt;
  return static_cast<std::size_t>(found - items.begin());
}

}  // namespace

std::optional<std::size_t> Feature::answer(std::string_view word) const {
  return indexOf(answers, word, &FeatureAnswer::word);
}

std::optional<std::size_t> CauseTable::feature(std::string_view key) const {
  return indexOf(features, key, &Feature::key);
}

std::optional<std::size_t> CauseTable::cause(std::string_view key) const {
  return indexOf(causes, key, &Cause::key);
}

}  // namespace sw::diagnosis
