// SPDX-License-Identifier: GPL-3.0-or-later
// What ended jobs taught, without reading whole jobs.
#include <algorithm>

#include "store/book.h"
#include "store/book_access.h"
#include "store/query_time.h"

namespace sw::store {

namespace {

#define SW_STANDING(alias) \
  "NOT EXISTS (SELECT 1 FROM \"entry\" r WHERE r.\"replaces\" = " alias ".\"id\")"
// Why the job is left out; the newest reason counts.
#define SW_LEFT_OUT                                                                             \
  "(SELECT l.\"why\" FROM \"entry\" x JOIN \"fact_learning_left_out\" l ON l.\"entry\" = "      \
  "x.\"id\" WHERE x.\"kind\" = 'learning_left_out' AND x.\"job\" = e.\"job\" AND " SW_STANDING( \
      "x") " ORDER BY x.\"id\" DESC LIMIT 1)"
// Somebody said in job "n" that it shakes.
#define SW_SHAKES \
  "(EXISTS (SELECT 1 FROM \"entry\" t WHERE t.\"kind\" = 'shake_told' AND t.\"job\" = n.\"job\" " \
  "AND " SW_STANDING("t") ") OR EXISTS (SELECT 1 FROM \"entry\" c JOIN \"fact_complaint\" q ON "   \
  "q.\"entry\" = c.\"id\" WHERE c.\"kind\" = 'complaint' AND c.\"job\" = n.\"job\" AND "          \
  SW_STANDING("c") " AND (q.\"onset_rising_si\" IS NOT NULL OR q.\"speed_band\" = 'yes' OR "      \
  "q.\"after_bump\" = 'yes' OR q.\"braking\" IN ('only', 'also', 'starts_and_stays'))))"

#define SW_LESSONS \
  "SELECT e.\"id\", e.\"job\", v.\"vehicle\", e.\"done_at\", e.\"done_offset\", f.\"causes\", " \
  "f.\"answers\", " SW_LEFT_OUT ", n.\"job\", n.\"done_at\", n.\"done_offset\" " \
  "FROM \"entry\" e JOIN \"fact_lesson\" f ON f.\"entry\" = e.\"id\" " \
  "JOIN \"entry\" o ON o.\"kind\" = 'job_opened' AND o.\"job\" = e.\"job\" AND " SW_STANDING("o") \
  " JOIN \"fact_job_opened\" v ON v.\"entry\" = o.\"id\" " \
  "LEFT JOIN \"entry\" n ON n.\"id\" = (SELECT n.\"id\" FROM \"fact_job_opened\" w " \
  "JOIN \"entry\" n ON n.\"id\" = w.\"entry\" WHERE w.\"vehicle\" = v.\"vehicle\" AND " \
  "n.\"job\" > e.\"job\" AND " SW_STANDING("n") " AND " SW_SHAKES " ORDER BY n.\"job\" LIMIT 1) " \
  "WHERE e.\"kind\" = 'lesson' AND " SW_STANDING("e")
#define SW_NEWEST_FIRST " ORDER BY e.\"job\" DESC LIMIT ?"

constexpr SqlLiteral kLessons(SW_LESSONS SW_NEWEST_FIRST);
constexpr SqlLiteral kLessonsOfVehicle(SW_LESSONS " AND v.\"vehicle\" = ?" SW_NEWEST_FIRST);

Result<LessonRow> lessonAt(const Query& query) {
  LessonRow row;
  row.entry = {query.integer(0)};
  row.job = {query.integer(1)};
  row.vehicle = {query.integer(2)};
  const auto ended = timeAt(query, 3);
  if (!ended) return failAs(ended);
  row.endedAt = *ended;
  row.fact = {query.text(5), query.text(6)};
  if (!query.isNull(7)) row.leftOutWhy = query.text(7);
  if (query.isNull(8)) return row;
  const auto opened = timeAt(query, 9);
  if (!opened) return failAs(opened);
  row.next = LessonRow::Next{{query.integer(8)}, *opened};
  return row;
}

}  // namespace

Result<std::vector<LessonRow>> Book::lessons(std::optional<model::VehicleId> vehicle,
                                             std::size_t limit) const {
  auto query = m->opened.connection->query(vehicle ? kLessonsOfVehicle : kLessons);
  if (!query) return failAs(query);
  if (vehicle) query->bind(vehicle->value);
  query->bind(static_cast<std::int64_t>(limit));
  if (const auto ran = query->run(); !ran) return failAs(ran);
  std::vector<LessonRow> rows;
  for (;;) {
    const auto more = query->next();
    if (!more) return failAs(more);
    if (!*more) break;
    auto row = lessonAt(*query);
    if (!row) return failAs(row);
    rows.push_back(std::move(*row));
  }
  std::reverse(rows.begin(), rows.end());
  return rows;
}

}  // namespace sw::store
