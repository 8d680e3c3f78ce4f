// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "store/book.h"
#include "store/book_opening.h"
#include "store/connection.h"
#include "store/day_file.h"

namespace sw::store {

struct Book::Impl {
  std::string path;  ///< as given
  OpenMode mode = OpenMode::ViewOnly;
  int version = 0;
  OpenedBook opened;
  DayFile days;
  std::optional<model::EntryId> lastInDays;  ///< newest entry known to stand in the day file
  std::optional<Error> dayTrouble;
  std::optional<Error> broken;  ///< after an I/O error the book must be opened again
};

/// The way from a Book to its connection, for the files of this folder only.
struct BookAccess {
  [[nodiscard]] static Connection& connection(const Book& book) {
    return *book.m->opened.connection;
  }
  [[nodiscard]] static const std::string& file(const Book& book) { return book.m->opened.file; }
};

}  // namespace sw::store
