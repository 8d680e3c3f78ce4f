// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "base/clock.h"
#include "base/result.h"
#include "store/book.h"
#include "store/verified_copy_result.h"

namespace sw::store {

/// How many days of copies are kept.
inline constexpr int kDailyCopiesKept = 14;

/// Copies the book as it is at this moment into a folder, checked before it gets its name:
/// "<book>-2031-04-05.swbook", "<book>-2031-04-05-2.swbook" for a second one on the same day.
/// Nothing that exists is replaced. The book may be open here or elsewhere. Errors: CannotWrite
/// "store.no_folder", "store.disk_full", "store.io_error", BookDamaged "store.copy_differs"
/// (details: reason).
[[nodiscard]] Result<VerifiedCopy> backup(const Book& book, const std::string& folder,
                                          const Clock& clock);
/// The same for a book that is not open here. Errors also as Book::open.
[[nodiscard]] Result<VerifiedCopy> backup(const std::string& path, const std::string& folder,
                                          const Clock& clock);

/// A copy if there is none of today in the folder; afterwards the copies of this book's name from
/// all but the newest 14 days are removed. Nothing where today has its copy.
[[nodiscard]] Result<std::optional<VerifiedCopy>> dailyBackup(const Book& book,
                                                              const std::string& folder,
                                                              const Clock& clock);

/// What to do with a book that stands where a copy is to be restored.
enum class Existing { Refuse, MoveAside };

struct Restored {
  std::string path;
  std::int64_t entries = 0;
  std::int64_t jobs = 0;
  std::optional<std::string> movedAside;  ///< where the book went that stood there
};

/// Puts a checked copy of `copy` at `path`. A book that stands there is kept as
/// "<path>.before-restore-<time>". Errors: those of Book::open about `copy`; Conflict
/// "store.exists"; BookLocked "store.locked" while a program has the book at `path`.
[[nodiscard]] Result<Restored> restore(const std::string& copy, const std::string& path,
                                       Existing existing, const Clock& clock);

}  // namespace sw::store
