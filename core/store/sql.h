// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

// SQL text that no value of a user can enter: it is made of literals of the source code and of
// names that hold nothing but a-z, 0-9 and "_". Values are bound.

namespace sw::store {

/// A piece of SQL that stands in the source code; anything else does not compile.
class SqlLiteral {
 public:
  template <std::size_t N>
  // NOLINTNEXTLINE(google-explicit-constructor): a literal may stand for itself
  consteval SqlLiteral(const char (&text)[N]) : m_text(text, N - 1) {}
  [[nodiscard]] constexpr std::string_view text() const { return m_text; }

 private:
  std::string_view m_text;
};

/// One statement, put together from literals and names.
class Sql {
 public:
  // NOLINTNEXTLINE(google-explicit-constructor): a literal is a statement
  Sql(SqlLiteral literal) : m_text(literal.text()) {}

  Sql& add(SqlLiteral literal) {
    m_text += literal.text();
    return *this;
  }
  /// Adds a quoted name with an optional prefix ("fact_" + kind). Characters outside a-z, 0-9 and
  /// "_" are dropped, so that a wrong name ends as "no such table", never as SQL.
  Sql& name(std::string_view first, std::string_view second = {}) {
    m_text += '"';
    addPlain(first);
    addPlain(second);
    m_text += '"';
    return *this;
  }
  [[nodiscard]] const std::string& text() const { return m_text; }

 private:
  void addPlain(std::string_view part) {
    for (const char c : part) {
      if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_') m_text += c;
    }
  }
  std::string m_text;
};

}  // namespace sw::store
