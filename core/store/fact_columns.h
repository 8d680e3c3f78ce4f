// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "model/entry.h"

// How the fields of a fact become columns, in one place for inserting, reading and the tests of the
// schema: a TypedQuantity named x becomes x_kind, x_number, x_unit, x_si; a PullState named x
// becomes x_seal, x_rods ...; an absent optional is NULL in all of its columns.

namespace sw::store {

enum class ColumnType { Text, Integer, Real };

struct Column {
  std::string name;
  ColumnType type = ColumnType::Text;
  bool nullable = false;
  bool flag = false;                    ///< 0 or 1
  bool date = false;                    ///< "2031-04-05"
  bool entry = false;                   ///< names another entry
  std::vector<std::string_view> words;  ///< the only texts allowed; empty = any
};

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsId : std::false_type {};
template <class Tag>
struct IsId<Id<Tag>> : std::true_type {};

/// The names of the quantity kinds, as stored.
[[nodiscard]] inline std::vector<std::string_view> quantityKindWords() {
  std::vector<std::string_view> words;
  for (int i = 0; i <= static_cast<int>(QuantityKind::Number); ++i) {
    words.push_back(word(static_cast<QuantityKind>(i)));
  }
  return words;
}

/// Visits the fields of a fact and lists its columns.
class ColumnLister {
 public:
  explicit ColumnLister(std::vector<Column>& out, std::string prefix = {}, bool nullable = false)
      : m_out(out), m_prefix(std::move(prefix)), m_nullable(nullable) {}

  template <class T>
  void operator()(std::string_view name, const T&) const {
    const std::string full = m_prefix + std::string(name);
    if constexpr (IsOptional<T>::value) {
      using Inner = typename T::value_type;
      ColumnLister(m_out, m_prefix, true)(name, Inner{});
    } else if constexpr (std::is_same_v<T, model::PullState>) {
      const model::PullState state;
      model::PullState::fields(state, ColumnLister(m_out, full + "_", m_nullable));
    } else if constexpr (std::is_same_v<T, TypedQuantity>) {
      Column& kind = add(full + "_kind", ColumnType::Text);
      kind.words = quantityKindWords();
      add(full + "_number", ColumnType::Text);
      add(full + "_unit", ColumnType::Text);
      add(full + "_si", ColumnType::Real);
    } else if constexpr (std::is_same_v<T, QuantityKind>) {
      add(full, ColumnType::Text).words = quantityKindWords();
    } else if constexpr (std::is_same_v<T, bool>) {
      add(full, ColumnType::Integer).flag = true;
    } else if constexpr (std::is_same_v<T, std::int64_t>) {
      add(full, ColumnType::Integer);
    } else if constexpr (IsId<T>::value) {
      add(full, ColumnType::Integer).entry = std::is_same_v<T, model::EntryId>;
    } else if constexpr (std::is_same_v<T, double>) {
      add(full, ColumnType::Real);
    } else if constexpr (std::is_same_v<T, Date>) {
      add(full, ColumnType::Text).date = true;
    } else if constexpr (HasWords<T>) {
      Column& column = add(full, ColumnType::Text);
      for (const auto& [value, text] : Words<T>::table) column.words.push_back(text);
    } else {
      static_assert(std::is_same_v<T, std::string>, "a field type without a column");
      add(full, ColumnType::Text);
    }
  }

 private:
  Column& add(std::string name, ColumnType type) const {
    Column column;
    column.name = std::move(name);
    column.type = type;
    column.nullable = m_nullable;
    m_out.push_back(std::move(column));
    return m_out.back();
  }

  std::vector<Column>& m_out;
  std::string m_prefix;
  bool m_nullable;
};

/// The columns of one kind of fact, in the order of its fields (without the key column "entry").
template <class Fact>
[[nodiscard]] std::vector<Column> columnsOf() {
  std::vector<Column> columns;
  const Fact fact;
  Fact::fields(fact, ColumnLister(columns));
  return columns;
}

/// Calls visit.operator()<Fact>() for every kind of fact.
template <class V, std::size_t I = 0>
void forEachKind(V&& visit) {
  if constexpr (I < std::variant_size_v<model::Payload>) {
    visit.template operator()<std::variant_alternative_t<I, model::Payload>>();
    forEachKind<V, I + 1>(std::forward<V>(visit));
  }
}

}  // namespace sw::store
