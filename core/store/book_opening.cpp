// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/book_opening.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>

#include "store/schema.h"
#include "store/verified_copy.h"

namespace sw::store {

namespace fs = std::filesystem;

namespace {

// A migration keeps the old pages in the journal and a copy beside the book (reliability: three
// times).
constexpr std::uint64_t kFreeForMigration = 3;

Error damaged(const std::string& file, const std::string& reason, const std::string& text = {}) {
  return {ErrorCode::BookDamaged,
          "store.damaged",
          {},
          {{"path", file}, {"reason", reason}, {"text", text}}};
}

/// Any complaint of SQLite while a book is being judged, said about the book.
Error judged(const Error& error, const std::string& file) {
  if (error.code == ErrorCode::BookDamaged) return damaged(file, "pages", error.detail("text"));
  return error;
}

Result<void> refuseNetwork(const std::string& path, const BookOptions& options) {
  const std::string type = options.fileSystemType(path);
  if (!isNetworkFileSystem(type)) return {};
  return fail(ErrorCode::BookOnNetwork, "store.on_network", {},
              {{"path", path}, {"file_system", type}});
}

Result<void> requireWritable(const std::string& file) {
  const auto refused = [&](const std::string& reason) {
    return fail(ErrorCode::BookReadOnly, "store.read_only", {},
                {{"path", file}, {"reason", reason}});
  };
  if (::faccessat(AT_FDCWD, file.c_str(), W_OK, AT_EACCESS) != 0) return refused("file");
  // The journal and the lock stand beside the book.
  if (::faccessat(AT_FDCWD, folderOf(file).c_str(), W_OK | X_OK, AT_EACCESS) != 0) {
    return refused("folder");
  }
  return {};
}

bool hasJournal(const std::string& file) {
  std::error_code error;
  return fs::exists(file + "-journal", error);
}

/// Guards and settings of the connection itself, then a first reading of the file.
Result<std::unique_ptr<Connection>> connect(const std::string& file, Access access,
                                            const std::string& vfs) {
  auto connection = Connection::open(file, access, vfs);
  if (!connection) return connection;
  if (const auto guarded = applyGuards(**connection); !guarded) return failAs(guarded);
  const auto settings = connectionSettings(access);
  if (const auto set = applySettings(**connection, settings); !set) return failAs(set);
  // Qt's open() succeeds on anything; only a reading shows what is there.
  const auto first = (*connection)->integer("SELECT count(*) FROM sqlite_schema");
  if (!first) return failAs(first);
  return connection;
}

Result<void> checkSchema(Connection& connection, const std::string& file,
                         const BookOptions& options, int version) {
  const auto golden = goldenSchema(options.migrations, version);
  if (!golden) return failAs(golden);
  const auto found = schemaText(connection);
  if (!found) return tl::make_unexpected(judged(found.error(), file));
  if (*found != *golden) return tl::make_unexpected(damaged(file, "schema"));
  return {};
}

/// Pages and rows, on a read-only connection of its own: there SQLite leaves out the CHECK
/// constraints, which make the look four times as long and which copies and check-book look at.
Result<void> checkPages(const std::string& file, const std::string& vfs) {
  const auto connection = connect(file, Access::ReadOnly, vfs);
  if (!connection) return tl::make_unexpected(judged(connection.error(), file));
  const auto faults = quickFaults(**connection);
  if (!faults) return tl::make_unexpected(judged(faults.error(), file));
  if (!faults->empty()) return tl::make_unexpected(damaged(file, "pages", faults->front()));
  return {};
}

bool smallEnough(const std::string& file, const BookOptions& options) {
  std::error_code error;
  const auto size = fs::file_size(file, error);
  return error || size <= options.quickCheckUpTo;
}

/// The number in the file, once application_id has been read back as ours.
Result<int> versionOf(Connection& connection, const std::string& file) {
  const auto application = connection.integer("PRAGMA application_id");
  if (!application) return tl::make_unexpected(judged(application.error(), file));
  if (*application != kApplicationId) {
    return fail(ErrorCode::BookForeign, "store.foreign", {},
                {{"path", file}, {"reason", "other_application"}});
  }
  const auto version = connection.integer("PRAGMA user_version");
  if (!version) return tl::make_unexpected(judged(version.error(), file));
  return static_cast<int>(*version);
}

/// The copy before a migration carries both versions and the day.
Result<void> copyBeforeMigration(Connection& connection, const std::string& file, int from, int to,
                                 const Date& today) {
  const std::string name = stemOf(file) + "-v" + std::to_string(from) + "-before-v" +
                           std::to_string(to) + "-" + toIso(today);
  const auto copied = copyVerified(connection, folderOf(file), name);
  if (copied) return {};
  return fail(ErrorCode::CannotWrite, "store.backup_failed", {},
              {{"cause", copied.error().key}, {"text", copied.error().detail("text")}});
}

Result<void> migrateOlder(Connection& connection, const std::string& file, int version,
                          const Clock& clock, const BookOptions& options) {
  std::error_code error;
  const std::uint64_t size = fs::file_size(file, error);
  const std::uint64_t available = options.freeBytes(file);
  if (available < size * kFreeForMigration) {
    return fail(ErrorCode::CannotWrite, "store.no_room_to_migrate", {},
                {{"path", file},
                 {"needed", std::to_string(size * kFreeForMigration)},
                 {"free", std::to_string(available)}});
  }
  const auto copied = copyBeforeMigration(connection, file, version, options.schemaVersion(),
                                          localDate(clock.now()));
  if (!copied) return copied;
  return migrate(connection, options.migrations, version);
}

/// Judges what the connection reads, and migrates an older book.
Result<void> judgeAndMigrate(Connection& connection, const std::string& file, OpenMode mode,
                             const Clock& clock, const BookOptions& options, bool afterCrash) {
  const auto version = versionOf(connection, file);
  if (!version) return failAs(version);
  if (*version > options.schemaVersion()) {
    return fail(ErrorCode::BookNewer, "store.newer", {},
                {{"path", file},
                 {"version", std::to_string(*version)},
                 {"ours", std::to_string(options.schemaVersion())}});
  }
  if (const auto same = checkSchema(connection, file, options, *version); !same) return same;
  const bool older = *version < options.schemaVersion();
  if (older || afterCrash || smallEnough(file, options)) {
    if (const auto sound = checkPages(file, options.vfs); !sound) return sound;
  }
  if (mode == OpenMode::ViewOnly) {
    if (!older) return {};
    return fail(ErrorCode::BookReadOnly, "store.needs_migration", {},
                {{"path", file}, {"version", std::to_string(*version)}});
  }
  const auto settings = durabilitySettings();
  if (const auto set = applySettings(connection, settings); !set) return set;
  if (!older) return {};
  if (const auto done = migrateOlder(connection, file, *version, clock, options); !done)
    return done;
  return checkSchema(connection, file, options, options.schemaVersion());
}

/// Names the program that wrote a newer book, if its entries can still be read.
Error withProgram(Error error, const std::string& file, const std::string& vfs) {
  std::string program;
  const auto connection = Connection::open(file, Access::ReadOnly, vfs);
  if (connection) {
    program = (*connection)
                  ->value("SELECT \"program_version\" FROM \"entry\" ORDER BY \"id\" DESC LIMIT 1")
                  .value_or("");
  }
  error.details.emplace_back("program", program);
  return error;
}

Result<void> fillNew(const std::string& temporary, const BookOptions& options) {
  auto connection = connect(temporary, Access::ReadWrite, {});
  if (!connection) return failAs(connection);
  const auto settings = durabilitySettings();
  if (const auto set = applySettings(**connection, settings); !set) return set;
  const auto marked =
      (*connection)->runSchema("PRAGMA application_id = " + std::to_string(kApplicationId));
  if (!marked) return marked;
  return migrate(**connection, options.migrations, 0);
}

}  // namespace

Result<std::unique_ptr<Connection>> connectForReading(const std::string& file, const Clock& clock,
                                                      const std::string& vfs) {
  auto connection = connect(file, Access::ReadOnly, vfs);
  if (connection || connection.error().code != ErrorCode::BookReadOnly || !hasJournal(file)) {
    return connection;
  }
  // A program was killed in the middle of a commit; whoever may write finishes it.
  if (const auto writable = requireWritable(file); !writable) return failAs(writable);
  const auto lock = BookLock::take(file, clock.now());
  if (!lock) return failAs(lock);
  const auto writer = connect(file, Access::ReadWrite, vfs);
  if (!writer) return failAs(writer);
  return connect(file, Access::ReadOnly, vfs);
}

Result<std::unique_ptr<Connection>> connectForChecking(const std::string& file, const Clock& clock,
                                                       const std::string& vfs) {
  if (!requireWritable(file)) return connectForReading(file, clock, vfs);
  auto connection = connect(file, Access::ReadWrite, vfs);
  if (!connection) return connection;
  const std::vector<Setting> readOnly{
      {"query_only", "PRAGMA query_only = ON", "PRAGMA query_only", "1"}};
  if (const auto set = applySettings(**connection, readOnly); !set) return failAs(set);
  return connection;
}

Result<OpenedBook> openBookFile(const std::string& path, OpenMode mode, const Clock& clock,
                                const BookOptions& options) {
  const std::string file = resolved(path);
  std::error_code error;
  if (fs::exists(file, error)) {
    if (const auto local = refuseNetwork(file, options); !local) return failAs(local);
  }
  auto registration = OpenFile::enter(file, options.schemaVersion());
  if (!registration) {
    if (registration.error().code != ErrorCode::BookNewer) return failAs(registration);
    return tl::make_unexpected(withProgram(registration.error(), file, options.vfs));
  }
  OpenedBook opened{file, std::move(*registration), std::nullopt, nullptr};
  if (mode == OpenMode::ReadWrite) {
    if (const auto writable = requireWritable(file); !writable) return failAs(writable);
    auto lock = BookLock::take(file, clock.now());
    if (!lock) return failAs(lock);
    opened.lock.emplace(std::move(*lock));
  }
  const bool afterCrash = hasJournal(file);
  auto connection = mode == OpenMode::ReadWrite ? connect(file, Access::ReadWrite, options.vfs)
                                                : connectForReading(file, clock, options.vfs);
  if (!connection) return tl::make_unexpected(judged(connection.error(), file));
  opened.connection = std::move(*connection);
  const auto good = judgeAndMigrate(*opened.connection, file, mode, clock, options, afterCrash);
  if (!good) return failAs(good);
  return opened;
}

Result<void> createBookFile(const std::string& path, const BookOptions& options) {
  std::error_code error;
  if (fs::exists(fs::symlink_status(path, error))) {
    return fail(ErrorCode::Conflict, "store.exists", {}, {{"path", path}});
  }
  if (const auto local = refuseNetwork(path, options); !local) return local;
  const std::string temporary =
      (fs::path(folderOf(path)) /
       ("." + fs::path(path).filename().string() + ".new-" + std::to_string(getpid())))
          .string();
  const auto cannot = [&](const Error& cause) {
    ::unlink(temporary.c_str());
    if (cause.key == "store.disk_full" || cause.key == "store.exists") {
      return tl::make_unexpected(cause);
    }
    return fail(ErrorCode::CannotWrite, "store.cannot_create", {},
                {{"path", path}, {"cause", cause.key}, {"text", cause.detail("text")}});
  };
  {
    const Descriptor empty(::open(temporary.c_str(), O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0600));
    if (!empty.open()) return cannot(fileError("store.cannot_create", path, errno));
  }
  if (const auto filled = fillNew(temporary, options); !filled) return cannot(filled.error());
  if (const auto synced = syncPath(temporary); !synced) return cannot(synced.error());
  if (const auto named = renameNew(temporary, path); !named) return cannot(named.error());
  return syncPath(folderOf(path));
}

}  // namespace sw::store
