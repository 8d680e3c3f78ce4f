// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/file_place.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <QtCore/QFile>
#include <QtCore/QStorageInfo>
#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <utility>

namespace sw::store {

namespace fs = std::filesystem;

std::string fileSystemType(const std::string& path) {
  std::error_code error;
  const std::string place = fs::exists(path, error) ? resolved(path) : resolved(folderOf(path));
  return QStorageInfo(QFile::decodeName(place.c_str())).fileSystemType().toStdString();
}

bool isNetworkFileSystem(std::string_view type) {
  static constexpr std::array<std::string_view, 22> kNetwork{
      "nfs",    "nfs4",     "cifs",      "smb",    "smb2",  "smb3",  "smbfs",  "ncpfs",
      "afs",    "coda",     "ceph",      "lustre", "9p",    "davfs", "vboxsf", "vmhgfs",
      "prl_fs", "virtiofs", "glusterfs", "gfs2",   "ocfs2", "fuse"};
  // Local file systems that happen to run in user space ("fuseblk" has no dot and is a local disk).
  static constexpr std::array<std::string_view, 6> kLocalFuse{
      "fuse.ntfs", "fuse.ntfs-3g", "fuse.exfat", "fuse.gocryptfs", "fuse.encfs", "fuse.cryfs"};
  if (std::find(kNetwork.begin(), kNetwork.end(), type) != kNetwork.end()) return true;
  return type.starts_with("fuse.") &&
         std::find(kLocalFuse.begin(), kLocalFuse.end(), type) == kLocalFuse.end();
}

std::uint64_t freeBytes(const std::string& path) {
  struct statvfs info {};
  if (statvfs(folderOf(path).c_str(), &info) != 0) return 0;
  return static_cast<std::uint64_t>(info.f_bavail) * info.f_frsize;
}

std::string folderOf(const std::string& path) {
  const std::string folder = fs::path(path).parent_path().string();
  return folder.empty() ? "." : folder;
}

std::string stemOf(const std::string& path) {
  return fs::path(path).stem().string();
}

std::string resolved(const std::string& path) {
  std::error_code error;
  const fs::path real = fs::weakly_canonical(path, error);
  return error ? path : real.string();
}

Error fileError(std::string key, const std::string& path, int errnoValue) {
  const bool full = errnoValue == ENOSPC || errnoValue == EDQUOT || errnoValue == EFBIG;
  return Error{ErrorCode::CannotWrite,
               full ? "store.disk_full" : std::move(key),
               {},
               {{"path", path}, {"text", std::generic_category().message(errnoValue)}}};
}

Result<void> syncPath(const std::string& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.open() || ::fsync(file.get()) != 0) {
    return tl::make_unexpected(fileError("store.io_error", path, errno));
  }
  return {};
}

Result<void> renameNew(const std::string& from, const std::string& to) {
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return {};
  if (errno == EEXIST) return fail(ErrorCode::Conflict, "store.exists", {}, {{"path", to}});
  if (errno != EINVAL && errno != ENOSYS) {
    return tl::make_unexpected(fileError("store.io_error", to, errno));
  }
  // Sticks with FAT and the like know no such flag.
  std::error_code error;
  if (fs::exists(to, error)) return fail(ErrorCode::Conflict, "store.exists", {}, {{"path", to}});
  if (::rename(from.c_str(), to.c_str()) == 0) return {};
  return tl::make_unexpected(fileError("store.io_error", to, errno));
}

Descriptor::Descriptor(Descriptor&& other) noexcept : m_fd(std::exchange(other.m_fd, -1)) {}

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
  std::swap(m_fd, other.m_fd);
  return *this;
}

Descriptor::~Descriptor() {
  if (m_fd >= 0) ::close(m_fd);
}

std::string readAt(const Descriptor& file, std::int64_t offset, std::size_t most) {
  std::string bytes(most, '\0');
  std::size_t got = 0;
  while (got < most) {
    const ssize_t n =
        ::pread(file.get(), bytes.data() + got, most - got, offset + static_cast<off_t>(got));
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) break;
    got += static_cast<std::size_t>(n);
  }
  bytes.resize(got);
  return bytes;
}

Result<void> writeAll(const Descriptor& file, std::string_view bytes, const std::string& path) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(file.get(), bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return tl::make_unexpected(fileError("store.io_error", path, errno));
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return {};
}

}  // namespace sw::store
