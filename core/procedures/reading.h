// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "base/words.h"
#include "model/json.h"
#include "procedures/procedure.h"

// How the fields of procedure files are read; used by the readers of this folder only. Every
// function keeps its first error in the reader it was given.

namespace sw::procedures {

/// A refusal of this field under the error's key `what` ("procedure.bad_id").
void refuse(model::ObjectReader& in, std::string_view key, std::string_view what,
            std::vector<std::pair<std::string, std::string>> details = {});

/// A text that, where given, says something and holds no control character but the line end.
void readText(model::ObjectReader& in, std::string_view key, std::string& out);
void requireText(model::ObjectReader& in, std::string_view key, std::string& out);
void readTexts(model::ObjectReader& in, std::string_view key, std::vector<std::string>& out);
/// Small letters, digits, '_' and '-': names steps, procedures, items and answers.
void requireId(model::ObjectReader& in, std::string_view key, std::string& out);
/// As requireId, with '.' too, where given: names a line of a spec sheet.
void readSpecKey(model::ObjectReader& in, std::string_view key, std::string& out);
void readFlag(model::ObjectReader& in, std::string_view key, bool& out);
/// A number from `least` up, where given.
void readCount(model::ObjectReader& in, std::string_view key, std::int64_t least,
               std::int64_t& out);
void readMinutes(model::ObjectReader& in, std::string_view key, double& out);
void requireQuantityKind(model::ObjectReader& in, std::string_view key, QuantityKind& out);
void readCondition(model::ObjectReader& in, std::string_view key, Condition& out);

/// One of the enumeration's words; absent leaves `out` as it is.
template <HasWords E>
void readWord(model::ObjectReader& in, std::string_view key, E& out) {
  std::vector<std::string_view> words;
  for (const auto& [value, text] : Words<E>::table) words.push_back(text);
  const auto word = in.oneOf(key, words);
  if (!word) return;
  out = fromWord<E>(*word).value_or(out);
}

template <HasWords E>
void requireWord(model::ObjectReader& in, std::string_view key, E& out) {
  if (in.has(key)) return readWord(in, key, out);
  in.fail({ErrorCode::Missing, "json.missing", in.pathOf(key), {}});
}

/// Reads an object with `read(reader, value)` and refuses what that did not ask for.
template <class T, class Read>
void readWhole(model::ObjectReader& parent, const model::Json& json, const std::string& path,
               T& out, Read read) {
  model::ObjectReader in(json, path);
  read(in, out);
  if (const auto done = in.finish(); !done) parent.fail(done.error());
}

template <class T, class Read>
void readObject(model::ObjectReader& in, std::string_view key, std::optional<T>& out, Read read) {
  const model::Json* json = in.object(key);
  if (json == nullptr) return;
  readWhole(in, *json, in.pathOf(key), out.emplace(), read);
}

template <class T, class Read>
void readList(model::ObjectReader& in, std::string_view key, std::vector<T>& out, Read read) {
  const model::Json* list = in.array(key);
  if (list == nullptr) return;
  for (const model::Json& json : *list) {
    const std::string path = in.pathOf(key) + "/" + std::to_string(out.size());
    readWhole(in, json, path, out.emplace_back(), read);
  }
}

/// Reads one step, its own checks included (step_reader.cpp).
void readStep(model::ObjectReader& in, Step& step);

}  // namespace sw::procedures
