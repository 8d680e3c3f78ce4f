// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "model/entry.h"
#include "store/file_place.h"

// The second record: each accepted entry is also one line of JSON in
// "<book>-days/2031-04-05.jsonl".
//
// The line is written after the commit and before the entry is acknowledged, so that an
// acknowledged entry is in both. A program that dies between the two leaves an entry in the book
// that nobody was told about; the next opening writes the line that is missing. No line names an
// entry that is not in the book. A line that was torn off by a power cut is skipped on reading, and
// the next line starts on a line of its own.

namespace sw::store {

class DayFile {
 public:
  explicit DayFile(std::string folder) : m_folder(std::move(folder)) {}

  /// Appends the entries to the file of the day they were entered and syncs it.
  /// Errors: CannotWrite "store.disk_full", "store.day_file" (details: path, text).
  [[nodiscard]] Result<void> append(std::span<const model::Entry> entries);
  /// The id in the last whole line of the newest file; nothing if there is none.
  [[nodiscard]] std::optional<model::EntryId> lastId() const;
  [[nodiscard]] const std::string& folder() const { return m_folder; }

 private:
  [[nodiscard]] Result<void> openDay(const Date& day);
  [[nodiscard]] Result<void> write(const Date& day, std::string text);

  std::string m_folder;
  std::string m_path;
  Descriptor m_file;
};

/// The folder of day files that belongs to a book.
[[nodiscard]] std::string dayFolderOf(const std::string& bookPath);

struct DayRecord {
  std::vector<model::Entry> entries;  ///< in order of writing
  std::size_t skipped = 0;            ///< lines that could not be read (torn off)
};
/// Reads one day file. Errors: NotFound "store.missing".
[[nodiscard]] Result<DayRecord> readDayFile(const std::string& path);

}  // namespace sw::store
