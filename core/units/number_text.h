// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

// The characters of a typed quantity and the number in it; used by the readers of parse.h only.

namespace sw::number_text {

/// A no-break or thin space: surrounds units, groups digits, never separates readings.
inline constexpr char kGlue = '\x1f';
/// A character that only ever groups digits (U+066C).
inline constexpr char kGrouping = '\x1e';

/// The text with digits of any script as 0-9, marks as '.' and ',', spaces as ' ', kGlue or '\n',
/// minus as '-', fullwidth letters as ASCII, micro as 'u', all degree signs as U+00B0, all double
/// primes as
/// '"'. Nothing if the text is not UTF-8 or holds a control character.
[[nodiscard]] std::optional<std::string> normalised(std::string_view text);

[[nodiscard]] bool isDigit(char c);
[[nodiscard]] bool isMark(char c);
/// Space, line end or glue.
[[nodiscard]] bool isBlank(char c);
[[nodiscard]] std::string_view trimmed(std::string_view text);
/// Whether a number could start here: a digit, a mark before a digit, or a sign before either.
[[nodiscard]] bool startsNumber(std::string_view text);

enum class NumberFault { None, NotANumber, TwoMarks, NotFinite, TooLong };

/// The number at the front of a normalised text. With a fault the other fields mean nothing.
struct ScannedNumber {
  NumberFault fault = NumberFault::None;
  std::string number;  ///< "-4.6": as typed, with a point and no plus
  double value = 0.0;
  bool hasMark = false;
  bool commaMark = false;
  bool leadingMark = false;  ///< ".5": no digit before the mark
  std::size_t length = 0;    ///< characters of the text that belong to it
};
[[nodiscard]] ScannedNumber scanNumber(std::string_view text);

/// For an error message: valid UTF-8 without control characters, at most 60 characters and "...".
[[nodiscard]] std::string echo(std::string_view text);

}  // namespace sw::number_text
