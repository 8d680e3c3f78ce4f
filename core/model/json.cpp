// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/json.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

namespace sw::model {

namespace {

constexpr std::size_t kMaxBytes = std::size_t{64} * 1024 * 1024;
constexpr int kMaxDepth = 64;
constexpr double kLargestExactInteger = 9007199254740992.0;  // 2^53

std::string pointer(const std::string& path, std::string_view key) {
  return path + "/" + std::string(key);
}

/// Walks the text once for what the tree no longer shows: duplicate keys and depth.
class Scan final : public nlohmann::json_sax<Json> {
 public:
  std::optional<Error> error;

  bool null() override { return true; }
  bool boolean(bool) override { return true; }
  bool number_integer(number_integer_t) override { return true; }
  bool number_unsigned(number_unsigned_t) override { return true; }
  bool number_float(number_float_t value, const string_t& text) override {
    if (std::isfinite(value)) return true;
    return stop({ErrorCode::InvalidInput, "json.invalid", {}, {{"text", text}}});
  }
  bool string(string_t&) override { return true; }
  bool binary(binary_t&) override { return true; }
  bool start_object(std::size_t) override {
    m_keys.emplace_back();
    return deeper();
  }
  bool end_object() override {
    m_keys.pop_back();
    --m_depth;
    return true;
  }
  bool start_array(std::size_t) override { return deeper(); }
  bool end_array() override {
    --m_depth;
    return true;
  }
  bool key(string_t& name) override {
    if (m_keys.back().insert(name).second) return true;
    return stop({ErrorCode::InvalidInput, "json.duplicate_key", "/" + name, {{"key", name}}});
  }
  bool parse_error(std::size_t position, const std::string& token,
                   const nlohmann::detail::exception&) override {
    return stop({ErrorCode::InvalidInput,
                 "json.invalid",
                 {},
                 {{"position", std::to_string(position)}, {"text", token}}});
  }

 private:
  bool deeper() {
    if (++m_depth <= kMaxDepth) return true;
    return stop({ErrorCode::InvalidInput, "json.too_deep", {}, {}});
  }
  bool stop(Error reason) {
    error = std::move(reason);
    return false;
  }

  int m_depth = 0;
  std::vector<std::set<std::string>> m_keys;
};

}  // namespace

Result<Json> parseJson(std::string_view text) {
  if (text.size() > kMaxBytes) return sw::fail(ErrorCode::InvalidInput, "json.too_large");
  Scan scan;
  if (!Json::sax_parse(text, &scan)) {
    return tl::make_unexpected(
        scan.error.value_or(Error{ErrorCode::InvalidInput, "json.invalid", {}, {}}));
  }
  return Json::parse(text, nullptr, false);
}

ObjectReader::ObjectReader(const Json& json, std::string path)
    : m_json(json), m_path(std::move(path)) {
  if (!m_json.is_object()) {
    m_error = Error{ErrorCode::InvalidInput,
                    "json.wrong_kind",
                    m_path.empty() ? "/" : m_path,
                    {{"expected", "object"}}};
  }
}

std::string ObjectReader::pathOf(std::string_view key) const {
  return pointer(m_path, key);
}

bool ObjectReader::has(std::string_view key) const {
  return m_json.is_object() && m_json.contains(std::string(key));
}

const Json* ObjectReader::find(std::string_view key) {
  m_known.emplace_back(key);
  if (!m_json.is_object()) return nullptr;
  const auto found = m_json.find(std::string(key));
  return found == m_json.end() ? nullptr : &*found;
}

void ObjectReader::fail(Error error) {
  if (!m_error) m_error = std::move(error);
}

void ObjectReader::wrongKind(std::string_view key, std::string_view expected) {
  fail({ErrorCode::InvalidInput,
        "json.wrong_kind",
        pathOf(key),
        {{"expected", std::string(expected)}}});
}

std::optional<std::string> ObjectReader::text(std::string_view key) {
  const Json* value = find(key);
  if (value == nullptr) return std::nullopt;
  if (value->is_string()) return value->get<std::string>();
  wrongKind(key, "text");
  return std::nullopt;
}

std::string ObjectReader::requiredText(std::string_view key) {
  const auto value = text(key);
  if (!value && ok()) fail({ErrorCode::Missing, "json.missing", pathOf(key), {}});
  return value.value_or(std::string{});
}

std::optional<double> ObjectReader::number(std::string_view key) {
  const Json* value = find(key);
  if (value == nullptr) return std::nullopt;
  if (value->is_number()) return value->get<double>();
  wrongKind(key, "number");
  return std::nullopt;
}

std::optional<std::int64_t> ObjectReader::integer(std::string_view key) {
  const Json* value = find(key);
  if (value == nullptr) return std::nullopt;
  const bool whole =
      value->is_number_integer() && std::abs(value->get<double>()) <= kLargestExactInteger;
  if (whole) return value->get<std::int64_t>();
  wrongKind(key, "whole number");
  return std::nullopt;
}

std::optional<bool> ObjectReader::boolean(std::string_view key) {
  const Json* value = find(key);
  if (value == nullptr) return std::nullopt;
  if (value->is_boolean()) return value->get<bool>();
  wrongKind(key, "true or false");
  return std::nullopt;
}

std::optional<std::string> ObjectReader::oneOf(std::string_view key,
                                               const std::vector<std::string_view>& words) {
  const auto value = text(key);
  if (!value) return std::nullopt;
  if (std::find(words.begin(), words.end(), *value) != words.end()) return value;
  std::string choices;
  for (const auto word : words) choices += (choices.empty() ? "" : ", ") + std::string(word);
  fail({ErrorCode::InvalidInput,
        "json.not_one_of",
        pathOf(key),
        {{"text", *value}, {"choices", choices}}});
  return std::nullopt;
}

const Json* ObjectReader::raw(std::string_view key) {
  return find(key);
}

const Json* ObjectReader::array(std::string_view key) {
  const Json* value = find(key);
  if (value == nullptr || value->is_array()) return value;
  wrongKind(key, "list");
  return nullptr;
}

const Json* ObjectReader::object(std::string_view key) {
  const Json* value = find(key);
  if (value == nullptr || value->is_object()) return value;
  wrongKind(key, "object");
  return nullptr;
}

Result<void> ObjectReader::finish() {
  if (m_error) return tl::make_unexpected(*m_error);
  for (const auto& item : m_json.items()) {
    if (std::find(m_known.begin(), m_known.end(), item.key()) != m_known.end()) continue;
    return sw::fail(ErrorCode::InvalidInput, "json.unknown_field", pathOf(item.key()),
                    {{"key", item.key()}});
  }
  return {};
}

}  // namespace sw::model
