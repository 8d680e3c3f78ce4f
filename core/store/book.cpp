// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/book.h"

#include <sys/stat.h>

#include <limits>
#include <set>

#include "store/book_access.h"
#include "store/entry_rows.h"

namespace sw::store {

namespace {

constexpr model::EntryId kNewest{std::numeric_limits<std::int64_t>::max()};
/// A program that died leaves at most one action out of the day file; a larger gap is another
/// history (a restored copy, a lost folder), which the copies of the book cover.
constexpr std::int64_t kMostMissingLines = 1000;
constexpr std::size_t kUtcTextLength = 24;  // "2031-04-05T08:20:30.000Z"

/// The file still stands where it was opened; writing into one that was moved away is losing it.
Result<void> requireSameFile(const std::string& file, const OpenFile& registration) {
  struct stat info {};
  if (::stat(file.c_str(), &info) == 0 && registration.is(info.st_dev, info.st_ino)) return {};
  return fail(ErrorCode::CannotWrite, "store.file_replaced", {}, {{"path", file}});
}

Result<void> requireTimes(const model::Entry& entry) {
  for (const Timestamp& time : {entry.doneAt, entry.enteredAt}) {
    if (toIsoUtc(time).size() != kUtcTextLength || toIso(time).size() < kUtcTextLength) {
      return fail(ErrorCode::OutOfRange, "store.time_out_of_range", {},
                  {{"entry", std::to_string(entry.id.value)}});
    }
  }
  return {};
}

Result<void> insertPicture(Connection& connection, const Book::Picture& picture) {
  // The name is the hash of the bytes, so a picture that is there already is the same one.
  auto query = connection.query(
      "INSERT INTO \"picture\" (\"hash\", \"mime\", \"bytes\", \"thumbnail\") SELECT ?, ?, ?, ? "
      "WHERE NOT EXISTS (SELECT 1 FROM \"picture\" WHERE \"hash\" = ?)");
  if (!query) return failAs(query);
  query->bind(std::string_view(picture.hash));
  query->bind(std::string_view(picture.mime));
  query->bindBytes(picture.bytes);
  query->bindBytes(picture.thumbnail);
  query->bind(std::string_view(picture.hash));
  return query->run();
}

Result<void> requireIds(Connection& connection, std::span<const model::Entry> entries) {
  auto last = connection.integer("SELECT max(\"id\") FROM \"entry\"");
  if (!last) return failAs(last);
  for (const model::Entry& entry : entries) {
    if (entry.id.value != ++*last) {
      return fail(ErrorCode::Internal, "store.ids_not_consecutive", {},
                  {{"expected", std::to_string(*last)}, {"found", std::to_string(entry.id.value)}});
    }
  }
  return {};
}

Result<void> commitAll(Connection& connection, std::span<const model::Entry> entries,
                       std::span<const Book::Picture> pictures) {
  auto transaction = Transaction::begin(connection);
  if (!transaction) return failAs(transaction);
  if (const auto good = requireIds(connection, entries); !good) return good;
  for (const Book::Picture& picture : pictures) {
    if (const auto done = insertPicture(connection, picture); !done) return done;
  }
  for (const model::Entry& entry : entries) {
    if (const auto done = requireTimes(entry); !done) return done;
    if (const auto done = insertEntry(connection, entry); !done) return done;
  }
  return transaction->commit();
}

template <class Identifier>
Result<Identifier> nextOf(Connection& connection, SqlLiteral largest) {
  const auto last = connection.integer(largest);
  if (!last) return failAs(last);
  return Identifier{*last + 1};
}

}  // namespace

Book::Book(std::unique_ptr<Impl> impl) : m(std::move(impl)) {}
Book::~Book() = default;

Result<std::unique_ptr<Book>> Book::create(const std::string& path, const Clock& clock) {
  return create(path, clock, BookOptions{});
}

Result<std::unique_ptr<Book>> Book::create(const std::string& path, const Clock& clock,
                                           const BookOptions& options) {
  if (const auto made = createBookFile(path, options); !made) return failAs(made);
  return open(path, OpenMode::ReadWrite, clock, options);
}

Result<std::unique_ptr<Book>> Book::open(const std::string& path, OpenMode mode,
                                         const Clock& clock) {
  return open(path, mode, clock, BookOptions{});
}

Result<std::unique_ptr<Book>> Book::open(const std::string& path, OpenMode mode, const Clock& clock,
                                         const BookOptions& options) {
  auto opened = openBookFile(path, mode, clock, options);
  if (!opened) return failAs(opened);
  DayFile days(dayFolderOf(opened->file));
  std::unique_ptr<Impl> impl(new Impl{path, mode, options.schemaVersion(), std::move(*opened),
                                      std::move(days), std::nullopt, std::nullopt, std::nullopt});
  std::unique_ptr<Book> book(new Book(std::move(impl)));
  if (mode == OpenMode::ReadWrite) book->catchUpDays();
  return book;
}

const std::string& Book::path() const {
  return m->path;
}
bool Book::viewOnly() const {
  return m->mode == OpenMode::ViewOnly;
}
int Book::schemaVersion() const {
  return m->version;
}

Result<model::EntryId> Book::nextEntryId() const {
  return nextOf<model::EntryId>(*m->opened.connection, "SELECT max(\"id\") FROM \"entry\"");
}
Result<model::JobId> Book::nextJobId() const {
  return nextOf<model::JobId>(*m->opened.connection, "SELECT max(\"job\") FROM \"entry\"");
}
Result<model::VehicleId> Book::nextVehicleId() const {
  return nextOf<model::VehicleId>(*m->opened.connection,
                                  "SELECT max(\"vehicle\") FROM \"fact_vehicle\"");
}
Result<model::PersonId> Book::nextPersonId() const {
  return nextOf<model::PersonId>(*m->opened.connection,
                                 "SELECT max(\"person\") FROM \"fact_person\"");
}
Result<model::InstrumentId> Book::nextInstrumentId() const {
  return nextOf<model::InstrumentId>(*m->opened.connection,
                                     "SELECT max(\"instrument\") FROM \"fact_instrument\"");
}

Result<void> Book::requireWritable() const {
  if (viewOnly()) return fail(ErrorCode::BookReadOnly, "store.view_only", {}, {{"path", m->path}});
  if (m->broken) {
    return fail(
        ErrorCode::CannotWrite, "store.reopen_needed", {},
        {{"path", m->path}, {"cause", m->broken->key}, {"text", m->broken->detail("text")}});
  }
  return requireSameFile(m->opened.file, m->opened.registration);
}

Result<void> Book::append(std::span<const model::Entry> entries) {
  return append(entries, {});
}

Result<void> Book::append(std::span<const model::Entry> entries,
                          std::span<const Picture> pictures) {
  if (const auto writable = requireWritable(); !writable) return writable;
  const auto committed = commitAll(*m->opened.connection, entries, pictures);
  if (!committed) {
    // After an error of the disk nobody knows what it holds: close, open again, check.
    if (committed.error().key == "store.io_error") m->broken = committed.error();
    return committed;
  }
  if (!entries.empty()) recordDays(entries);
  return {};
}

void Book::recordDays(std::span<const model::Entry> entries) {
  if (m->dayTrouble) catchUpDays(entries.front().id);
  const auto written = m->days.append(entries);
  m->dayTrouble = written ? std::nullopt : std::optional<Error>(written.error());
  if (written) m->lastInDays = entries.back().id;
}

void Book::catchUpDays(std::optional<model::EntryId> before) {
  if (!m->lastInDays) m->lastInDays = m->days.lastId();
  const auto next = before ? Result<model::EntryId>(*before) : nextEntryId();
  if (!next) return;
  const model::EntryId known = m->lastInDays.value_or(model::EntryId{0});
  const std::int64_t missing = next->value - 1 - known.value;
  if (missing <= 0 || missing > kMostMissingLines) return;
  auto entries = readEntriesAfter(*m->opened.connection, known);
  if (!entries) return;
  while (!entries->empty() && !(entries->back().id < *next)) entries->pop_back();
  const auto written = m->days.append(*entries);
  m->dayTrouble = written ? std::nullopt : std::optional<Error>(written.error());
  if (written) m->lastInDays = entries->back().id;
}

std::optional<Error> Book::dayFileTrouble() const {
  return m->dayTrouble;
}

Result<std::optional<model::Entry>> Book::entry(model::EntryId id) const {
  return readEntry(*m->opened.connection, id);
}

Result<std::vector<model::Entry>> Book::jobEntries(model::JobId job) const {
  return readEntries(*m->opened.connection, {job, kNewest});
}

Result<std::vector<model::Entry>> Book::shopEntries() const {
  return shopEntriesUpTo(kNewest);
}

Result<std::vector<model::Entry>> Book::shopEntriesUpTo(model::EntryId last) const {
  return readEntries(*m->opened.connection, {std::nullopt, last});
}

Result<std::vector<model::Entry>> Book::history(model::EntryId id) const {
  std::vector<model::Entry> chain;
  std::set<std::int64_t> seen;
  for (std::optional<model::EntryId> at = id; at && seen.insert(at->value).second;) {
    auto found = entry(*at);
    if (!found) return failAs(found);
    if (!*found) break;
    at = (*found)->replaces;
    chain.insert(chain.begin(), std::move(**found));
  }
  for (model::EntryId at = id; !chain.empty();) {
    const auto next = replacementOf(*m->opened.connection, at);
    if (!next) return failAs(next);
    if (!*next || !seen.insert((*next)->value).second) break;
    auto found = entry(**next);
    if (!found) return failAs(found);
    if (!*found) break;
    at = **next;
    chain.push_back(std::move(**found));
  }
  return chain;
}

}  // namespace sw::store
