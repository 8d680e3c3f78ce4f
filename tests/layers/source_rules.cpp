// SPDX-License-Identifier: GPL-3.0-or-later
#include "source_rules.h"

#include <algorithm>
#include <cctype>
#include <regex>
#include <sstream>
#include <string_view>

namespace sw::layers {
namespace {

constexpr std::string_view kLicence = "SPDX-License-Identifier: GPL-3.0-or-later";
constexpr int kMostLines = 700;

int lineAt(std::string_view text, std::size_t position) {
  return 1 + static_cast<int>(std::ranges::count(text.substr(0, position), '\n'));
}

bool isWordCharacter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

bool isHeader(const SourceFile& file) {
  return file.path.ends_with(".h");
}

/// Blanks comments out, keeping the length and the line breaks.
std::string withoutComments(std::string text) {
  std::size_t at = 0;
  while ((at = text.find('/', at)) != std::string::npos) {
    std::size_t end = at + 1;
    if (text.compare(at, 2, "//") == 0) end = std::min(text.find('\n', at), text.size());
    if (text.compare(at, 2, "/*") == 0) {
      const auto close = text.find("*/", at + 2);
      end = close == std::string::npos ? text.size() : close + 2;
    }
    if (end > at + 1) {
      std::replace_if(
          text.begin() + static_cast<std::ptrdiff_t>(at),
          text.begin() + static_cast<std::ptrdiff_t>(end), [](char c) { return c != '\n'; }, ' ');
    }
    at = end;
  }
  return text;
}

/// The position after the '>' that closes the '<' at `open`, or npos.
std::size_t afterAngle(std::string_view text, std::size_t open) {
  int depth = 0;
  for (auto i = open; i < text.size(); ++i) {
    if (text[i] == '<') ++depth;
    if (text[i] == '>' && --depth == 0) return i + 1;
    if (text[i] == ';' || text[i] == '{') return std::string_view::npos;
  }
  return std::string_view::npos;
}

/// What stands between the end of the previous declaration and `position`.
std::string_view declarationHead(std::string_view text, std::size_t position) {
  auto start = position;
  while (start > 0) {
    const char c = text[start - 1];
    if (c == ';' || c == '{' || c == '}') break;
    const bool label = c == ':' && text[start] != ':' && (start < 2 || text[start - 2] != ':');
    if (label) break;
    --start;
  }
  return text.substr(start, position - start);
}

/// Whether a plain name and an opening bracket follow: a function. A qualified name is a definition
/// whose declaration carries the attribute.
bool isFunctionName(std::string_view rest) {
  static const std::regex kName(R"(^\s+(?:operator\s*[^\s\w(]+|[A-Za-z_]\w*)\s*\()");
  const std::string head(rest.substr(0, 160));
  return std::regex_search(head, kName);
}

bool isLambda(std::string_view head) {
  static const std::regex kLambda(R"([^\]]\]\s*\()");
  return std::regex_search(std::string(head), kLambda);
}

bool returnsResult(std::string_view head, std::string_view rest) {
  if (head.ends_with("sw::")) head.remove_suffix(4);
  const auto last = head.find_last_not_of(" \t\n");
  const bool trailing =
      last != std::string_view::npos && last > 0 && head.substr(last - 1, 2) == "->";
  return trailing ? !isLambda(head) : isFunctionName(rest);
}

bool namesMachinePath(std::string_view line) {
  for (const std::string_view top : {"/home/", "/root/", "/work/", "/tmp/", "/Users/"}) {
    for (auto at = line.find(top); at != std::string_view::npos; at = line.find(top, at + 1)) {
      // "base/work/x" and "https://host/work/x" are no such paths, nor is one built from a
      // variable.
      constexpr std::string_view kJoins = "_.-)}>/";
      const bool starts =
          at == 0 || !(isWordCharacter(line[at - 1]) || kJoins.find(line[at - 1]) != kJoins.npos);
      const auto next = at + top.size();
      if (starts && next < line.size() && isWordCharacter(line[next])) return true;
    }
  }
  return false;
}

}  // namespace

Breaches checkLicenceLine(const SourceFile& file) {
  std::istringstream lines(file.text);
  std::string first;
  std::getline(lines, first);
  if (first.starts_with("#!")) std::getline(lines, first);
  if (first == "// " + std::string(kLicence) || first == "# " + std::string(kLicence)) return {};
  return {{file.path, 1, "the licence line is not the first"}};
}

Breaches checkPragmaOnce(const SourceFile& file) {
  static const std::regex kPragma(R"((^|\n)#pragma once(\n|$))");
  if (!isHeader(file) || std::regex_search(file.text, kPragma)) return {};
  return {{file.path, 0, "no #pragma once"}};
}

Breaches checkLength(const SourceFile& file) {
  const auto lines = static_cast<int>(std::ranges::count(file.text, '\n'));
  if (lines <= kMostLines) return {};
  return {{file.path, 0, std::to_string(lines) + " lines: split the file"}};
}

Breaches checkNodiscard(const SourceFile& file) {
  constexpr std::string_view kResult = "Result<";
  Breaches breaches;
  if (!isHeader(file)) return breaches;
  const auto text = withoutComments(file.text);
  for (auto at = text.find(kResult); at != std::string::npos; at = text.find(kResult, at + 1)) {
    if (at > 0 && isWordCharacter(text[at - 1])) continue;
    const auto after = afterAngle(text, at + kResult.size() - 1);
    if (after == std::string::npos) continue;
    const auto head = declarationHead(text, at);
    if (!returnsResult(head, std::string_view(text).substr(after))) continue;
    if (head.find("[[nodiscard]]") == std::string_view::npos) {
      breaches.push_back({file.path, lineAt(text, at), "returns Result without [[nodiscard]]"});
    }
  }
  return breaches;
}

Breaches checkSqlIsBound(const SourceFile& file) {
  static const std::regex kSql(
      R"(\b(SELECT|INSERT|UPDATE|DELETE|REPLACE|PRAGMA|CREATE|ALTER|DROP|ATTACH|VACUUM|FROM|WHERE)\b)");
  Breaches breaches;
  if (!file.path.starts_with("core/store/")) return breaches;
  constexpr std::string_view kArg = ".arg(";
  for (auto at = file.text.find(kArg); at != std::string::npos; at = file.text.find(kArg, at + 1)) {
    // A statement of C++ ends with a semicolon and a line break; one inside SQL text seldom does.
    const auto end = file.text.rfind(";\n", at);
    const auto start = end == std::string::npos ? 0 : end;
    if (std::regex_search(file.text.substr(start, at - start), kSql)) {
      breaches.push_back({file.path, lineAt(file.text, at), "SQL put together with .arg()"});
    }
  }
  return breaches;
}

Breaches checkNoMachinePaths(const SourceFile& file) {
  Breaches breaches;
  std::istringstream lines(file.text);
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    if (namesMachinePath(line)) {
      breaches.push_back({file.path, number, "a path of one machine: " + line.substr(0, 80)});
    }
  }
  return breaches;
}

}  // namespace sw::layers
