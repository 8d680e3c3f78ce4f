// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/marking_scanner.h"

#include <charconv>

namespace sw::mechanics {

namespace {

constexpr std::string_view kTimes = "\u00d7";
constexpr std::string_view kNoBreakSpace = "\u00a0";
constexpr std::size_t kMostDigits = 4;
constexpr std::size_t kMostDecimals = 2;

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}
bool isLetter(char c) {
  return c >= 'A' && c <= 'Z';
}
bool isBlank(char c) {
  return c == ' ' || c == '\t';
}
char capital(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

std::string plain(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    std::size_t width = 1;
    if (text.starts_with(kTimes)) {
      width = kTimes.size();
      result.push_back('X');
    } else if (text.starts_with(kNoBreakSpace)) {
      width = kNoBreakSpace.size();
      result.push_back(' ');
    } else {
      result.push_back(capital(text.front()));
    }
    text.remove_prefix(width);
  }
  return result;
}

}  // namespace

MarkingScanner::MarkingScanner(std::string_view text) : m_text(plain(text)) {}

void MarkingScanner::skipBlanks() {
  while (m_at < m_text.size() && isBlank(m_text[m_at])) ++m_at;
}

bool MarkingScanner::atEnd() {
  skipBlanks();
  return m_at == m_text.size();
}

bool MarkingScanner::take(std::string_view text) {
  skipBlanks();
  if (m_text.compare(m_at, text.size(), text) != 0) return false;
  m_at += text.size();
  return true;
}

bool MarkingScanner::takeWord(std::string_view word) {
  skipBlanks();
  const std::size_t end = m_at + word.size();
  if (end < m_text.size() && (isLetter(m_text[end]) || isDigit(m_text[end]))) return false;
  return take(word);
}

std::size_t MarkingScanner::digitsFrom(std::size_t at) const {
  std::size_t count = 0;
  while (at + count < m_text.size() && isDigit(m_text[at + count])) ++count;
  return count;
}

std::optional<MarkedNumber> MarkingScanner::number() {
  skipBlanks();
  const std::size_t whole = digitsFrom(m_at);
  if (whole == 0 || whole > kMostDigits) return std::nullopt;
  std::string digits = m_text.substr(m_at, whole);
  MarkedNumber result;
  std::size_t end = m_at + whole;
  const bool point = end < m_text.size() && (m_text[end] == '.' || m_text[end] == ',');
  if (point) {
    const std::size_t decimals = digitsFrom(end + 1);
    if (decimals == 0 || decimals > kMostDecimals) return std::nullopt;
    digits += '.' + m_text.substr(end + 1, decimals);
    end += 1 + decimals;
    result.hasPoint = true;
  }
  std::from_chars(digits.data(), digits.data() + digits.size(), result.value);
  m_at = end;
  return result;
}

std::optional<char> MarkingScanner::letterAlone() {
  skipBlanks();
  if (m_at == m_text.size() || !isLetter(m_text[m_at])) return std::nullopt;
  if (m_at + 1 < m_text.size() && !isBlank(m_text[m_at + 1])) return std::nullopt;
  return m_text[m_at];
}

}  // namespace sw::mechanics
