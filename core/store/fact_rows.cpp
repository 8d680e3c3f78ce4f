// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/fact_rows.h"

#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "store/fact_columns.h"

namespace sw::store {

namespace {

constexpr std::string_view kTablePrefix = "fact_";

/// Binds the fields of a fact in the order of its columns.
struct Binder {
  Query& query;

  template <class T>
  void operator()(std::string_view name, const T& value) const {
    if constexpr (IsOptional<T>::value) {
      if (value) {
        (*this)(name, *value);
      } else {
        absent<typename T::value_type>(name);
      }
    } else if constexpr (std::is_same_v<T, model::PullState>) {
      model::PullState::fields(value, Binder{query});
    } else if constexpr (std::is_same_v<T, TypedQuantity>) {
      query.bind(word(value.kind));
      query.bind(std::string_view(value.number));
      query.bind(std::string_view(value.unit));
      query.bind(value.si);
    } else if constexpr (std::is_same_v<T, QuantityKind>) {
      query.bind(word(value));
    } else if constexpr (std::is_same_v<T, Date>) {
      query.bind(std::string_view(toIso(value)));
    } else if constexpr (IsId<T>::value) {
      query.bind(value.value);
    } else if constexpr (HasWords<T>) {
      query.bind(wordOf(value));
    } else if constexpr (std::is_same_v<T, bool>) {
      query.bind(static_cast<std::int64_t>(value ? 1 : 0));
    } else if constexpr (std::is_same_v<T, std::string>) {
      query.bind(std::string_view(value));
    } else {
      static_assert(std::is_same_v<T, double> || std::is_same_v<T, std::int64_t>);
      query.bind(value);
    }
  }

  /// NULL in every column the field has.
  template <class T>
  void absent(std::string_view name) const {
    std::vector<Column> columns;
    ColumnLister{columns}(name, T{});
    for (std::size_t i = 0; i < columns.size(); ++i) query.bindNull();
  }
};

/// Reads the fields of a fact from a row, from column `column` on.
struct RowReader {
  const Query& query;
  int& column;
  std::string& bad;  ///< the first field whose value is none of ours

  template <class T>
  void operator()(std::string_view name, std::optional<T>& value) const {
    if (!query.isNull(column)) {
      (*this)(name, value.emplace());
      return;
    }
    value.reset();
    std::vector<Column> columns;
    ColumnLister{columns}(name, T{});
    column += static_cast<int>(columns.size());
  }

  template <class T>
  void operator()(std::string_view name, T& value) const {
    if constexpr (std::is_same_v<T, model::PullState>) {
      model::PullState::fields(value, RowReader{query, column, bad});
    } else if constexpr (std::is_same_v<T, TypedQuantity>) {
      take(name, quantityKindFromWord(query.text(column++)), value.kind);
      value.number = query.text(column++);
      value.unit = query.text(column++);
      value.si = query.real(column++);
    } else if constexpr (std::is_same_v<T, QuantityKind>) {
      take(name, quantityKindFromWord(query.text(column++)), value);
    } else if constexpr (std::is_same_v<T, Date>) {
      const auto date = parseDate(query.text(column++));
      take(name, date ? std::optional<Date>(*date) : std::nullopt, value);
    } else if constexpr (IsId<T>::value) {
      value.value = query.integer(column++);
    } else if constexpr (HasWords<T>) {
      take(name, fromWord<T>(query.text(column++)), value);
    } else if constexpr (std::is_same_v<T, bool>) {
      value = query.integer(column++) != 0;
    } else if constexpr (std::is_same_v<T, std::string>) {
      value = query.text(column++);
    } else if constexpr (std::is_same_v<T, double>) {
      value = query.real(column++);
    } else {
      static_assert(std::is_same_v<T, std::int64_t>);
      value = query.integer(column++);
    }
  }

  template <class T>
  void take(std::string_view name, const std::optional<T>& read, T& value) const {
    if (read) {
      value = *read;
    } else if (bad.empty()) {
      bad = name;
    }
  }
};

/// The statements of one kind of fact, made from the list of its columns.
struct KindTable {
  std::string_view kind;
  Sql insert;
  Sql selectOne;
  Sql selectMany;
  model::Payload (*read)(const Query& query, std::string& bad);
};

template <class Fact>
model::Payload readRow(const Query& query, std::string& bad) {
  Fact fact;
  int column = 1;
  Fact::fields(fact, RowReader{query, column, bad});
  return fact;
}

template <class Fact>
KindTable kindTable() {
  const auto columns = columnsOf<Fact>();
  Sql insert("INSERT INTO ");
  insert.name(kTablePrefix, Fact::kKind).add(" (\"entry\"");
  Sql select("SELECT f.\"entry\"");
  for (const Column& column : columns) {
    insert.add(", ").name(column.name);
    select.add(", f.").name(column.name);
  }
  insert.add(") VALUES (?");
  for (std::size_t i = 0; i < columns.size(); ++i) insert.add(", ?");
  insert.add(")");
  select.add(" FROM ").name(kTablePrefix, Fact::kKind).add(" f");
  Sql many = select;
  select.add(" WHERE f.\"entry\" = ?");
  many.add(
      " JOIN \"entry\" e ON e.\"id\" = f.\"entry\" WHERE e.\"kind\" = ? AND e.\"job\" IS ? "
      "AND e.\"id\" <= ? ORDER BY e.\"id\"");
  return {Fact::kKind, insert, select, many, &readRow<Fact>};
}

template <std::size_t... I>
auto makeKindTables(std::index_sequence<I...>) {
  return std::array{kindTable<std::variant_alternative_t<I, model::Payload>>()...};
}

const auto& kindTables() {
  static const auto kTables =
      makeKindTables(std::make_index_sequence<std::variant_size_v<model::Payload>>{});
  return kTables;
}

Result<const KindTable*> tableOf(std::string_view kind) {
  for (const KindTable& table : kindTables()) {
    if (table.kind == kind) return &table;
  }
  return fail(ErrorCode::Internal, "store.unknown_kind", {}, {{"kind", std::string(kind)}});
}

Result<FactRow> readCurrent(const KindTable& table, const Query& query) {
  std::string bad;
  const model::EntryId id{query.integer(0)};
  model::Payload payload = table.read(query, bad);
  if (!bad.empty()) {
    return fail(ErrorCode::BookDamaged, "store.bad_value", bad,
                {{"entry", std::to_string(id.value)}, {"column", bad}});
  }
  return FactRow{id, std::move(payload)};
}

}  // namespace

Result<void> insertFact(Connection& connection, model::EntryId entry,
                        const model::Payload& payload) {
  const KindTable& table = kindTables()[payload.index()];
  auto query = connection.query(table.insert);
  if (!query) return failAs(query);
  query->bind(entry.value);
  std::visit([&](const auto& fact) { std::decay_t<decltype(fact)>::fields(fact, Binder{*query}); },
             payload);
  return query->run();
}

Result<std::vector<FactRow>> readFacts(Connection& connection, std::string_view kind,
                                       const FactFilter& filter) {
  const auto table = tableOf(kind);
  if (!table) return failAs(table);
  auto query = connection.query((*table)->selectMany);
  if (!query) return failAs(query);
  query->bind(kind);
  if (filter.job) {
    query->bind(filter.job->value);
  } else {
    query->bindNull();
  }
  query->bind(filter.last.value);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::vector<FactRow> rows;
  for (;;) {
    const auto more = query->next();
    if (!more) return failAs(more);
    if (!*more) return rows;
    auto row = readCurrent(**table, *query);
    if (!row) return failAs(row);
    rows.push_back(std::move(*row));
  }
}

Result<model::Payload> readFact(Connection& connection, std::string_view kind,
                                model::EntryId entry) {
  const auto table = tableOf(kind);
  if (!table) return failAs(table);
  auto query = connection.query((*table)->selectOne);
  if (!query) return failAs(query);
  query->bind(entry.value);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  const auto more = query->next();
  if (!more) return failAs(more);
  if (!*more) {
    return fail(ErrorCode::BookDamaged, "store.fact_missing", {},
                {{"entry", std::to_string(entry.value)}});
  }
  auto row = readCurrent(**table, *query);
  if (!row) return failAs(row);
  return std::move(row->second);
}

}  // namespace sw::store
