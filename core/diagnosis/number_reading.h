// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/cause_file.h"
#include "model/json.h"

// How the numbers of causes are read, from the shipped file and from a shop's own; used by the
// readers of this folder only. Every function keeps its first error in the reader it was given.

namespace sw::diagnosis {

/// A refusal of this field under the error's key `what`.
void refuse(model::ObjectReader& in, std::string_view key, const char* what, std::string text = {});

/// From 0 to 1.
[[nodiscard]] double readChance(model::ObjectReader& in, std::string_view key);
[[nodiscard]] double readMinutes(model::ObjectReader& in, std::string_view key);
[[nodiscard]] double readDays(model::ObjectReader& in, std::string_view key);
[[nodiscard]] double readWeight(model::ObjectReader& in, std::string_view key);
/// Of the weights one at least must be above 0.
void refuseWithoutWeight(model::ObjectReader& in, const std::vector<Cause>& causes);
[[nodiscard]] std::vector<std::string> readTexts(model::ObjectReader& in, std::string_view key);
/// Minutes to open and close a set-up, a pair for each support named.
void readSupports(model::ObjectReader& in, std::string_view key, Setup& setup);

/// Lets `read` have each object of a list.
template <class Read>
void readEach(model::ObjectReader& in, std::string_view key, const Read& read) {
  const model::Json* list = in.array(key);
  if (list == nullptr) return;
  std::size_t at = 0;
  for (const model::Json& item : *list) {
    model::ObjectReader inner(item, in.pathOf(key) + "/" + std::to_string(at++));
    read(inner);
    if (const auto done = inner.finish(); !done) in.fail(done.error());
  }
}

/// Calls `read` with the reader of the object under the key, for each name in it.
template <class Read>
void readMembers(model::ObjectReader& in, std::string_view key, const Read& read) {
  const model::Json* object = in.object(key);
  if (object == nullptr) return;
  model::ObjectReader inner(*object, in.pathOf(key));
  for (const auto& [name, value] : object->items()) read(inner, name);
  if (const auto done = inner.finish(); !done) in.fail(done.error());
}

}  // namespace sw::diagnosis
