// SPDX-License-Identifier: GPL-3.0-or-later
// The lists of a book, its pictures, and what may change in it: drafts, settings, cursors.
#include "store/book.h"
#include "store/book_access.h"
#include "store/query_time.h"

namespace sw::store {

namespace {

// A job is there while its opening stands; it is closed while one of its closings stands.
#define SW_STANDING(alias) \
  "NOT EXISTS (SELECT 1 FROM \"entry\" r WHERE r.\"replaces\" = " alias ".\"id\") "
// By kind first: its index gives the jobs in their order, and no other entry is looked at.
#define SW_JOB_LIST \
  "SELECT o.\"job\", f.\"vehicle\", o.\"id\", o.\"done_at\", o.\"done_offset\", c.\"done_at\", " \
  "c.\"done_offset\", g.\"outcome\" FROM \"entry\" o "                                           \
  "JOIN \"fact_job_opened\" f ON f.\"entry\" = o.\"id\" "                                        \
  "LEFT JOIN \"entry\" c ON c.\"id\" = (SELECT max(n.\"id\") FROM \"entry\" n "                  \
  "WHERE n.\"kind\" = 'job_closed' AND n.\"job\" = o.\"job\" AND " SW_STANDING("n") ") "         \
  "LEFT JOIN \"fact_job_closed\" g ON g.\"entry\" = c.\"id\" "                                   \
  "WHERE o.\"kind\" = 'job_opened' AND " SW_STANDING("o")

Result<JobSummary> jobAt(const Query& query) {
  JobSummary job;
  job.job = model::JobId{query.integer(0)};
  job.vehicle = model::VehicleId{query.integer(1)};
  job.openedEntry = model::EntryId{query.integer(2)};
  const auto opened = timeAt(query, 3);
  if (!opened) return failAs(opened);
  job.openedAt = *opened;
  if (query.isNull(5)) return job;
  const auto closed = timeAt(query, 5);
  if (!closed) return failAs(closed);
  job.closedAt = *closed;
  job.outcome = fromWord<model::JobOutcome>(query.text(7));
  return job;
}

Result<std::vector<JobSummary>> readJobs(Query& query) {
  if (const auto ran = query.run(); !ran) return failAs(ran);
  std::vector<JobSummary> jobs;
  for (;;) {
    const auto row = query.next();
    if (!row) return failAs(row);
    if (!*row) return jobs;
    auto job = jobAt(query);
    if (!job) return failAs(job);
    jobs.push_back(std::move(*job));
  }
}

Result<std::optional<std::string>> firstText(Query& query) {
  if (const auto ran = query.run(); !ran) return failAs(ran);
  const auto row = query.next();
  if (!row) return failAs(row);
  if (!*row) return std::optional<std::string>{};
  return std::optional<std::string>(query.text(0));
}

}  // namespace

Result<std::vector<JobSummary>> Book::jobs() const {
  auto query = m->opened.connection->query(SW_JOB_LIST "ORDER BY o.\"job\"");
  if (!query) return failAs(query);
  return readJobs(*query);
}

Result<std::vector<JobSummary>> Book::openJobs() const {
  auto query = m->opened.connection->query(
      SW_JOB_LIST
      "AND NOT EXISTS (SELECT 1 FROM \"entry\" n WHERE n.\"kind\" = 'job_closed' "
      "AND n.\"job\" = o.\"job\" AND " SW_STANDING("n") ") ORDER BY o.\"job\"");
  if (!query) return failAs(query);
  return readJobs(*query);
}

Result<std::optional<model::VehicleId>> Book::vehicleOfJob(model::JobId job) const {
  auto query = m->opened.connection->query(
      "SELECT f.\"vehicle\" FROM \"entry\" o JOIN \"fact_job_opened\" f ON f.\"entry\" = o.\"id\" "
      "WHERE o.\"kind\" = 'job_opened' AND o.\"job\" = ? AND " SW_STANDING("o"));
  if (!query) return failAs(query);
  query->bind(job.value);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  const auto row = query->next();
  if (!row) return failAs(row);
  if (!*row) return std::optional<model::VehicleId>{};
  return std::optional(model::VehicleId{query->integer(0)});
}

Result<std::vector<model::Entry>> Book::rechecksDue(std::size_t limit) const {
  std::vector<model::EntryId> ids;
  {
    auto query = m->opened.connection->query(
        "SELECT e.\"id\" FROM \"entry\" e JOIN \"fact_recheck_due\" f ON f.\"entry\" = e.\"id\" "
        "WHERE e.\"kind\" = 'recheck_due' AND " SW_STANDING("e")
        "AND e.\"id\" NOT IN (SELECT d.\"recheck\" FROM \"entry\" x "
        "JOIN \"fact_recheck_done\" d ON d.\"entry\" = x.\"id\" "
        "WHERE x.\"kind\" = 'recheck_done' AND " SW_STANDING("x")
        ") ORDER BY f.\"on\" IS NULL, f.\"on\", e.\"job\", e.\"id\" LIMIT ?");
    if (!query) return failAs(query);
    query->bind(static_cast<std::int64_t>(limit));
    if (const auto ran = query->run(); !ran) return failAs(ran);
    for (;;) {
      const auto row = query->next();
      if (!row) return failAs(row);
      if (!*row) break;
      ids.push_back(model::EntryId{query->integer(0)});
    }
  }
  std::vector<model::Entry> entries;
  for (const model::EntryId id : ids) {
    auto found = entry(id);
    if (!found) return failAs(found);
    if (*found) entries.push_back(std::move(**found));
  }
  return entries;
}

Result<std::vector<JobSummary>> Book::jobsOfVehicle(model::VehicleId vehicle) const {
  auto query = m->opened.connection->query(SW_JOB_LIST "AND f.\"vehicle\" = ? ORDER BY o.\"job\"");
  if (!query) return failAs(query);
  query->bind(vehicle.value);
  return readJobs(*query);
}

Result<Book::Picture> Book::picture(const std::string& hash) const {
  auto query = m->opened.connection->query(
      "SELECT \"mime\", \"bytes\", \"thumbnail\" FROM \"picture\" WHERE \"hash\" = ?");
  if (!query) return failAs(query);
  query->bind(std::string_view(hash));
  if (const auto ran = query->run(); !ran) return failAs(ran);
  const auto row = query->next();
  if (!row) return failAs(row);
  if (!*row) return fail(ErrorCode::NotFound, "store.no_picture", {}, {{"hash", hash}});
  return Picture{hash, query->text(0), query->bytes(1), query->bytes(2)};
}

Result<void> Book::setDraft(const Draft& draft) {
  if (const auto writable = requireWritable(); !writable) return writable;
  auto query = m->opened.connection->query(
      "INSERT INTO \"draft\" (\"place\", \"text\") VALUES (?, ?) "
      "ON CONFLICT (\"place\") DO UPDATE SET \"text\" = excluded.\"text\"");
  if (!query) return failAs(query);
  query->bind(std::string_view(draft.place));
  query->bind(std::string_view(draft.text));
  return query->run();
}

Result<void> Book::dropDraft(const std::string& place) {
  if (const auto writable = requireWritable(); !writable) return writable;
  auto query = m->opened.connection->query("DELETE FROM \"draft\" WHERE \"place\" = ?");
  if (!query) return failAs(query);
  query->bind(std::string_view(place));
  return query->run();
}

Result<std::vector<Draft>> Book::drafts() const {
  auto query =
      m->opened.connection->query("SELECT \"place\", \"text\" FROM \"draft\" ORDER BY \"place\"");
  if (!query) return failAs(query);
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::vector<Draft> drafts;
  for (;;) {
    const auto row = query->next();
    if (!row) return failAs(row);
    if (!*row) return drafts;
    drafts.push_back({query->text(0), query->text(1)});
  }
}

Result<void> Book::setCursor(model::JobId job, const std::string& place) {
  if (const auto writable = requireWritable(); !writable) return writable;
  auto query = m->opened.connection->query(
      "INSERT INTO \"cursor\" (\"job\", \"place\") VALUES (?, ?) "
      "ON CONFLICT (\"job\") DO UPDATE SET \"place\" = excluded.\"place\"");
  if (!query) return failAs(query);
  query->bind(job.value);
  query->bind(std::string_view(place));
  return query->run();
}

Result<std::optional<std::string>> Book::cursor(model::JobId job) const {
  auto query = m->opened.connection->query("SELECT \"place\" FROM \"cursor\" WHERE \"job\" = ?");
  if (!query) return failAs(query);
  query->bind(job.value);
  return firstText(*query);
}

Result<void> Book::setSetting(const std::string& key, const std::string& value) {
  if (const auto writable = requireWritable(); !writable) return writable;
  auto query = m->opened.connection->query(
      "INSERT INTO \"setting\" (\"key\", \"value\") VALUES (?, ?) "
      "ON CONFLICT (\"key\") DO UPDATE SET \"value\" = excluded.\"value\"");
  if (!query) return failAs(query);
  query->bind(std::string_view(key));
  query->bind(std::string_view(value));
  return query->run();
}

Result<std::optional<std::string>> Book::setting(const std::string& key) const {
  auto query = m->opened.connection->query("SELECT \"value\" FROM \"setting\" WHERE \"key\" = ?");
  if (!query) return failAs(query);
  query->bind(std::string_view(key));
  return firstText(*query);
}

}  // namespace sw::store
