// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/open_book.h"

#include <QStandardPaths>
#include <filesystem>
#include <ostream>

#include "store/backup.h"

namespace sw::app {

namespace {

/// Beside the book: "<book>-copies".
std::string besideTheBook(const store::Book& book) {
  std::filesystem::path path(book.path());
  return (path.parent_path() / (path.stem().string() + "-copies")).string();
}

}  // namespace

std::string bookPath(const CommandContext& context) {
  if (const auto named = context.arguments.value("book")) return *named;
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return folder.toStdString() + "/swivelwright/shop.swbook";
}

Result<std::unique_ptr<store::Book>> openBook(const CommandContext& context, store::OpenMode mode) {
  return store::Book::open(bookPath(context), mode, context.clock);
}

void copyOfTheDay(const CommandContext& context, const store::Book& book) {
  const auto tell = [&](const Error& error) {
    context.streams.err << errorLine(error, context.name, context.errorFormat);
  };
  const auto setting = book.setting("backup_folder");
  if (!setting) return tell(setting.error());
  std::string folder = setting->value_or("");
  if (folder.empty()) {
    folder = besideTheBook(book);
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
  }
  if (const auto copied = store::dailyBackup(book, folder, context.clock); !copied) {
    tell(copied.error());
  }
}

}  // namespace sw::app
