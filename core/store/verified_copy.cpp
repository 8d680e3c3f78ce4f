// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/verified_copy.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <map>
#include <memory>
#include <vector>

#include "store/file_place.h"
#include "store/schema.h"

namespace sw::store {

namespace fs = std::filesystem;

namespace {

struct CloseHandle {
  void operator()(sqlite3* handle) const { sqlite3_close_v2(handle); }
};
using Handle = std::unique_ptr<sqlite3, CloseHandle>;

/// What must be the same in a book and its copy.
struct Content {
  std::int64_t applicationId = 0;
  std::int64_t userVersion = 0;
  std::string schema;
  std::map<std::string, std::int64_t> rows;  ///< by table
};

Result<std::int64_t> countRows(Connection& connection, const std::string& table) {
  Sql sql("SELECT count(*) FROM ");
  auto query = connection.query(sql.name(table));
  if (!query) return failAs(query);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  const auto row = query->next();
  if (!row) return failAs(row);
  return query->integer(0);
}

Result<std::vector<std::string>> tablesOf(Connection& connection) {
  auto query = connection.query(
      "SELECT name FROM sqlite_schema WHERE type = 'table' "
      "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name");
  if (!query) return failAs(query);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::vector<std::string> tables;
  for (;;) {
    const auto row = query->next();
    if (!row) return failAs(row);
    if (!*row) return tables;
    tables.push_back(query->text(0));
  }
}

Result<Content> contentOf(Connection& connection) {
  Content content;
  const auto application = connection.integer("PRAGMA application_id");
  if (!application) return failAs(application);
  content.applicationId = *application;
  const auto version = connection.integer("PRAGMA user_version");
  if (!version) return failAs(version);
  content.userVersion = *version;
  auto schema = schemaText(connection);
  if (!schema) return failAs(schema);
  content.schema = std::move(*schema);
  const auto tables = tablesOf(connection);
  if (!tables) return failAs(tables);
  for (const std::string& table : *tables) {
    const auto rows = countRows(connection, table);
    if (!rows) return failAs(rows);
    content.rows[table] = *rows;
  }
  return content;
}

Result<void> differs(const std::string& reason, const std::string& text = {}) {
  return fail(ErrorCode::BookDamaged, "store.copy_differs", {},
              {{"reason", reason}, {"text", text}});
}

Result<void> compare(const Content& source, const Content& copy) {
  if (source.applicationId != copy.applicationId || source.userVersion != copy.userVersion) {
    return differs("version");
  }
  if (source.schema != copy.schema) return differs("schema");
  for (const auto& [table, rows] : source.rows) {
    const auto found = copy.rows.find(table);
    if (found == copy.rows.end() || found->second != rows) return differs("rows", table);
  }
  return {};
}

Result<void> copyPages(Connection& source, const std::string& target) {
  sqlite3* raw = nullptr;
  const int opened = sqlite3_open_v2(target.c_str(), &raw, SQLITE_OPEN_READWRITE, nullptr);
  const Handle handle(raw);
  if (opened != SQLITE_OK) return tl::make_unexpected(sqliteError(opened, "open"));
  sqlite3_backup* backup = sqlite3_backup_init(raw, "main", source.handle(), "main");
  if (backup == nullptr) {
    return tl::make_unexpected(sqliteError(sqlite3_extended_errcode(raw), sqlite3_errmsg(raw)));
  }
  const int stepped = sqlite3_backup_step(backup, -1);
  const int finished = sqlite3_backup_finish(backup);
  const int code = finished != SQLITE_OK ? finished : stepped;
  if (code == SQLITE_OK || code == SQLITE_DONE) return {};
  return tl::make_unexpected(sqliteError(code, sqlite3_errstr(code)));
}

Result<Content> verify(const std::string& copy) {
  // Not read-only: SQLite leaves CHECK constraints out of integrity_check there.
  const auto connection = Connection::open(copy, Access::ReadWrite);
  if (!connection) return failAs(connection);
  for (const auto check : {&integrityFaults, &foreignKeyFaults}) {
    const auto faults = check(**connection);
    if (!faults) return failAs(faults);
    if (!faults->empty()) return failAs(differs("check", faults->front()));
  }
  return contentOf(**connection);
}

/// Pages and counts of one moment, though another program may be writing.
Result<Content> copyAtOneMoment(Connection& source, const std::string& temporary) {
  if (const auto begun = source.run("BEGIN"); !begun) return failAs(begun);
  auto content = contentOf(source);
  const Result<void> copied = content ? copyPages(source, temporary) : Result<void>{};
  if (const auto ended = source.run("COMMIT"); !ended) return failAs(ended);
  if (!copied) return failAs(copied);
  return content;
}

Result<std::int64_t> jobsIn(const std::string& copy) {
  const auto connection = Connection::open(copy, Access::ReadOnly);
  if (!connection) return failAs(connection);
  return (*connection)->integer("SELECT count(DISTINCT \"job\") FROM \"entry\"");
}

Result<VerifiedCopy> fillTemporary(Connection& source, const std::string& temporary) {
  const auto before = copyAtOneMoment(source, temporary);
  if (!before) return failAs(before);
  if (const auto synced = syncPath(temporary); !synced) return failAs(synced);
  const auto after = verify(temporary);
  if (!after) return failAs(after);
  if (const auto same = compare(*before, *after); !same) return failAs(same);
  const auto jobs = jobsIn(temporary);
  if (!jobs) return failAs(jobs);
  const auto entries = after->rows.find("entry");
  return VerifiedCopy{temporary, entries == after->rows.end() ? 0 : entries->second, *jobs};
}

}  // namespace

Result<VerifiedCopy> copyToTemporary(Connection& source, const std::string& temporary) {
  {
    const Descriptor empty(::open(temporary.c_str(), O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0600));
    if (!empty.open()) {
      return tl::make_unexpected(fileError("store.cannot_create", temporary, errno));
    }
  }
  auto copy = fillTemporary(source, temporary);
  if (!copy) {
    ::unlink(temporary.c_str());
    ::unlink((temporary + "-journal").c_str());
  }
  return copy;
}

Result<VerifiedCopy> copyVerified(Connection& source, const std::string& folder,
                                  const std::string& stem) {
  const std::string temporary =
      (fs::path(folder) / ("." + stem + ".part-" + std::to_string(getpid()))).string();
  auto copy = copyToTemporary(source, temporary);
  if (!copy) return copy;
  constexpr int kMostCopies = 1000;
  for (int number = 1; number <= kMostCopies; ++number) {
    const std::string suffix = number == 1 ? "" : "-" + std::to_string(number);
    copy->path = (fs::path(folder) / (stem + suffix + ".swbook")).string();
    const auto named = renameNew(temporary, copy->path);
    if (named) {
      if (const auto synced = syncPath(folder); !synced) return failAs(synced);
      return copy;
    }
    if (named.error().key != "store.exists") {
      ::unlink(temporary.c_str());
      return failAs(named);
    }
  }
  ::unlink(temporary.c_str());
  return fail(ErrorCode::CannotWrite, "store.cannot_create", {}, {{"path", copy->path}});
}

}  // namespace sw::store
