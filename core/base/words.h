// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <utility>

namespace sw {

/// The stored words of an enumeration. Specialise with a constexpr `table` of {value, word} pairs;
/// words are stored in books and scripts and are never renamed.
template <class E>
struct Words;

template <class E>
concept HasWords = requires { Words<E>::table; };

template <HasWords E>
[[nodiscard]] constexpr std::string_view wordOf(E value) {
  for (const auto& [candidate, text] : Words<E>::table) {
    if (candidate == value) return text;
  }
  return {};
}

template <HasWords E>
[[nodiscard]] constexpr std::optional<E> fromWord(std::string_view text) {
  for (const auto& [candidate, name] : Words<E>::table) {
    if (name == text) return candidate;
  }
  return std::nullopt;
}

}  // namespace sw
