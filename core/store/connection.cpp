// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/connection.h"

#include <sqlite3.h>

#include <QtCore/QVariant>
#include <QtSql/QSqlDatabase>
#include <QtSql/QSqlDriver>
#include <QtSql/QSqlError>
#include <QtSql/QSqlQuery>
#include <atomic>
#include <cmath>
#include <utility>

namespace sw::store {

namespace {

constexpr int kPrimaryCodeMask = 0xff;

Error errorOf(const QSqlError& error) {
  bool known = false;
  const int code = error.nativeErrorCode().toInt(&known);
  return sqliteError(known ? code : SQLITE_ERROR, error.databaseText().toStdString());
}

/// A path as the file name of an SQLite URI: everything but letters, digits and "/._-~" is escaped.
std::string uriOf(const std::string& path, Access access, const std::string& vfs) {
  constexpr std::string_view kHex = "0123456789ABCDEF";
  std::string uri = "file:";
  for (const char c : path) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       std::string_view("/._-~").find(c) != std::string_view::npos;
    if (plain) {
      uri += c;
    } else {
      uri += '%';
      uri += kHex[byte >> 4U];
      uri += kHex[byte & 15U];
    }
  }
  if (path.empty()) return ":memory:";
  uri += access == Access::ReadOnly ? "?mode=ro" : "?mode=rw";
  if (!vfs.empty()) uri += "&vfs=" + vfs;
  return uri;
}

std::string nextName() {
  // Qt names connections in one table of the process, so the names come from one counter.
  static std::atomic<unsigned> counter{0};
  return "swivelwright-book-" + std::to_string(++counter);
}

QSqlDatabase databaseOf(const std::string& name) {
  return QSqlDatabase::database(QString::fromStdString(name), false);
}

Error constraintError(int code, const std::string& text) {
  std::vector<std::pair<std::string, std::string>> details{{"sqlite", std::to_string(code)},
                                                           {"text", text}};
  const auto conflict = [&](std::string key) {
    return Error{ErrorCode::Conflict, std::move(key), {}, std::move(details)};
  };
  if (code == SQLITE_CONSTRAINT_TRIGGER && text.starts_with("store.")) return conflict(text);
  if (code == SQLITE_CONSTRAINT_UNIQUE && text.find("entry.replaces") != std::string::npos) {
    return conflict("store.already_replaced");
  }
  if (code == SQLITE_CONSTRAINT_FOREIGNKEY) return conflict("store.unknown_reference");
  return conflict("store.constraint");
}

}  // namespace

Error sqliteError(int extendedCode, const std::string& text) {
  const auto make = [&](ErrorCode code, std::string key) {
    return Error{
        code, std::move(key), {}, {{"sqlite", std::to_string(extendedCode)}, {"text", text}}};
  };
  switch (extendedCode & kPrimaryCodeMask) {
    case SQLITE_FULL:
      return make(ErrorCode::CannotWrite, "store.disk_full");
    case SQLITE_IOERR:
    case SQLITE_CANTOPEN:
      return make(ErrorCode::CannotWrite, "store.io_error");
    case SQLITE_READONLY:
      return make(ErrorCode::BookReadOnly, "store.read_only");
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return make(ErrorCode::BookLocked, "store.busy");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return make(ErrorCode::BookDamaged, "store.damaged");
    case SQLITE_CONSTRAINT:
      return constraintError(extendedCode, text);
    default:
      return make(ErrorCode::Internal, "store.sql");
  }
}

Query::Query(Query&& other) noexcept
    : m_query(std::exchange(other.m_query, nullptr)),
      m_bound(other.m_bound),
      m_error(std::move(other.m_error)) {}

Query::~Query() {
  if (m_query != nullptr) m_query->finish();
}

void Query::bindVariant(const QVariant& value) {
  m_query->bindValue(m_bound++, value);
}

void Query::bind(std::int64_t value) {
  bindVariant(QVariant(static_cast<qlonglong>(value)));
}

void Query::bind(double value) {
  // SQLite would store NaN as NULL without a word.
  if (!std::isfinite(value) && !m_error) {
    m_error = Error{ErrorCode::OutOfRange, "store.not_finite", {}, {}};
  }
  bindVariant(QVariant(value));
}

void Query::bind(std::string_view text) {
  const QByteArray utf8 = QByteArray::fromRawData(text.data(), static_cast<qsizetype>(text.size()));
  const QString string = QString::fromUtf8(utf8);
  // A text that would come back other than it was given is refused, not altered.
  if (!m_error && (text.find('\0') != std::string_view::npos || string.toUtf8() != utf8)) {
    m_error = Error{ErrorCode::InvalidInput, "store.bad_text", {}, {}};
  }
  // A null QString would be bound as NULL; an empty text is a text.
  bindVariant(QVariant(string.isNull() ? QStringLiteral("") : string));
}

void Query::bindBytes(std::string_view bytes) {
  bindVariant(QVariant(QByteArray(bytes.data(), static_cast<qsizetype>(bytes.size()))));
}

void Query::bindNull() {
  bindVariant(QVariant());
}

Result<void> Query::run() {
  if (m_error) return tl::make_unexpected(*m_error);
  if (!m_query->exec()) return tl::make_unexpected(errorOf(m_query->lastError()));
  return {};
}

Result<bool> Query::next() {
  if (m_query->next()) return true;
  const QSqlError error = m_query->lastError();
  if (error.isValid()) return tl::make_unexpected(errorOf(error));
  return false;
}

bool Query::isNull(int column) const {
  return m_query->isNull(column);
}
std::int64_t Query::integer(int column) const {
  return m_query->value(column).toLongLong();
}
double Query::real(int column) const {
  return m_query->value(column).toDouble();
}
std::string Query::text(int column) const {
  return m_query->value(column).toString().toStdString();
}
std::string Query::bytes(int column) const {
  return m_query->value(column).toByteArray().toStdString();
}

Connection::Connection(std::string name) : m_name(std::move(name)) {}

Result<std::unique_ptr<Connection>> Connection::open(const std::string& path, Access access,
                                                     const std::string& vfs) {
  std::unique_ptr<Connection> self(new Connection(nextName()));
  QSqlDatabase database =
      QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), QString::fromStdString(self->m_name));
  if (!database.isValid()) return fail(ErrorCode::Internal, "store.no_driver");
  // 250 ms: longer than any commit of another program, too short to be felt as a frozen window.
  QString options = QStringLiteral("QSQLITE_OPEN_URI;QSQLITE_BUSY_TIMEOUT=250");
  if (access == Access::ReadOnly) options += QStringLiteral(";QSQLITE_OPEN_READONLY");
  database.setConnectOptions(options);
  database.setDatabaseName(QString::fromStdString(uriOf(path, access, vfs)));
  if (!database.open()) return tl::make_unexpected(errorOf(database.lastError()));
  const QVariant handle = database.driver()->handle();
  if (qstrcmp(handle.typeName(), "sqlite3*") == 0) {
    self->m_handle = *static_cast<sqlite3* const*>(handle.constData());
  }
  if (self->m_handle == nullptr) return fail(ErrorCode::Internal, "store.no_driver");
  sqlite3_extended_result_codes(self->m_handle, 1);
  return self;
}

Connection::~Connection() {
  m_prepared.clear();
  {
    QSqlDatabase database = databaseOf(m_name);
    if (database.isValid()) database.close();
  }
  QSqlDatabase::removeDatabase(QString::fromStdString(m_name));
}

Result<Query> Connection::query(const Sql& sql) {
  const auto found = m_prepared.find(sql.text());
  if (found != m_prepared.end()) return Query(*found->second);
  auto statement = std::make_unique<QSqlQuery>(databaseOf(m_name));
  statement->setForwardOnly(true);
  if (!statement->prepare(QString::fromStdString(sql.text()))) {
    return tl::make_unexpected(errorOf(statement->lastError()));
  }
  const auto placed = m_prepared.emplace(sql.text(), std::move(statement)).first;
  return Query(*placed->second);
}

Result<void> Connection::runSchema(const std::string& sql) {
  QSqlQuery statement(databaseOf(m_name));
  if (!statement.exec(QString::fromStdString(sql))) {
    return tl::make_unexpected(errorOf(statement.lastError()));
  }
  return {};
}

Result<void> Connection::run(SqlLiteral sql) {
  return runSchema(std::string(sql.text()));
}

Result<std::string> Connection::schemaValue(const std::string& sql) {
  QSqlQuery statement(databaseOf(m_name));
  statement.setForwardOnly(true);
  if (!statement.exec(QString::fromStdString(sql))) {
    return tl::make_unexpected(errorOf(statement.lastError()));
  }
  if (statement.next()) return statement.value(0).toString().toStdString();
  if (statement.lastError().isValid()) return tl::make_unexpected(errorOf(statement.lastError()));
  return std::string{};
}

Result<std::string> Connection::value(SqlLiteral sql) {
  return schemaValue(std::string(sql.text()));
}

Result<std::int64_t> Connection::integer(SqlLiteral sql) {
  const auto text = value(sql);
  if (!text) return failAs(text);
  return QString::fromStdString(*text).toLongLong();
}

Result<Transaction> Transaction::begin(Connection& connection) {
  const auto begun = connection.run("BEGIN IMMEDIATE");
  if (!begun) return failAs(begun);
  return Transaction(connection);
}

Transaction::Transaction(Transaction&& other) noexcept
    : m_connection(std::exchange(other.m_connection, nullptr)) {}

Transaction::~Transaction() {
  if (m_connection == nullptr || sqlite3_get_autocommit(m_connection->handle()) != 0) return;
  // Nothing can be told from a destructor; a rollback that fails leaves a hot journal, which the
  // next opening rolls back.
  (void)m_connection->run("ROLLBACK");
}

Result<void> Transaction::commit() {
  const auto done = m_connection->run("COMMIT");
  if (done) m_connection = nullptr;
  return done;
}

}  // namespace sw::store
