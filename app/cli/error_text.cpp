// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/error_text.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "cli/error_sentence.h"

namespace sw::app {

namespace {

struct KeyWord {
  std::string_view key;
  std::string_view word;
};

/// Errors whose code alone does not say what scripts want to know.
constexpr std::array kWords{
    KeyWord{"json.invalid", "invalid_json"},
    KeyWord{"json.too_deep", "invalid_json"},
    KeyWord{"json.too_large", "invalid_json"},
    KeyWord{"json.duplicate_key", "duplicate_field"},
    KeyWord{"json.unknown_field", "unknown_field"},
    KeyWord{"units.not_finite", "out_of_range"},
    KeyWord{"cli.unknown_option", "unknown_field"},
    KeyWord{"cli.unexpected_argument", "unknown_field"},
    KeyWord{"cli.option_twice", "duplicate_field"},
};

std::string_view wordOfCode(ErrorCode code) {
  if (code == ErrorCode::InvalidInput) return "wrong_kind";
  if (code == ErrorCode::NotFound) return "unknown_name";
  return word(code);
}

/// One line whatever was typed: control characters become spaces.
std::string onOneLine(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](unsigned char c) { return c < 0x20 || c == 0x7f; }, ' ');
  return text;
}

std::string asJson(const Error& error) {
  nlohmann::ordered_json inner = nlohmann::ordered_json::object();
  inner["code"] = codeWord(error);
  if (!error.field.empty()) inner["field"] = error.field;
  inner["message"] = sentenceText(error);
  nlohmann::ordered_json outer = nlohmann::ordered_json::object();
  outer["error"] = std::move(inner);
  // Bytes that are not UTF-8 may come in as a file name; they must not stop the message.
  return outer.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

}  // namespace

std::optional<ErrorFormat> errorFormatFromWord(std::string_view text) {
  if (text == "text") return ErrorFormat::Text;
  if (text == "json") return ErrorFormat::Json;
  return std::nullopt;
}

std::string_view codeWord(const Error& error) {
  const auto found = std::find_if(kWords.begin(), kWords.end(),
                                  [&](const KeyWord& row) { return row.key == error.key; });
  return found == kWords.end() ? wordOfCode(error.code) : found->word;
}

std::string sentenceText(const Error& error) {
  return onOneLine(errorSentence(error));
}

std::string errorLine(const Error& error, std::string_view command, ErrorFormat format) {
  if (format == ErrorFormat::Json) return asJson(error) + "\n";
  std::string line = "swivelwright";
  if (!command.empty()) line.append(" ").append(command);
  line += ": ";
  if (!error.field.empty()) line += error.field + ": ";
  return onOneLine(line + sentenceText(error)) + "\n";
}

}  // namespace sw::app
