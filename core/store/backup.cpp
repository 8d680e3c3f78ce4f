// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/backup.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <set>
#include <vector>

#include "store/book_access.h"
#include "store/verified_copy.h"

namespace sw::store {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t kDateLength = 10;

struct DatedCopy {
  Date day;
  std::string path;
};

/// The day in "<stem>-2031-04-05.swbook" or "<stem>-2031-04-05-2.swbook"; nothing for any other
/// name.
std::optional<Date> dayOf(const std::string& name, const std::string& stem) {
  const std::string start = stem + "-";
  const std::string end = ".swbook";
  if (!name.starts_with(start) || !name.ends_with(end)) return std::nullopt;
  if (name.size() < start.size() + kDateLength + end.size()) return std::nullopt;
  const std::string middle = name.substr(start.size(), name.size() - start.size() - end.size());
  const auto day = parseDate(middle.substr(0, kDateLength));
  if (!day) return std::nullopt;
  const std::string number = middle.substr(kDateLength);
  const bool plain =
      number.empty() || (number.size() > 1 && number[0] == '-' &&
                         number.find_first_not_of("0123456789", 1) == std::string::npos);
  if (!plain) return std::nullopt;
  return *day;
}

std::vector<DatedCopy> copiesIn(const std::string& folder, const std::string& stem) {
  std::vector<DatedCopy> copies;
  std::error_code error;
  for (const auto& item : fs::directory_iterator(folder, error)) {
    const auto day = dayOf(item.path().filename().string(), stem);
    if (day && item.is_regular_file(error)) copies.push_back({*day, item.path().string()});
  }
  return copies;
}

/// Removes the copies of all but the newest days.
void prune(const std::string& folder, const std::string& stem) {
  const auto copies = copiesIn(folder, stem);
  std::set<Date> days;
  for (const DatedCopy& copy : copies) days.insert(copy.day);
  while (days.size() > static_cast<std::size_t>(kDailyCopiesKept)) {
    const Date oldest = *days.begin();
    for (const DatedCopy& copy : copies) {
      if (copy.day == oldest) ::unlink(copy.path.c_str());
    }
    days.erase(days.begin());
  }
}

Result<void> requireFolder(const std::string& folder) {
  std::error_code error;
  if (fs::is_directory(folder, error)) return {};
  return fail(ErrorCode::CannotWrite, "store.no_folder", {}, {{"path", folder}});
}

/// "2031-04-05T10-20-30": a time that any file system takes in a name.
std::string timeForName(const Timestamp& time) {
  std::string text = toIso(time).substr(0, 19);
  std::replace(text.begin(), text.end(), ':', '-');
  return text;
}

/// Keeps the book that stands at `path` under a name of its own; the name `path` stays taken until
/// the restored book is renamed over it, so that at no moment there is no book.
Result<std::string> keepAside(const std::string& path, const Clock& clock) {
  const std::string aside = path + ".before-restore-" + timeForName(clock.now());
  if (::link(path.c_str(), aside.c_str()) == 0) return aside;
  if (errno == EEXIST) return fail(ErrorCode::Conflict, "store.exists", {}, {{"path", aside}});
  const auto moved = renameNew(path, aside);
  if (!moved) return failAs(moved);
  return aside;
}

Result<Restored> place(const VerifiedCopy& temporary, const std::string& path, Existing existing,
                       const Clock& clock) {
  Restored restored{path, temporary.entries, temporary.jobs, std::nullopt};
  std::error_code error;
  if (!fs::exists(path, error)) {
    if (const auto named = renameNew(temporary.path, path); !named) return failAs(named);
  } else {
    if (existing == Existing::Refuse) {
      return fail(ErrorCode::Conflict, "store.exists", {}, {{"path", path}});
    }
    const auto lock = BookLock::take(path, clock.now());
    if (!lock) return failAs(lock);
    auto aside = keepAside(path, clock);
    if (!aside) return failAs(aside);
    // A journal of the old book must not be taken for one of the new.
    const std::string journal = path + "-journal";
    if (fs::exists(journal, error)) {
      if (const auto moved = renameNew(journal, *aside + "-journal"); !moved) return failAs(moved);
    }
    if (::rename(temporary.path.c_str(), path.c_str()) != 0) {
      return tl::make_unexpected(fileError("store.io_error", path, errno));
    }
    restored.movedAside = std::move(*aside);
  }
  if (const auto synced = syncPath(folderOf(path)); !synced) return failAs(synced);
  return restored;
}

}  // namespace

Result<VerifiedCopy> backup(const Book& book, const std::string& folder, const Clock& clock) {
  if (const auto there = requireFolder(folder); !there) return failAs(there);
  const std::string stem = stemOf(BookAccess::file(book)) + "-" + toIso(localDate(clock.now()));
  return copyVerified(BookAccess::connection(book), folder, stem);
}

Result<VerifiedCopy> backup(const std::string& path, const std::string& folder,
                            const Clock& clock) {
  const auto book = Book::open(path, OpenMode::ViewOnly, clock);
  if (!book) return failAs(book);
  return backup(**book, folder, clock);
}

Result<std::optional<VerifiedCopy>> dailyBackup(const Book& book, const std::string& folder,
                                                const Clock& clock) {
  if (const auto there = requireFolder(folder); !there) return failAs(there);
  const Date today = localDate(clock.now());
  const std::string stem = stemOf(BookAccess::file(book));
  for (const DatedCopy& copy : copiesIn(folder, stem)) {
    if (copy.day == today) return std::optional<VerifiedCopy>{};
  }
  auto copy = backup(book, folder, clock);
  if (!copy) return failAs(copy);
  prune(folder, stem);
  return std::optional<VerifiedCopy>(std::move(*copy));
}

Result<Restored> restore(const std::string& copy, const std::string& path, Existing existing,
                         const Clock& clock) {
  std::error_code error;
  if (existing == Existing::Refuse && fs::exists(fs::symlink_status(path, error))) {
    return fail(ErrorCode::Conflict, "store.exists", {}, {{"path", path}});
  }
  const auto source = Book::open(copy, OpenMode::ViewOnly, clock);
  if (!source) return failAs(source);
  const std::string target = resolved(path);
  const std::string temporary = target + ".part-" + std::to_string(getpid());
  const auto made = copyToTemporary(BookAccess::connection(**source), temporary);
  if (!made) return failAs(made);
  auto restored = place(*made, target, existing, clock);
  if (!restored) ::unlink(temporary.c_str());
  return restored;
}

}  // namespace sw::store
