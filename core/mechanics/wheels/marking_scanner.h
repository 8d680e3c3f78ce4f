// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace sw::mechanics {

/// A number as it is marked: "10.50" has a point.
struct MarkedNumber {
  double value = 0;
  bool hasPoint = false;
};

/// Walks over the text marked on a part: letters as capitals, blanks between parts skipped, a comma
/// between digits is a point, the multiplication sign is an X.
class MarkingScanner {
 public:
  explicit MarkingScanner(std::string_view text);

  [[nodiscard]] bool atEnd();
  /// Takes the text if it comes next, whatever follows it.
  [[nodiscard]] bool take(std::string_view text);
  /// Takes the word if it comes next and no letter or digit follows it.
  [[nodiscard]] bool takeWord(std::string_view word);
  /// Takes a number of at most four digits before and two behind a point.
  [[nodiscard]] std::optional<MarkedNumber> number();
  /// The letter that comes next, where a blank or the end follows it; it is not taken.
  [[nodiscard]] std::optional<char> letterAlone();
  void skipLetter() { ++m_at; }
  [[nodiscard]] std::string rest() const { return m_text.substr(m_at); }

 private:
  void skipBlanks();
  [[nodiscard]] std::size_t digitsFrom(std::size_t at) const;

  std::string m_text;
  std::size_t m_at = 0;
};

}  // namespace sw::mechanics
