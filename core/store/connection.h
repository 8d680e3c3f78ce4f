// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"
#include "store/sql.h"

struct sqlite3;
class QSqlQuery;
class QVariant;

// The one door to Qt Sql: a connection with prepared statements that are kept, and one use of such
// a statement. Every value goes through bind(); SQL text comes from sql.h.

namespace sw::store {

enum class Access { ReadWrite, ReadOnly };

/// What SQLite's code means for the caller. Keys: store.disk_full, store.io_error, store.read_only,
/// store.busy, store.damaged, store.constraint (or the key a trigger raised),
/// store.already_replaced, store.unknown_reference, store.sql. Details: sqlite (extended code),
/// text.
[[nodiscard]] Error sqliteError(int extendedCode, const std::string& text);

/// One use of a prepared statement; resets it at the end so that no read lock stays behind.
class Query {
 public:
  explicit Query(QSqlQuery& query) : m_query(&query) {}
  Query(Query&& other) noexcept;
  Query& operator=(Query&&) = delete;
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;
  ~Query();

  /// Binds the next parameter. Text must be UTF-8 without NUL and without a leading byte order
  /// mark (Qt and SQLite take it away), numbers finite: else run() fails
  /// with InvalidInput "store.bad_text" or "store.not_finite".
  void bind(std::int64_t value);
  void bind(double value);
  void bind(std::string_view text);
  void bindBytes(std::string_view bytes);
  void bindNull();

  [[nodiscard]] Result<void> run();
  /// Moves to the next row; false at the end.
  [[nodiscard]] Result<bool> next();

  [[nodiscard]] bool isNull(int column) const;
  [[nodiscard]] std::int64_t integer(int column) const;
  [[nodiscard]] double real(int column) const;
  [[nodiscard]] std::string text(int column) const;
  [[nodiscard]] std::string bytes(int column) const;

 private:
  void bindVariant(const QVariant& value);

  QSqlQuery* m_query;
  int m_bound = 0;
  std::optional<Error> m_error;
};

class Connection {
 public:
  /// Opens an existing database file (never makes one) or, with an empty path, one in memory.
  /// `vfs` names a registered SQLite VFS, empty = the default.
  [[nodiscard]] static Result<std::unique_ptr<Connection>> open(const std::string& path,
                                                                Access access,
                                                                const std::string& vfs = {});
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;
  ~Connection();

  /// The prepared statement with this text, ready to bind.
  [[nodiscard]] Result<Query> query(const Sql& sql);
  [[nodiscard]] Result<Query> query(SqlLiteral sql) { return query(Sql(sql)); }
  /// Runs a statement without values and without rows.
  [[nodiscard]] Result<void> run(SqlLiteral sql);
  /// Runs a statement of a migration step.
  [[nodiscard]] Result<void> runSchema(const std::string& sql);
  /// The first value of a PRAGMA of the ritual.
  [[nodiscard]] Result<std::string> schemaValue(const std::string& sql);
  /// The first value of the first row as text; empty if there is no row.
  [[nodiscard]] Result<std::string> value(SqlLiteral sql);
  [[nodiscard]] Result<std::int64_t> integer(SqlLiteral sql);

  [[nodiscard]] sqlite3* handle() const { return m_handle; }

 private:
  explicit Connection(std::string name);

  std::string m_name;
  sqlite3* m_handle = nullptr;
  std::map<std::string, std::unique_ptr<QSqlQuery>> m_prepared;
};

/// BEGIN IMMEDIATE ... COMMIT; rolls back at the end unless committed.
class Transaction {
 public:
  [[nodiscard]] static Result<Transaction> begin(Connection& connection);
  Transaction(Transaction&& other) noexcept;
  Transaction& operator=(Transaction&&) = delete;
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  ~Transaction();
  [[nodiscard]] Result<void> commit();

 private:
  explicit Transaction(Connection& connection) : m_connection(&connection) {}
  Connection* m_connection;
};

}  // namespace sw::store
