// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace sw::model {

using Json = nlohmann::ordered_json;

/// Reads one JSON text (RFC 8259, UTF-8). Errors: InvalidInput "json.invalid" (details: position,
/// text), "json.duplicate_key" (field = path), "json.too_deep" (more than 64 levels),
/// "json.too_large" (more than 64 MB).
[[nodiscard]] Result<Json> parseJson(std::string_view text);

/// Reads the fields of one JSON object strictly: each getter marks its key as known, finish()
/// refuses what was not asked for. The first error is kept; later getters return nothing.
class ObjectReader {
 public:
  /// `path` names the object in messages ("/readings/2"); json must outlive the reader.
  ObjectReader(const Json& json, std::string path);

  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] std::optional<std::string> text(std::string_view key);
  [[nodiscard]] std::string requiredText(std::string_view key);
  [[nodiscard]] std::optional<double> number(std::string_view key);
  [[nodiscard]] std::optional<std::int64_t> integer(std::string_view key);
  [[nodiscard]] std::optional<bool> boolean(std::string_view key);
  /// A text out of a list of words.
  [[nodiscard]] std::optional<std::string> oneOf(std::string_view key,
                                                 const std::vector<std::string_view>& words);
  /// The raw value, whatever its type; nullptr when absent.
  [[nodiscard]] const Json* raw(std::string_view key);
  [[nodiscard]] const Json* array(std::string_view key);
  [[nodiscard]] const Json* object(std::string_view key);

  [[nodiscard]] const std::string& path() const { return m_path; }
  [[nodiscard]] std::string pathOf(std::string_view key) const;
  /// Records an error found by the caller (kept only if it is the first).
  void fail(Error error);
  [[nodiscard]] bool ok() const { return !m_error.has_value(); }
  [[nodiscard]] const std::optional<Error>& error() const { return m_error; }
  /// The first error, or an unknown_field error for the first key nobody asked for.
  [[nodiscard]] Result<void> finish();

 private:
  [[nodiscard]] const Json* find(std::string_view key);
  void wrongKind(std::string_view key, std::string_view expected);

  const Json& m_json;
  std::string m_path;
  std::vector<std::string> m_known;
  std::optional<Error> m_error;
};

}  // namespace sw::model
