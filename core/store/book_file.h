// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>

#include "base/clock.h"
#include "base/result.h"
#include "store/file_place.h"

// What can be told about a book before SQLite opens it, and who has it.

namespace sw::store {

/// "SWVL" in the header of every book (SQLite's application_id, at offset 68).
inline constexpr std::int32_t kApplicationId = 0x5357564C;

/// The registration of one open book. While this process has a book open, the file is never opened
/// another way: POSIX locks of the whole process end with any close() of the file (SQLite
/// documentation, "How To Corrupt", 2.2), so that a look at the header would drop our own lock.
class OpenFile {
 public:
  /// Looks at the header by plain reading (unless the process has the file open already) and
  /// registers the file. Changes nothing. Errors: BookMissing "store.missing", BookForeign
  /// "store.foreign", BookDamaged "store.damaged", BookNewer "store.newer" (details: version,
  /// ours), BookReadOnly "store.cannot_read".
  [[nodiscard]] static Result<OpenFile> enter(const std::string& path, int ourVersion);
  OpenFile(OpenFile&& other) noexcept;
  OpenFile& operator=(OpenFile&& other) noexcept;
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile();
  /// True if this is the file with that device and inode.
  [[nodiscard]] bool is(std::uint64_t device, std::uint64_t inode) const {
    return m_key == Key{device, inode};
  }

 private:
  using Key = std::pair<std::uint64_t, std::uint64_t>;  // device, inode
  explicit OpenFile(Key key) : m_key(key) {}
  std::optional<Key> m_key;
};

/// The side file "<book>.lock" that the writing program holds. The kernel lets go of it when the
/// program ends, however it ends.
class BookLock {
 public:
  /// Errors: BookLocked "store.locked" (details: who, since), BookReadOnly "store.read_only".
  [[nodiscard]] static Result<BookLock> take(const std::string& bookPath, const Timestamp& now);
  BookLock(BookLock&& other) noexcept = default;
  BookLock& operator=(BookLock&& other) noexcept = default;
  BookLock(const BookLock&) = delete;
  BookLock& operator=(const BookLock&) = delete;
  ~BookLock();

 private:
  BookLock(Descriptor file, std::string path) : m_file(std::move(file)), m_path(std::move(path)) {}
  Descriptor m_file;
  std::string m_path;
};

}  // namespace sw::store
