// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "base/clock.h"
#include "base/result.h"
#include "store/book.h"
#include "store/book_file.h"
#include "store/book_options.h"
#include "store/connection.h"

namespace sw::store {

/// A book that has passed the ritual. The order of members is the order of letting go: connection
/// first.
struct OpenedBook {
  std::string file;  ///< links followed
  OpenFile registration;
  std::optional<BookLock> lock;
  std::unique_ptr<Connection> connection;
};

/// The ritual of opening, step by step as Book::open promises.
[[nodiscard]] Result<OpenedBook> openBookFile(const std::string& path, OpenMode mode,
                                              const Clock& clock, const BookOptions& options);
/// Makes a new book file with the newest schema, whole or not at all.
[[nodiscard]] Result<void> createBookFile(const std::string& path, const BookOptions& options);

/// A connection to a book file with guards and connection settings made, nothing judged yet. A
/// commit that a crash interrupted is finished or taken back first (as SQLite does on the next
/// opening).
[[nodiscard]] Result<std::unique_ptr<Connection>> connectForReading(const std::string& file,
                                                                    const Clock& clock,
                                                                    const std::string& vfs);

/// The same for looking at everything: read-write where the file allows it, with query_only on,
/// because SQLite forgets CHECK constraints on a read-only connection, and integrity_check with it.
[[nodiscard]] Result<std::unique_ptr<Connection>> connectForChecking(const std::string& file,
                                                                     const Clock& clock,
                                                                     const std::string& vfs);

}  // namespace sw::store
