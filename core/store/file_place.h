// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"

// What the store asks the file system, apart from SQLite.

namespace sw::store {

/// The name of the file system a path lies on ("ext4", "nfs4"); the folder decides for a new file.
[[nodiscard]] std::string fileSystemType(const std::string& path);
/// True where locks and syncs cannot be relied on: network shares, and user-space file systems that
/// may hide one. Source: SQLite documentation, "SQLite Over a Network".
[[nodiscard]] bool isNetworkFileSystem(std::string_view type);
/// Bytes a person may still write at this path.
[[nodiscard]] std::uint64_t freeBytes(const std::string& path);

/// The folder of a path ("." for a bare name), its name without the last ".ending", and the whole
/// name.
[[nodiscard]] std::string folderOf(const std::string& path);
[[nodiscard]] std::string stemOf(const std::string& path);
/// The path with links followed; the path itself where it does not exist.
[[nodiscard]] std::string resolved(const std::string& path);

/// Makes what is in a file, or the names in a folder, survive a power cut.
/// Errors: CannotWrite "store.io_error" (details: path, text).
[[nodiscard]] Result<void> syncPath(const std::string& path);
/// Renames without ever replacing a file. Errors: Conflict "store.exists", CannotWrite
/// "store.io_error".
[[nodiscard]] Result<void> renameNew(const std::string& from, const std::string& to);

/// An Error about a path from errno, code CannotWrite, key "store.disk_full" or as given.
[[nodiscard]] Error fileError(std::string key, const std::string& path, int errnoValue);

/// Holds a file descriptor.
class Descriptor {
 public:
  explicit Descriptor(int fd = -1) : m_fd(fd) {}
  Descriptor(Descriptor&& other) noexcept;
  Descriptor& operator=(Descriptor&& other) noexcept;
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor();
  [[nodiscard]] int get() const { return m_fd; }
  [[nodiscard]] bool open() const { return m_fd >= 0; }

 private:
  int m_fd;
};

/// Reads at most `most` bytes from an open file at an offset; fewer at its end or on an error.
[[nodiscard]] std::string readAt(const Descriptor& file, std::int64_t offset, std::size_t most);
/// Writes all bytes or says why not.
[[nodiscard]] Result<void> writeAll(const Descriptor& file, std::string_view bytes,
                                    const std::string& path);

}  // namespace sw::store
