// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/cause_table.h"

#include <algorithm>

#include "diagnosis/keyed.h"

namespace sw::diagnosis {

std::optional<std::size_t> Feature::answer(std::string_view word) const {
  const auto found = std::find_if(answers.begin(), answers.end(),
                                  [word](const FeatureAnswer& one) { return one.word == word; });
  if (found == answers.end()) return std::nullopt;
  return static_cast<std::size_t>(found - answers.begin());
}

std::optional<std::size_t> CauseTable::feature(std::string_view key) const {
  return placeOfKey(features, key);
}

std::optional<std::size_t> CauseTable::cause(std::string_view key) const {
  return placeOfKey(causes, key);
}

}  // namespace sw::diagnosis
