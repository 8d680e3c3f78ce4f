// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/compute_stream.h"

#include <istream>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/error_text.h"
#include "compute/calculation.h"

namespace sw::compute {

namespace {

// One more than a JSON text may have, so that parseJson is the one to refuse it.
constexpr std::size_t kMostBytes = 64U * 1024U * 1024U + 1U;

Json errorJson(const Error& error) {
  Json json = Json::object();
  json["code"] = app::codeWord(error);
  if (!error.field.empty()) json["field"] = error.field;
  json["message"] = app::sentenceText(error);
  return json;
}

Result<Json> answerOf(const Json& json, model::ObjectReader& reader) {
  const std::string name = reader.requiredText("compute");
  const Json* input = reader.raw("input");
  if (input == nullptr) reader.fail({ErrorCode::Missing, "json.missing", "/input", {}});
  if (!json.contains("id")) reader.fail({ErrorCode::Missing, "json.missing", "/id", {}});
  if (auto done = reader.finish(); !done) return failAs(done);
  const auto calculation = findCalculation(name);
  if (!calculation) return tl::make_unexpected(calculation.error().about("/compute"));
  return evaluate(*calculation, *input);
}

/// A line is read like any other, but one longer than a text may be is cut short.
bool readLine(std::istream& in, std::string& line) {
  line.clear();
  std::streambuf* const buffer = in.rdbuf();
  constexpr int kEnd = std::char_traits<char>::eof();
  for (int c = buffer->sbumpc(); c != kEnd; c = buffer->sbumpc()) {
    if (c == '\n') return true;
    if (line.size() < kMostBytes) line.push_back(static_cast<char>(c));
  }
  in.setstate(std::ios::eofbit);
  return !line.empty();
}

bool blank(std::string_view line) {
  return line.find_first_not_of(" \t\r") == std::string_view::npos;
}

std::string text(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

Result<std::string> readAll(std::istream& in) {
  std::string text;
  std::string block(std::size_t{64} * 1024, '\0');
  while (in && text.size() <= kMostBytes) {
    in.read(block.data(), static_cast<std::streamsize>(block.size()));
    text.append(block, 0, static_cast<std::size_t>(in.gcount()));
  }
  if (text.size() >= kMostBytes) return fail(ErrorCode::InvalidInput, "json.too_large");
  return text;
}

std::string answerLine(std::string_view line) {
  const auto json = model::parseJson(line);
  Json answer = Json::object();
  if (!json) {
    answer["error"] = errorJson(json.error());
    return text(answer);
  }
  model::ObjectReader reader(*json, "");
  const Json* id = reader.raw("id");
  const bool usable = id != nullptr && (id->is_string() || id->is_number());
  if (usable) answer["id"] = *id;
  if (id != nullptr && !usable) {
    reader.fail(
        {ErrorCode::InvalidInput, "json.wrong_kind", "/id", {{"expected", "text or number"}}});
  }
  auto answered = answerOf(*json, reader);
  if (answered) {
    answer.update(*answered);
  } else {
    answer["error"] = errorJson(answered.error());
  }
  return text(answer);
}

void answerStream(std::istream& in, std::ostream& out) {
  std::string line;
  while (out && readLine(in, line)) {
    if (!blank(line)) out << answerLine(line) << '\n' << std::flush;
  }
}

}  // namespace sw::compute
