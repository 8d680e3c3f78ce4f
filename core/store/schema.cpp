// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/schema.h"

#include <sqlite3.h>

#include <array>
#include <utility>

#include "store/book_file.h"

namespace sw::store {

namespace {

constexpr int kLargestValue = 20'000'000;  // bytes: a picture
constexpr int kLongestSql = 100'000;
constexpr int kMostColumns = 100;
constexpr int kMostAttached = 1;

struct Limit {
  const char* name;
  int id;
  int value;
};

Result<void> refused(const std::string& name, const std::string& expected,
                     const std::string& found) {
  return fail(ErrorCode::Internal, "store.setting_refused", {},
              {{"name", name}, {"expected", expected}, {"found", found}});
}

Result<void> applyFlag(sqlite3* handle, const char* name, int option, int wanted) {
  int found = -1;
  sqlite3_db_config(handle, option, wanted, &found);
  if (found != wanted) return refused(name, std::to_string(wanted), std::to_string(found));
  return {};
}

Result<std::vector<std::string>> faultsOf(Connection& connection, SqlLiteral pragma) {
  auto query = connection.query(pragma);
  if (!query) return failAs(query);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::vector<std::string> faults;
  for (;;) {
    const auto row = query->next();
    if (!row) return failAs(row);
    if (!*row) break;
    const std::string text = query->text(0);
    if (text != "ok") faults.push_back(text);
  }
  return faults;
}

Error migrationError(const std::string& step, const Error& cause) {
  if (cause.key == "store.disk_full" || cause.key == "store.io_error") return cause;
  return Error{ErrorCode::CannotWrite,
               "store.migration_failed",
               {},
               {{"step", step}, {"cause", cause.key}, {"text", cause.detail("text")}}};
}

Result<void> runSteps(Connection& connection, std::span<const Migration> steps, int from) {
  for (const Migration& step : steps) {
    if (step.to <= from) continue;
    for (const std::string& statement : step.statements) {
      const auto ran = connection.runSchema(statement);
      if (!ran) return tl::make_unexpected(migrationError(step.name, ran.error()));
    }
    // PRAGMA takes no bound value; the number comes from the list of steps.
    const auto numbered = connection.runSchema("PRAGMA user_version = " + std::to_string(step.to));
    if (!numbered) return tl::make_unexpected(migrationError(step.name, numbered.error()));
  }
  return {};
}

Result<void> checkSteps(Connection& connection, std::span<const Migration> steps) {
  const std::string last = steps.empty() ? "" : steps.back().name;
  for (const auto check : {&integrityFaults, &foreignKeyFaults}) {
    const auto faults = check(connection);
    if (!faults) return tl::make_unexpected(migrationError(last, faults.error()));
    if (!faults->empty()) {
      return fail(ErrorCode::CannotWrite, "store.migration_failed", {},
                  {{"step", last}, {"cause", "store.damaged"}, {"text", faults->front()}});
    }
  }
  return {};
}

}  // namespace

std::vector<Setting> connectionSettings(Access access) {
  std::vector<Setting> settings{
      {"foreign_keys", "PRAGMA foreign_keys = ON", "PRAGMA foreign_keys", "1"},
      {"recursive_triggers", "PRAGMA recursive_triggers = ON", "PRAGMA recursive_triggers", "1"},
      {"cell_size_check", "PRAGMA cell_size_check = ON", "PRAGMA cell_size_check", "1"},
      {"busy_timeout", "", "PRAGMA busy_timeout", "250"},
  };
  if (access == Access::ReadOnly) {
    settings.push_back({"query_only", "PRAGMA query_only = ON", "PRAGMA query_only", "1"});
  }
  return settings;
}

std::vector<Setting> durabilitySettings() {
  return {
      {"journal_mode", "PRAGMA journal_mode = DELETE", "PRAGMA journal_mode", "delete"},
      // EXTRA (3) also syncs the folder after the journal is deleted.
      {"synchronous", "PRAGMA synchronous = EXTRA", "PRAGMA synchronous", "3"},
  };
}

Result<void> applySettings(Connection& connection, std::span<const Setting> settings) {
  for (const Setting& setting : settings) {
    if (!setting.set.empty()) {
      if (const auto ran = connection.runSchema(setting.set); !ran) return ran;
    }
    const auto found = connection.schemaValue(setting.read);
    if (!found) return failAs(found);
    if (*found != setting.expected) return refused(setting.name, setting.expected, *found);
  }
  return {};
}

Result<void> applyGuards(Connection& connection) {
  sqlite3* handle = connection.handle();
  if (const auto r = applyFlag(handle, "defensive", SQLITE_DBCONFIG_DEFENSIVE, 1); !r) return r;
  if (const auto r = applyFlag(handle, "trusted_schema", SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0); !r) {
    return r;
  }
  static constexpr std::array kLimits{
      Limit{"length", SQLITE_LIMIT_LENGTH, kLargestValue},
      Limit{"sql_length", SQLITE_LIMIT_SQL_LENGTH, kLongestSql},
      Limit{"column", SQLITE_LIMIT_COLUMN, kMostColumns},
      Limit{"attached", SQLITE_LIMIT_ATTACHED, kMostAttached},
  };
  for (const Limit& limit : kLimits) {
    sqlite3_limit(handle, limit.id, limit.value);
    const int found = sqlite3_limit(handle, limit.id, -1);
    if (found != limit.value) {
      return refused(limit.name, std::to_string(limit.value), std::to_string(found));
    }
  }
  return {};
}

Result<std::string> schemaText(Connection& connection) {
  auto query = connection.query(
      "SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' "
      "ORDER BY type, name");
  if (!query) return failAs(query);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::string text;
  for (;;) {
    const auto row = query->next();
    if (!row) return failAs(row);
    if (!*row) return text;
    text += "-- " + query->text(0) + " " + query->text(1) + "\n" + query->text(2) + ";\n";
  }
}

Result<std::string> goldenSchema(std::span<const Migration> steps, int version) {
  auto connection = Connection::open({}, Access::ReadWrite);
  if (!connection) return failAs(connection);
  for (const Migration& step : steps) {
    if (step.to > version) break;
    for (const std::string& statement : step.statements) {
      if (const auto ran = (*connection)->runSchema(statement); !ran) return failAs(ran);
    }
  }
  return schemaText(**connection);
}

Result<std::vector<std::string>> integrityFaults(Connection& connection) {
  return faultsOf(connection, "PRAGMA integrity_check");
}

Result<std::vector<std::string>> quickFaults(Connection& connection) {
  return faultsOf(connection, "PRAGMA quick_check");
}

Result<std::vector<std::string>> foreignKeyFaults(Connection& connection) {
  auto query = connection.query("PRAGMA foreign_key_check");
  if (!query) return failAs(query);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::vector<std::string> faults;
  for (;;) {
    const auto row = query->next();
    if (!row) return failAs(row);
    if (!*row) return faults;
    faults.push_back(query->text(0) + " " + query->text(1) + " " + query->text(2));
  }
}

Result<void> migrate(Connection& connection, std::span<const Migration> steps, int from) {
  // A step may rebuild a table; foreign keys cannot be switched inside a transaction, and are
  // checked as a whole before the commit.
  if (const auto off = connection.run("PRAGMA foreign_keys = OFF"); !off) return off;
  Result<void> done;
  {
    auto transaction = Transaction::begin(connection);
    if (!transaction) return failAs(transaction);
    done = runSteps(connection, steps, from);
    if (done) done = checkSteps(connection, steps);
    if (done) done = transaction->commit();
  }
  if (!done) return done;
  const auto settings = connectionSettings(Access::ReadWrite);
  return applySettings(connection, settings);
}

}  // namespace sw::store
