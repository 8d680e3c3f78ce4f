// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/entry_rows.h"

#include <algorithm>
#include <set>
#include <string>

namespace sw::store {

namespace {

// The columns of the header, in the order of insertEntry and readHeader.
#define SW_HEADER_COLUMNS                                                                  \
  "\"id\", \"job\", \"run\", \"step\", \"side\", \"kind\", \"done_at\", \"done_offset\", " \
  "\"entered_at\", \"entered_offset\", \"by_person\", \"replaces\", \"reason\", "          \
  "\"reason_text\", \"program_version\""

struct Header {
  model::Entry entry;
  std::string kind;
};

template <class Tag>
void bindOptional(Query& query, const std::optional<Id<Tag>>& id) {
  if (id) {
    query.bind(id->value);
  } else {
    query.bindNull();
  }
}

template <HasWords E>
void bindOptional(Query& query, const std::optional<E>& value) {
  if (value) {
    query.bind(wordOf(*value));
  } else {
    query.bindNull();
  }
}

void bindTime(Query& query, const Timestamp& time) {
  query.bind(std::string_view(toIsoUtc(time)));
  query.bind(static_cast<std::int64_t>(time.offsetMinutes));
}

template <class Identifier>
std::optional<Identifier> optionalId(const Query& query, int column) {
  if (query.isNull(column)) return std::nullopt;
  return Identifier{query.integer(column)};
}

template <HasWords E>
std::optional<E> optionalWord(const Query& query, int column, bool& good) {
  if (query.isNull(column)) return std::nullopt;
  const auto value = fromWord<E>(query.text(column));
  good = good && value.has_value();
  return value;
}

Timestamp timeAt(const Query& query, int column, bool& good) {
  const auto time = parseTimestamp(query.text(column));
  good = good && time.has_value();
  return {time ? time->utcMilliseconds : 0, static_cast<int>(query.integer(column + 1))};
}

Result<Header> readHeader(const Query& query) {
  Header header;
  bool good = true;
  model::Entry& entry = header.entry;
  entry.id = model::EntryId{query.integer(0)};
  entry.job = optionalId<model::JobId>(query, 1);
  entry.run = optionalId<model::RunId>(query, 2);
  entry.step = query.text(3);
  entry.side = optionalWord<model::Side>(query, 4, good);
  header.kind = query.text(5);
  entry.doneAt = timeAt(query, 6, good);
  entry.enteredAt = timeAt(query, 8, good);
  entry.by = optionalId<model::EntryId>(query, 10);
  entry.replaces = optionalId<model::EntryId>(query, 11);
  entry.reason = optionalWord<model::CorrectionReason>(query, 12, good);
  entry.reasonText = query.text(13);
  entry.programVersion = query.text(14);
  if (!good) {
    return fail(ErrorCode::BookDamaged, "store.bad_value", {},
                {{"entry", std::to_string(entry.id.value)}, {"column", "entry"}});
  }
  return header;
}

Result<std::vector<Header>> readHeaders(Query& query) {
  if (const auto ran = query.run(); !ran) return failAs(ran);
  std::vector<Header> headers;
  for (;;) {
    const auto more = query.next();
    if (!more) return failAs(more);
    if (!*more) return headers;
    auto header = readHeader(query);
    if (!header) return failAs(header);
    headers.push_back(std::move(*header));
  }
}

/// Puts the facts of one kind into their entries; both lists are in order of id.
std::size_t placeFacts(std::vector<FactRow>& rows, std::vector<Header>& headers) {
  std::size_t placed = 0;
  std::size_t at = 0;
  for (FactRow& row : rows) {
    while (at < headers.size() && headers[at].entry.id < row.first) ++at;
    if (at == headers.size()) break;
    if (headers[at].entry.id == row.first) {
      headers[at].entry.payload = std::move(row.second);
      ++placed;
    }
  }
  return placed;
}

std::vector<model::Entry> entriesOf(std::vector<Header>& headers) {
  std::vector<model::Entry> entries;
  entries.reserve(headers.size());
  for (Header& header : headers) entries.push_back(std::move(header.entry));
  return entries;
}

}  // namespace

Result<void> insertEntry(Connection& connection, const model::Entry& entry) {
  {
    auto query = connection.query("INSERT INTO \"entry\" (" SW_HEADER_COLUMNS
                                  ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (!query) return failAs(query);
    query->bind(entry.id.value);
    bindOptional(*query, entry.job);
    bindOptional(*query, entry.run);
    query->bind(std::string_view(entry.step));
    bindOptional(*query, entry.side);
    query->bind(model::kindOf(entry.payload));
    bindTime(*query, entry.doneAt);
    bindTime(*query, entry.enteredAt);
    bindOptional(*query, entry.by);
    bindOptional(*query, entry.replaces);
    bindOptional(*query, entry.reason);
    query->bind(std::string_view(entry.reasonText));
    query->bind(std::string_view(entry.programVersion));
    if (const auto ran = query->run(); !ran) return ran;
  }
  return insertFact(connection, entry.id, entry.payload);
}

Result<std::optional<model::Entry>> readEntry(Connection& connection, model::EntryId id) {
  std::vector<Header> found;
  {
    auto query = connection.query("SELECT " SW_HEADER_COLUMNS " FROM \"entry\" WHERE \"id\" = ?");
    if (!query) return failAs(query);
    query->bind(id.value);
    auto headers = readHeaders(*query);
    if (!headers) return failAs(headers);
    found = std::move(*headers);
  }
  if (found.empty()) return std::optional<model::Entry>{};
  auto payload = readFact(connection, found.front().kind, id);
  if (!payload) return failAs(payload);
  found.front().entry.payload = std::move(*payload);
  return std::optional<model::Entry>(std::move(found.front().entry));
}

Result<std::vector<model::Entry>> readEntries(Connection& connection, const FactFilter& filter) {
  std::vector<Header> headers;
  {
    auto query = connection.query("SELECT " SW_HEADER_COLUMNS
                                  " FROM \"entry\" WHERE \"job\" IS ? AND \"id\" <= ? "
                                  "ORDER BY \"id\"");
    if (!query) return failAs(query);
    bindOptional(*query, filter.job);
    query->bind(filter.last.value);
    auto read = readHeaders(*query);
    if (!read) return failAs(read);
    headers = std::move(*read);
  }
  std::set<std::string, std::less<>> kinds;
  for (const Header& header : headers) kinds.insert(header.kind);
  std::size_t placed = 0;
  for (const std::string& kind : kinds) {
    auto rows = readFacts(connection, kind, filter);
    if (!rows) return failAs(rows);
    placed += placeFacts(*rows, headers);
  }
  if (placed != headers.size()) return fail(ErrorCode::BookDamaged, "store.fact_missing");
  return entriesOf(headers);
}

Result<std::vector<model::Entry>> readEntriesAfter(Connection& connection, model::EntryId id) {
  std::vector<Header> headers;
  {
    auto query = connection.query("SELECT " SW_HEADER_COLUMNS
                                  " FROM \"entry\" WHERE \"id\" > ? ORDER BY \"id\"");
    if (!query) return failAs(query);
    query->bind(id.value);
    auto read = readHeaders(*query);
    if (!read) return failAs(read);
    headers = std::move(*read);
  }
  for (Header& header : headers) {
    auto payload = readFact(connection, header.kind, header.entry.id);
    if (!payload) return failAs(payload);
    header.entry.payload = std::move(*payload);
  }
  return entriesOf(headers);
}

Result<std::optional<model::EntryId>> replacementOf(Connection& connection, model::EntryId id) {
  auto query = connection.query("SELECT \"id\" FROM \"entry\" WHERE \"replaces\" = ?");
  if (!query) return failAs(query);
  query->bind(id.value);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  const auto more = query->next();
  if (!more) return failAs(more);
  if (!*more) return std::optional<model::EntryId>{};
  return std::optional<model::EntryId>(model::EntryId{query->integer(0)});
}

}  // namespace sw::store
