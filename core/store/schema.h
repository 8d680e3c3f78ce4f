// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/connection.h"
#include "store/migrations/migration.h"

// The opening ritual and the chain of migrations.

namespace sw::store {

/// One line of the ritual: how a setting is made and what it must read back as.
struct Setting {
  std::string name;
  std::string set;  ///< a PRAGMA, or empty where it is only read
  std::string read;
  std::string expected;
};

/// Settings of the connection alone: they change nothing in the file.
[[nodiscard]] std::vector<Setting> connectionSettings(Access access);
/// How commits are made durable, once the book is known to be a sound one of ours.
[[nodiscard]] std::vector<Setting> durabilitySettings();
/// Makes each setting and reads it back. Errors: Internal "store.setting_refused" (details: name,
/// expected, found).
[[nodiscard]] Result<void> applySettings(Connection& connection, std::span<const Setting> settings);
/// SQLite's own guards, without SQL: defensive mode on, trusted schema off, limits cut; read back.
[[nodiscard]] Result<void> applyGuards(Connection& connection);

/// The texts of all tables, indexes and triggers of a book, in a fixed order.
[[nodiscard]] Result<std::string> schemaText(Connection& connection);
/// The schema text that the first `version` steps give.
[[nodiscard]] Result<std::string> goldenSchema(std::span<const Migration> steps, int version);

/// The answer of `PRAGMA integrity_check` or `quick_check`, one line a fault; empty = sound.
[[nodiscard]] Result<std::vector<std::string>> integrityFaults(Connection& connection);
[[nodiscard]] Result<std::vector<std::string>> quickFaults(Connection& connection);
/// Rows of `PRAGMA foreign_key_check` as "table row parent"; empty = sound.
[[nodiscard]] Result<std::vector<std::string>> foreignKeyFaults(Connection& connection);

/// Runs the steps after `from` in one transaction with the version number, checks the result, and
/// commits. On any error the book is as before. Errors: CannotWrite "store.migration_failed"
/// (details: step, text), or the error of the disk.
[[nodiscard]] Result<void> migrate(Connection& connection, std::span<const Migration> steps,
                                   int from);

}  // namespace sw::store
