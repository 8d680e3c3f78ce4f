// SPDX-License-Identifier: GPL-3.0-or-later
// A program of its own for the tests: what another process, or another user, gets from a book.
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "model/entry_json.h"
#include "store/book.h"
#include "ugly_book.h"

namespace {

using namespace sw;

model::Entry note(std::int64_t id, const Timestamp& now, const std::string& text) {
  model::Entry entry;
  entry.id = model::EntryId{id};
  entry.doneAt = now;
  entry.enteredAt = now;
  entry.programVersion = "0.1.0";
  entry.payload = model::Note{text};
  return entry;
}

void say(const Error& error) {
  std::cout << error.key;
  for (const auto& [name, value] : error.details) std::cout << " " << name << "=" << value;
  std::cout << std::endl;
}

int append(store::Book& book, const Clock& clock, int count) {
  for (int i = 0; i < count; ++i) {
    const auto id = book.nextEntryId();
    if (!id) return say(id.error()), 1;
    const std::vector<model::Entry> entries{note(id->value, clock.now(), std::to_string(i))};
    const auto done = book.append(entries);
    if (!done) return say(done.error()), 1;
    if (const auto trouble = book.dayFileTrouble()) return say(*trouble), 1;
    std::cout << id->value << std::endl;
  }
  return 0;
}

/// A new book of odd facts, and its entries as lines of JSON: the fixture of a schema version.
int makeUgly(const std::string& path, const std::string& exportPath) {
  const ManualClock clock(store::kStart);
  const auto book = store::Book::create(path, clock);
  if (!book) return say(book.error()), 1;
  const auto entries = store::uglyEntries(20310405);
  const std::vector<store::Book::Picture> pictures{{"cafe", "image/png", "bytes", "small"}};
  if (const auto done = (*book)->append(entries, pictures); !done) return say(done.error()), 1;
  if (const auto done = (*book)->setSetting("currency", "EUR"); !done) return say(done.error()), 1;
  if (const auto done = (*book)->setDraft({"job/1", "18."}); !done) return say(done.error()), 1;
  std::ofstream out(exportPath);
  for (const auto& entry : entries) out << model::toJson(entry).dump() << "\n";
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> args(argv + 1, argv + argc);
  if (args.size() < 2) {
    std::cout << "usage: book_helper read|write|hold|append|ugly BOOK [COUNT|EXPORT]\n";
    return 2;
  }
  if (args[0] == "ugly") return makeUgly(args[1], args.at(2));
  const SystemClock clock;
  const auto mode = args[0] == "read" ? store::OpenMode::ViewOnly : store::OpenMode::ReadWrite;
  const auto book = store::Book::open(args[1], mode, clock);
  if (!book) return say(book.error()), 1;
  if (args[0] == "append") return append(**book, clock, args.size() > 2 ? std::stoi(args[2]) : 1);
  std::cout << "ok" << std::endl;
  if (args[0] == "hold") {
    std::string line;
    std::getline(std::cin, line);
  }
  return 0;
}
