// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "store/file_place.h"
#include "store/migrations/migration.h"

namespace sw::store {

/// What opening depends on outside the file; the defaults are those of the program, tests put their
/// own.
struct BookOptions {
  std::string vfs;  ///< a registered SQLite VFS; empty = the system's
  std::function<std::string(const std::string&)> fileSystemType = &store::fileSystemType;
  std::function<std::uint64_t(const std::string&)> freeBytes = &store::freeBytes;
  std::vector<Migration> migrations = allMigrations();
  /// Every opening checks the pages of a book up to this size (measured: about 0.1 s); a larger one
  /// is checked after a crash and at each daily copy, so that opening does not grow with the years.
  std::uint64_t quickCheckUpTo = 64ULL * 1024 * 1024;

  [[nodiscard]] int schemaVersion() const { return migrations.empty() ? 0 : migrations.back().to; }
};

}  // namespace sw::store
