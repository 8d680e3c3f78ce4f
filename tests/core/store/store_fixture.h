// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "model/entry_json.h"
#include "small_shop.h"
#include "store/book.h"
#include "store/book_options.h"

namespace sw::store {

/// A folder of its own, with a space and a letter outside ASCII in its name, removed at the end.
class TempFolder {
 public:
  /// Below `base` where that is a folder, else below the system's place for such things.
  explicit TempFolder(const std::string& base = {}) {
    std::error_code error;
    std::filesystem::path place = std::filesystem::temp_directory_path();
    if (!base.empty() && std::filesystem::is_directory(base, error)) place = base;
    std::string pattern = (place /
                           "sw b\xC3\xBC"
                           "cher %20?-XXXXXX")
                              .string();
    m_path = mkdtemp(pattern.data());
    chmod(m_path.c_str(), 0755);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  ~TempFolder() {
    std::error_code error;
    std::filesystem::remove_all(m_path, error);
  }
  [[nodiscard]] const std::string& path() const { return m_path; }
  [[nodiscard]] std::string operator/(const std::string& name) const { return m_path + "/" + name; }

 private:
  std::string m_path;
};

inline std::string bytesOf(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

inline void writeBytes(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// A connection through the bare C interface, with none of the book's settings.
class RawBook {
 public:
  explicit RawBook(const std::string& path) {
    EXPECT_EQ(sqlite3_open_v2(path.c_str(), &m_handle, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE,
                              nullptr),
              SQLITE_OK);
  }
  RawBook(const RawBook&) = delete;
  RawBook& operator=(const RawBook&) = delete;
  ~RawBook() { sqlite3_close_v2(m_handle); }

  /// Empty, or SQLite's complaint.
  std::string run(const std::string& sql) {
    char* text = nullptr;
    const int code = sqlite3_exec(m_handle, sql.c_str(), nullptr, nullptr, &text);
    std::string complaint = code == SQLITE_OK ? "" : (text != nullptr ? text : "error");
    sqlite3_free(text);
    return complaint;
  }
  /// All values of all rows, in order, as text.
  std::vector<std::string> values(const std::string& sql) {
    std::vector<std::string> out;
    sqlite3_stmt* statement = nullptr;
    EXPECT_EQ(sqlite3_prepare_v2(m_handle, sql.c_str(), -1, &statement, nullptr), SQLITE_OK) << sql;
    while (sqlite3_step(statement) == SQLITE_ROW) {
      for (int i = 0; i < sqlite3_column_count(statement); ++i) {
        const void* text = sqlite3_column_text(statement, i);
        out.emplace_back(text != nullptr ? static_cast<const char*>(text) : "");
      }
    }
    sqlite3_finalize(statement);
    return out;
  }
  std::string value(const std::string& sql) {
    const auto all = values(sql);
    return all.empty() ? "" : all.front();
  }

 private:
  sqlite3* m_handle = nullptr;
};

inline std::vector<std::string> asText(const std::vector<model::Entry>& entries) {
  std::vector<std::string> texts;
  for (const auto& entry : entries) texts.push_back(model::toJson(entry).dump());
  return texts;
}

/// A folder with a clock and a place for a book.
class StoreTest : public testing::Test {
 protected:
  StoreTest() = default;
  explicit StoreTest(const std::string& base) : folder(base) {}

  std::unique_ptr<Book> makeBook() {
    auto book = Book::create(path, clock);
    EXPECT_TRUE(book.has_value()) << (book ? "" : book.error().key + book.error().detail("text"));
    return book ? std::move(*book) : nullptr;
  }
  std::unique_ptr<Book> makeSmallShop() {
    auto book = makeBook();
    const auto entries = smallShop();
    const auto done = book->append(entries);
    EXPECT_TRUE(done.has_value()) << done.error().key << done.error().detail("text");
    return book;
  }
  /// The key of the error, or "ok".
  std::string openKey(OpenMode mode, const BookOptions& options = {}) {
    const auto book = Book::open(path, mode, clock, options);
    return book ? "ok" : book.error().key;
  }
  std::unique_ptr<Book> reopen(OpenMode mode = OpenMode::ReadWrite) {
    auto book = Book::open(path, mode, clock);
    EXPECT_TRUE(book.has_value()) << (book ? "" : book.error().key + book.error().detail("reason"));
    return book ? std::move(*book) : nullptr;
  }

  TempFolder folder;
  ManualClock clock{kStart};
  std::string path = folder / "shop.swbook";
};

}  // namespace sw::store
