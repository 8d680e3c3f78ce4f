// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/day_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <ranges>
#include <string_view>

#include "model/entry_json.h"

namespace sw::store {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t kTail = 4UL * 1024 * 1024;  // longer than any line but a procedure's text

std::string lineOf(const model::Entry& entry) {
  return model::toJson(entry).dump(-1, ' ', false, model::Json::error_handler_t::replace) + "\n";
}

std::optional<model::Entry> entryOf(std::string_view line) {
  const auto json = model::parseJson(line);
  if (!json) return std::nullopt;
  auto entry = model::entryFromJson(*json);
  if (!entry) return std::nullopt;
  return std::move(*entry);
}

/// Calls visit(line) for each line that ends with a line feed; returns what stands behind the last
/// one.
template <class V>
std::string_view eachLine(std::string_view text, V&& visit) {
  for (;;) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return text;
    visit(text.substr(0, end));
    text.remove_prefix(end + 1);
  }
}

std::string newestIn(const std::string& folder) {
  std::string newest;
  std::error_code error;
  for (const auto& item : fs::directory_iterator(folder, error)) {
    const std::string path = item.path().string();
    if (item.path().extension() == ".jsonl" && path > newest) newest = path;
  }
  return newest;
}

}  // namespace

std::string dayFolderOf(const std::string& bookPath) {
  return (fs::path(folderOf(bookPath)) / (stemOf(bookPath) + "-days")).string();
}

Result<void> DayFile::openDay(const Date& day) {
  const std::string path = (fs::path(m_folder) / (toIso(day) + ".jsonl")).string();
  struct stat info {};
  const bool same =
      m_file.open() && path == m_path && ::fstat(m_file.get(), &info) == 0 && info.st_nlink > 0;
  if (same) return {};
  if (::mkdir(m_folder.c_str(), 0700) == 0) {
    if (const auto synced = syncPath(folderOf(m_folder)); !synced) return synced;
  }
  Descriptor file(::open(path.c_str(), O_RDWR | O_CREAT | O_APPEND | O_CLOEXEC, 0600));
  if (!file.open()) return tl::make_unexpected(fileError("store.day_file", path, errno));
  m_file = std::move(file);
  m_path = path;
  return syncPath(m_folder);
}

Result<void> DayFile::write(const Date& day, std::string text) {
  if (const auto opened = openDay(day); !opened) return opened;
  struct stat info {};
  if (::fstat(m_file.get(), &info) != 0) {
    return tl::make_unexpected(fileError("store.day_file", m_path, errno));
  }
  if (info.st_size > 0 && readAt(m_file, info.st_size - 1, 1) != "\n") text = '\n' + text;
  const auto written = writeAll(m_file, text, m_path);
  if (!written) {
    // Half a line would be skipped on reading; better none at all.
    if (::ftruncate(m_file.get(), info.st_size) != 0) m_file = Descriptor();
    return written;
  }
  if (::fdatasync(m_file.get()) != 0) {
    return tl::make_unexpected(fileError("store.day_file", m_path, errno));
  }
  return {};
}

Result<void> DayFile::append(std::span<const model::Entry> entries) {
  while (!entries.empty()) {
    const Date day = localDate(entries.front().enteredAt);
    std::string text;
    while (!entries.empty() && localDate(entries.front().enteredAt) == day) {
      text += lineOf(entries.front());
      entries = entries.subspan(1);
    }
    if (const auto written = write(day, std::move(text)); !written) return written;
  }
  return {};
}

std::optional<model::EntryId> DayFile::lastId() const {
  const std::string newest = newestIn(m_folder);
  const Descriptor file(::open(newest.c_str(), O_RDONLY | O_CLOEXEC));
  struct stat info {};
  if (!file.open() || ::fstat(file.get(), &info) != 0) return std::nullopt;
  const auto start = std::max<std::int64_t>(0, info.st_size - static_cast<std::int64_t>(kTail));
  const std::string tail = readAt(file, start, kTail);
  std::vector<std::string_view> lines;
  (void)eachLine(tail, [&](std::string_view line) { lines.push_back(line); });
  for (const std::string_view line : std::views::reverse(lines)) {
    if (const auto entry = entryOf(line)) return entry->id;
  }
  return std::nullopt;
}

Result<DayRecord> readDayFile(const std::string& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  struct stat info {};
  if (!file.open() || ::fstat(file.get(), &info) != 0) {
    return fail(ErrorCode::NotFound, "store.missing", {}, {{"path", path}});
  }
  const std::string text = readAt(file, 0, static_cast<std::size_t>(info.st_size));
  DayRecord record;
  const std::string_view rest = eachLine(text, [&](std::string_view line) {
    if (line.empty()) return;
    auto entry = entryOf(line);
    if (entry) {
      record.entries.push_back(std::move(*entry));
    } else {
      ++record.skipped;
    }
  });
  if (!rest.empty()) ++record.skipped;
  return record;
}

}  // namespace sw::store
