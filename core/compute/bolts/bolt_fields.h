// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/words.h"
#include "compute/common_fields.h"
#include "compute/input_reader.h"
#include "mechanics/bolts/strength_class.h"
#include "mechanics/bolts/thread.h"
#include "mechanics/bolts/torque_range.h"

// Fields that the calculations of fasteners share: words, threads, ranges, stresses.

namespace sw::compute {

/// All words of an enumeration, in the order of its table.
template <HasWords E>
[[nodiscard]] std::vector<std::string_view> wordsOf() {
  std::vector<std::string_view> words;
  for (const auto& [value, word] : Words<E>::table) words.push_back(word);
  return words;
}
/// Nothing, with an error kept, where it is absent or not one of the words.
template <HasWords E>
[[nodiscard]] std::optional<E> requiredChoice(InputReader& reader, std::string_view key) {
  return fromWord<E>(reader.requiredWord(key, wordsOf<E>()));
}
template <HasWords E>
[[nodiscard]] std::optional<E> choice(InputReader& reader, std::string_view key) {
  const auto word = reader.fields().oneOf(key, wordsOf<E>());
  return word ? fromWord<E>(*word) : std::nullopt;
}

/// A thread as written; a reading error is kept under the key's path.
[[nodiscard]] std::optional<mechanics::Thread> threadField(InputReader& reader,
                                                           std::string_view key);
/// The same, missing where the key is absent.
[[nodiscard]] std::optional<mechanics::Thread> requiredThread(InputReader& reader,
                                                              std::string_view key);
[[nodiscard]] FieldDescription threadDescription(Presence presence);
[[nodiscard]] FieldDescription strengthDescription(Presence presence, std::string_view meaning);

/// {"min", "max"}, max where there is one; errors are kept.
[[nodiscard]] std::optional<mechanics::TorqueRange> torqueRangeField(InputReader& reader,
                                                                     std::string_view key);
[[nodiscard]] Json torqueRangeJson(const mechanics::TorqueRange& range);
[[nodiscard]] FieldDescription torqueRangeDescription(std::string_view name,
                                                      std::string_view meaning);

/// "640 MPa".
[[nodiscard]] std::string stressText(Pressure stress);
[[nodiscard]] FieldDescription stressField(std::string_view name, std::string_view meaning);

/// What to check where a pitch was looked up, or the class is not one of the thread's standard.
void noteThread(const mechanics::Thread& thread, std::vector<Note>& notes);
void noteClass(const mechanics::Thread& thread, mechanics::StrengthClass strengthClass,
               std::vector<Note>& notes);

}  // namespace sw::compute
