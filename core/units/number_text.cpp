// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/number_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>

namespace sw::number_text {

namespace {

constexpr std::size_t kMaximumNumber = 24;
constexpr std::size_t kMaximumWithZeros = 60;
constexpr std::size_t kMaximumEcho = 60;

/// The zero of each decimal script (general category Nd, Unicode 15); its nine follow.
constexpr std::array<char32_t, 67> kZeros{
    0x0660,  0x06F0,  0x07C0,  0x0966,  0x09E6,  0x0A66,  0x0AE6,  0x0B66,  0x0BE6,  0x0C66,
    0x0CE6,  0x0D66,  0x0DE6,  0x0E50,  0x0ED0,  0x0F20,  0x1040,  0x1090,  0x17E0,  0x1810,
    0x1946,  0x19D0,  0x1A80,  0x1A90,  0x1B50,  0x1BB0,  0x1C40,  0x1C50,  0xA620,  0xA8D0,
    0xA900,  0xA9D0,  0xA9F0,  0xAA50,  0xABF0,  0xFF10,  0x104A0, 0x10D30, 0x11066, 0x110F0,
    0x11136, 0x111D0, 0x112F0, 0x11450, 0x114D0, 0x11650, 0x116C0, 0x11730, 0x118E0, 0x11950,
    0x11C50, 0x11D50, 0x11DA0, 0x11F50, 0x16A60, 0x16AC0, 0x16B50, 0x1D7CE, 0x1D7D8, 0x1D7E2,
    0x1D7EC, 0x1D7F6, 0x1E140, 0x1E2F0, 0x1E4F0, 0x1E950, 0x1FBF0};

struct Replacement {
  char32_t from;
  std::string_view to;
};

constexpr std::string_view kGlueText{&kGlue, 1};
constexpr std::string_view kGroupingText{&kGrouping, 1};

/// Single characters people or their keyboards put for ours, besides spaces and digits.
constexpr std::array kReplacements{
    Replacement{0x2212, "-"},           Replacement{0xFE63, "-"},
    Replacement{0xFF0D, "-"},           Replacement{0x2010, "-"},
    Replacement{0x2011, "-"},           Replacement{0xFF0B, "+"},
    Replacement{0x066B, "."},           Replacement{0xFF0E, "."},
    Replacement{0x060C, ","},           Replacement{0xFF0C, ","},
    Replacement{0x066C, kGroupingText}, Replacement{0x2019, "'"},
    Replacement{0x02BC, "'"},           Replacement{0xFF07, "'"},
    Replacement{0x061B, ";"},           Replacement{0xFF1B, ";"},
    Replacement{0x00B5, "u"},           Replacement{0x03BC, "u"},
    Replacement{0x00BA, "\u00b0"},      Replacement{0x02DA, "\u00b0"},
    Replacement{0x201D, "\""},          Replacement{0x201C, "\""},
    Replacement{0x2033, "\""},          Replacement{0x2044, "/"},
    Replacement{0x2215, "/"},           Replacement{0xFF0F, "/"},
    Replacement{0x22C5, "\u00b7"},      Replacement{0x2219, "\u00b7"},
    Replacement{0x2022, "\u00b7"},      Replacement{0x0085, "\n"},
    Replacement{0x2028, "\n"},          Replacement{0x2029, "\n"}};

bool isContinuation(unsigned char byte) {
  return (byte & 0xC0U) == 0x80U;
}

/// Takes one code point from the front; nothing (and one byte taken) if it is not UTF-8.
std::optional<char32_t> takeCodePoint(std::string_view& rest) {
  const auto first = static_cast<unsigned char>(rest[0]);
  std::size_t length = 1;
  char32_t point = first;
  if (first >= 0xC2 && first < 0xE0) {
    length = 2;
    point = first & 0x1FU;
  } else if (first >= 0xE0 && first < 0xF0) {
    length = 3;
    point = first & 0x0FU;
  } else if (first >= 0xF0 && first < 0xF5) {
    length = 4;
    point = first & 0x07U;
  } else if (first >= 0x80) {
    length = 0;
  }
  bool valid = length > 0 && rest.size() >= length;
  for (std::size_t i = 1; valid && i < length; ++i) {
    const auto byte = static_cast<unsigned char>(rest[i]);
    valid = isContinuation(byte);
    point = (point << 6U) | (byte & 0x3FU);
  }
  const bool overlong = (length == 3 && point < 0x800) || (length == 4 && point < 0x10000);
  const bool surrogate = point >= 0xD800 && point < 0xE000;
  if (!valid || overlong || surrogate || point > 0x10FFFF) {
    rest.remove_prefix(1);
    return std::nullopt;
  }
  rest.remove_prefix(length);
  return point;
}

std::optional<char> asciiDigit(char32_t point) {
  for (const char32_t zero : kZeros) {
    if (point >= zero && point < zero + 10) return static_cast<char>('0' + (point - zero));
  }
  return std::nullopt;
}

/// Spaces that hold together: no-break, figure, punctuation, thin, hair and narrow no-break space.
bool isGluePoint(char32_t point) {
  return point == 0x00A0 || (point >= 0x2007 && point <= 0x200A) || point == 0x202F;
}

/// Other spaces, and marks without width (joiners, direction marks, byte order mark).
bool isSpacePoint(char32_t point) {
  return (point >= 0x2000 && point <= 0x2006) || (point >= 0x200B && point <= 0x200F) ||
         (point >= 0x202A && point <= 0x202E) || (point >= 0x205F && point <= 0x2069) ||
         point == 0x1680 || point == 0x3000 || point == 0x061C || point == 0xFEFF;
}

bool isControl(char32_t point) {
  return point < 0x20 || (point >= 0x7F && point < 0xA0);
}

std::string plainFor(char32_t point, std::string_view original) {
  for (const Replacement& replacement : kReplacements) {
    if (replacement.from == point) return std::string(replacement.to);
  }
  if (isGluePoint(point)) return std::string(kGlueText);
  if (isSpacePoint(point)) return " ";
  if (const auto digit = asciiDigit(point)) return std::string(1, *digit);
  const bool fullwidthLetter =
      (point >= 0xFF21 && point <= 0xFF3A) || (point >= 0xFF41 && point <= 0xFF5A);
  if (fullwidthLetter) return std::string(1, static_cast<char>(point - 0xFEE0));
  return std::string(original);
}

bool isLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// "nan", "inf", "infinity" or the sign of infinity as a whole word.
bool namesNonFinite(std::string_view text) {
  if (text.starts_with("\u221e")) return true;
  std::string word;
  for (const char c : text) {
    if (!isLetter(c)) break;
    word.push_back(c < 'a' ? static_cast<char>(c - 'A' + 'a') : c);
  }
  return word == "nan" || word == "inf" || word == "infinity";
}

bool hasExponent(std::string_view text) {
  if (text.empty() || (text[0] != 'e' && text[0] != 'E')) return false;
  text.remove_prefix(1);
  if (!text.empty() && (text[0] == '+' || text[0] == '-')) text.remove_prefix(1);
  return !text.empty() && isDigit(text[0]);
}

/// Exponents are refused; those beyond all doubles get the more telling fault.
NumberFault exponentFault(std::string body, std::string_view rest) {
  std::replace(body.begin(), body.end(), ',', '.');
  std::string whole = body + "e";
  rest.remove_prefix(1);
  const bool shrinks = rest[0] == '-';
  if (rest[0] == '+') rest.remove_prefix(1);
  whole += rest.substr(0, rest.find_first_not_of("0123456789", rest[0] == '-' ? 1 : 0));
  double value = 0.0;
  const auto [end, error] = std::from_chars(whole.data(), whole.data() + whole.size(), value);
  const bool overflows = error == std::errc::result_out_of_range && !shrinks;
  return overflows ? NumberFault::NotFinite : NumberFault::NotANumber;
}

bool tooLong(std::string_view number) {
  if (number.size() > kMaximumWithZeros) return true;
  std::size_t counted = number.size();
  const std::size_t start = number.starts_with('-') ? 1 : 0;
  if (number.substr(start).starts_with("0.")) {
    const auto first = number.find_first_not_of('0', start + 2);
    if (first != std::string_view::npos) counted -= first - start - 2;
  }
  return counted > kMaximumNumber;
}

NumberFault bodyFault(std::string_view body, std::string_view rest) {
  const bool hasDigit = std::any_of(body.begin(), body.end(), isDigit);
  if (!hasDigit) return namesNonFinite(rest) ? NumberFault::NotFinite : NumberFault::NotANumber;
  if (std::count_if(body.begin(), body.end(), isMark) > 1) return NumberFault::TwoMarks;
  if (!rest.empty() && rest[0] == kGrouping) return NumberFault::TwoMarks;
  if (rest.size() > 1 && rest[0] == '\'' && isDigit(rest[1])) return NumberFault::TwoMarks;
  if (body.size() > kMaximumWithZeros) return NumberFault::TooLong;
  if (isMark(body.back())) return NumberFault::NotANumber;
  if (hasExponent(rest)) return exponentFault(std::string(body), rest);
  return NumberFault::None;
}

}  // namespace

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}
bool isMark(char c) {
  return c == '.' || c == ',';
}
bool isBlank(char c) {
  return c == ' ' || c == '\n' || c == kGlue;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && isBlank(text.front())) text.remove_prefix(1);
  while (!text.empty() && isBlank(text.back())) text.remove_suffix(1);
  return text;
}

bool startsNumber(std::string_view text) {
  if (!text.empty() && (text[0] == '+' || text[0] == '-')) text.remove_prefix(1);
  if (!text.empty() && isDigit(text[0])) return true;
  return text.size() > 1 && isMark(text[0]) && isDigit(text[1]);
}

std::optional<std::string> normalised(std::string_view text) {
  std::string plain;
  plain.reserve(text.size());
  std::string_view rest = text;
  while (!rest.empty()) {
    const std::string_view before = rest;
    const auto point = takeCodePoint(rest);
    if (!point) return std::nullopt;
    if (*point == '\t') {
      plain.push_back(' ');
    } else if (*point == '\n' || *point == '\r' || *point == 0x0B || *point == 0x0C) {
      plain.push_back('\n');
    } else if (*point < 0x7F && *point >= 0x20) {
      plain.push_back(static_cast<char>(*point));
    } else if (isControl(*point) && *point != 0x85) {
      return std::nullopt;
    } else {
      plain += plainFor(*point, before.substr(0, before.size() - rest.size()));
    }
  }
  return plain;
}

ScannedNumber scanNumber(std::string_view text) {
  ScannedNumber scanned;
  const bool hasSign = !text.empty() && (text[0] == '+' || text[0] == '-');
  const std::size_t start = hasSign ? 1 : 0;
  std::size_t end = start;
  while (end < text.size() && (isDigit(text[end]) || isMark(text[end]))) ++end;
  const std::string_view body = text.substr(start, end - start);
  scanned.fault = bodyFault(body, text.substr(end));
  if (scanned.fault != NumberFault::None) return scanned;

  const auto mark = std::find_if(body.begin(), body.end(), isMark);
  scanned.hasMark = mark != body.end();
  scanned.commaMark = scanned.hasMark && *mark == ',';
  scanned.leadingMark = mark == body.begin();
  scanned.length = end;
  if (text[0] == '-') scanned.number = "-";
  if (scanned.leadingMark) scanned.number += '0';
  scanned.number += body;
  std::replace(scanned.number.begin(), scanned.number.end(), ',', '.');
  if (tooLong(scanned.number)) scanned.fault = NumberFault::TooLong;

  const char* const first = scanned.number.data();
  std::from_chars(first, first + scanned.number.size(), scanned.value);
  scanned.value += 0.0;  // "-0" is zero
  return scanned;
}

std::string echo(std::string_view text) {
  std::string shown;
  std::size_t count = 0;
  while (!text.empty()) {
    if (++count > kMaximumEcho) return shown + "...";
    const std::string_view before = text;
    const auto point = takeCodePoint(text);
    if (!point || isControl(*point)) {
      shown += point ? " " : "\ufffd";
    } else {
      shown += before.substr(0, before.size() - text.size());
    }
  }
  return shown;
}

}  // namespace sw::number_text
