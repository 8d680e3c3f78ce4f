// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/book_file.h"

#include <fcntl.h>
#include <pwd.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <map>
#include <mutex>
#include <string_view>

namespace sw::store {

namespace {

// The first 100 bytes of a database file; SQLite documentation, "Database File Format", 1.3.
constexpr std::size_t kHeaderSize = 100;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

std::int32_t bigEndian32(std::string_view bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    value = (value << 8U) | static_cast<unsigned char>(bytes[at + i]);
  }
  return static_cast<std::int32_t>(value);
}

Result<void> judgeHeader(const std::string& path, std::string_view header, int ourVersion) {
  const auto answer = [&](ErrorCode code, std::string key, const std::string& reason) {
    return fail(code, std::move(key), {}, {{"path", path}, {"reason", reason}});
  };
  if (header.size() < kHeaderSize)
    return answer(ErrorCode::BookForeign, "store.foreign", "too_short");
  const bool magic = header.starts_with(kMagic);
  const bool ours = bigEndian32(header, kApplicationIdAt) == kApplicationId;
  if (!ours) {
    return answer(ErrorCode::BookForeign, "store.foreign",
                  magic ? "other_application" : "not_a_database");
  }
  if (!magic) return answer(ErrorCode::BookDamaged, "store.damaged", "header");
  const std::int32_t version = bigEndian32(header, kUserVersionAt);
  if (version > ourVersion) {
    return fail(ErrorCode::BookNewer, "store.newer", {},
                {{"path", path},
                 {"version", std::to_string(version)},
                 {"ours", std::to_string(ourVersion)}});
  }
  if (version < 1) return answer(ErrorCode::BookDamaged, "store.damaged", "version");
  return {};
}

struct Registry {
  std::mutex mutex;
  std::map<std::pair<std::uint64_t, std::uint64_t>, int> open;
};

Registry& registry() {
  // State of the process because POSIX locks are: see OpenFile.
  static Registry instance;
  return instance;
}

std::string userAndHost() {
  std::array<char, 256> host{};
  if (gethostname(host.data(), host.size() - 1) != 0) host[0] = '\0';
  std::array<char, 4096> buffer{};
  passwd entry{};
  passwd* found = nullptr;
  std::string user = std::to_string(geteuid());
  if (getpwuid_r(geteuid(), &entry, buffer.data(), buffer.size(), &found) == 0 &&
      found != nullptr) {
    user = found->pw_name;
  }
  return user + "@" + host.data();
}

/// Who holds the lock: the first two lines of the side file.
Error lockedError(const Descriptor& file, const std::string& bookPath) {
  const std::string text = readAt(file, 0, 1024);
  const std::size_t first = text.find('\n');
  const std::size_t second = first == std::string::npos ? first : text.find('\n', first + 1);
  std::string who;
  std::string since;
  if (second != std::string::npos) {
    who = text.substr(0, first);
    since = text.substr(first + 1, second - first - 1);
  }
  return Error{ErrorCode::BookLocked,
               "store.locked",
               {},
               {{"path", bookPath}, {"who", who}, {"since", since}}};
}

}  // namespace

Result<OpenFile> OpenFile::enter(const std::string& path, int ourVersion) {
  struct stat info {};
  if (::stat(path.c_str(), &info) != 0) {
    if (errno == EACCES) {
      return fail(ErrorCode::BookReadOnly, "store.cannot_read", {}, {{"path", path}});
    }
    return fail(ErrorCode::BookMissing, "store.missing", {}, {{"path", path}});
  }
  if (!S_ISREG(info.st_mode)) {
    return fail(ErrorCode::BookForeign, "store.foreign", {},
                {{"path", path}, {"reason", "not_a_file"}});
  }
  const Key key{info.st_dev, info.st_ino};
  Registry& all = registry();
  const std::lock_guard<std::mutex> guard(all.mutex);
  if (!all.open.contains(key)) {
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file.open()) {
      return fail(ErrorCode::BookReadOnly, "store.cannot_read", {}, {{"path", path}});
    }
    const auto judged = judgeHeader(path, readAt(file, 0, kHeaderSize), ourVersion);
    if (!judged) return failAs(judged);
  }
  ++all.open[key];
  return OpenFile(key);
}

OpenFile::OpenFile(OpenFile&& other) noexcept : m_key(std::exchange(other.m_key, std::nullopt)) {}

OpenFile& OpenFile::operator=(OpenFile&& other) noexcept {
  std::swap(m_key, other.m_key);
  return *this;
}

OpenFile::~OpenFile() {
  if (!m_key) return;
  Registry& all = registry();
  const std::lock_guard<std::mutex> guard(all.mutex);
  const auto found = all.open.find(*m_key);
  if (found != all.open.end() && --found->second == 0) all.open.erase(found);
}

Result<BookLock> BookLock::take(const std::string& bookPath, const Timestamp& now) {
  const std::string path = bookPath + ".lock";
  // A holder that ends removes the file, so a lock on a file that is gone is no lock: try again.
  for (int attempt = 0; attempt < 100; ++attempt) {
    Descriptor file(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600));
    if (!file.open()) {
      Descriptor other(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
      if (other.open() && ::flock(other.get(), LOCK_EX | LOCK_NB) != 0) {
        return tl::make_unexpected(lockedError(other, bookPath));
      }
      return fail(ErrorCode::BookReadOnly, "store.read_only", {},
                  {{"path", bookPath}, {"reason", "folder"}});
    }
    if (::flock(file.get(), LOCK_EX | LOCK_NB) != 0) {
      return tl::make_unexpected(lockedError(file, bookPath));
    }
    struct stat held {};
    struct stat named {};
    if (::fstat(file.get(), &held) != 0 || ::stat(path.c_str(), &named) != 0 ||
        held.st_ino != named.st_ino || held.st_dev != named.st_dev) {
      continue;
    }
    const std::string text =
        userAndHost() + "\n" + toIso(now) + "\n" + std::to_string(getpid()) + "\n";
    // What stands in the file is for people only; the lock holds even on a full disk.
    if (::ftruncate(file.get(), 0) == 0) (void)writeAll(file, text, path);
    return BookLock(std::move(file), path);
  }
  return fail(ErrorCode::BookLocked, "store.locked", {}, {{"path", bookPath}});
}

BookLock::~BookLock() {
  if (m_file.open()) ::unlink(m_path.c_str());
}

}  // namespace sw::store
