// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured on a vehicle over all its jobs, without reading whole jobs.
#include <algorithm>
#include <tuple>
#include <type_traits>

#include "store/book.h"
#include "store/book_access.h"
#include "units/unit.h"

namespace sw::store {

namespace {

#define SW_STANDING(id) "NOT EXISTS (SELECT 1 FROM \"entry\" r WHERE r.\"replaces\" = " id ")"
// The standing facts of one kind in the standing jobs of a vehicle, the first value.
#define SW_FACTS_OF_VEHICLE(kind)                                                            \
  " FROM \"fact_job_opened\" o JOIN \"entry\" j ON j.\"id\" = o.\"entry\" JOIN \"entry\" e " \
  "ON e.\"kind\" = '" kind "' AND e.\"job\" = j.\"job\" "
#define SW_WHERE_THEY_STAND \
  " WHERE o.\"vehicle\" = ? AND " SW_STANDING("j.\"id\"") " AND " SW_STANDING("e.\"id\"")

constexpr SqlLiteral kSeries(
    "SELECT e.\"id\", e.\"job\", e.\"run\", e.\"step\", e.\"side\", e.\"done_at\", "
    "e.\"done_offset\", e.\"replaces\", coalesce(p.\"procedure\", ''), coalesce(p.\"round\", 1), "
    "s.\"quantity\", s.\"limit_key\", v.\"verdict\", v.\"value\", v.\"expanded_uncertainty\", "
    "s.\"state_seal\", s.\"state_rods\", s.\"state_damper\", s.\"state_sealant\", "
    "s.\"state_grease\", s.\"state_movement\", s.\"state_position\"" SW_FACTS_OF_VEHICLE("series")
        "JOIN \"fact_series\" s ON s.\"entry\" = e.\"id\" "
        "LEFT JOIN \"fact_run_started\" p ON p.\"entry\" = e.\"run\" "
        "JOIN \"fact_verdict\" v ON v.\"entry\" = (SELECT max(x.\"id\") FROM \"entry\" x JOIN "
        "\"fact_verdict\" w ON w.\"entry\" = x.\"id\" WHERE x.\"kind\" = 'verdict' AND "
        "x.\"job\" = e.\"job\" AND w.\"series\" = e.\"id\" AND " SW_STANDING("x.\"id\"")
            ")" SW_WHERE_THEY_STAND
            " AND e.\"side\" IS ? AND CASE WHEN ? <> '' THEN s.\"limit_key\" = ? ELSE "
            "p.\"procedure\" = ? AND e.\"step\" = ? END ORDER BY e.\"id\"");

constexpr SqlLiteral kPacks(
    "SELECT e.\"id\", e.\"replaces\", e.\"job\", e.\"side\", k.\"place\", "
    "k.\"total_si\"" SW_FACTS_OF_VEHICLE(
        "shim_pack") "JOIN \"fact_shim_pack\" k ON k.\"entry\" = e.\"id\"" SW_WHERE_THEY_STAND
                     " ORDER BY e.\"id\"");

template <HasWords E>
E wordAt(const Query& query, int column, bool& good) {
  const auto value = fromWord<E>(query.text(column));
  good = good && value.has_value();
  return value.value_or(E{});
}

std::optional<model::Side> sideAt(const Query& query, int column, bool& good) {
  if (query.isNull(column)) return std::nullopt;
  return wordAt<model::Side>(query, column, good);
}

std::optional<model::PullState> stateAt(const Query& query, int column, bool& good) {
  if (query.isNull(column)) return std::nullopt;
  model::PullState state;
  model::PullState::fields(state, [&](std::string_view, auto& field) {
    field = wordAt<std::decay_t<decltype(field)>>(query, column++, good);
  });
  return state;
}

tl::unexpected<Error> badValue(std::int64_t entry) {
  return fail(ErrorCode::BookDamaged, "store.bad_value", {}, {{"entry", std::to_string(entry)}});
}

Result<SeriesSummary> seriesAt(const Query& query) {
  SeriesSummary one;
  bool good = true;
  one.series = {query.integer(0)};
  one.first = query.isNull(7) ? one.series : model::EntryId{query.integer(7)};
  one.job = {query.integer(1)};
  if (!query.isNull(2)) one.run = model::RunId{query.integer(2)};
  one.step = query.text(3);
  one.side = sideAt(query, 4, good);
  const auto time = parseTimestamp(query.text(5));
  const auto quantity = quantityKindFromWord(query.text(10));
  if (!time || !quantity) return badValue(one.series.value);
  one.doneAt = {time->utcMilliseconds, static_cast<int>(query.integer(6))};
  one.procedure = query.text(8);
  one.round = query.integer(9);
  one.quantity = *quantity;
  one.limitKey = query.text(11);
  one.verdict = query.text(12);
  one.value = query.real(13);
  one.expandedUncertainty = query.real(14);
  one.state = stateAt(query, 15, good);
  if (!good) return badValue(one.series.value);
  return one;
}

Result<PackSummary> packAt(const Query& query) {
  PackSummary one;
  bool good = true;
  one.entry = {query.integer(0)};
  one.first = {query.integer(query.isNull(1) ? 0 : 1)};
  one.job = {query.integer(2)};
  one.side = sideAt(query, 3, good);
  one.place = wordAt<model::ShimPlace>(query, 4, good);
  one.total = query.real(5);
  if (!good) return badValue(query.integer(0));
  return one;
}

template <class Row>
Result<std::vector<Row>> rowsOf(Query& query, Result<Row> (*read)(const Query&)) {
  if (const auto ran = query.run(); !ran) return failAs(ran);
  std::vector<Row> rows;
  for (;;) {
    const auto more = query.next();
    if (!more) return failAs(more);
    if (!*more) return rows;
    auto row = read(query);
    if (!row) return failAs(row);
    rows.push_back(std::move(*row));
  }
}

/// The first entry of a chain of corrections.
Result<model::Entry> beginningOf(const Book& book, model::EntryId id) {
  auto chain = book.history(id);
  if (!chain) return failAs(chain);
  if (chain->empty()) return badValue(id.value);
  return std::move(chain->front());
}

Result<std::vector<SeriesSummary>> readSeries(Connection& connection, const SeriesFilter& filter) {
  auto query = connection.query(kSeries);
  if (!query) return failAs(query);
  query->bind(filter.vehicle.value);
  if (filter.side) {
    query->bind(wordOf(*filter.side));
  } else {
    query->bindNull();
  }
  for (const std::string* text :
       {&filter.limitKey, &filter.limitKey, &filter.procedure, &filter.step}) {
    query->bind(std::string_view(*text));
  }
  return rowsOf(*query, seriesAt);
}

Result<std::vector<PackSummary>> readPacks(Connection& connection, model::VehicleId vehicle) {
  auto query = connection.query(kPacks);
  if (!query) return failAs(query);
  query->bind(vehicle.value);
  return rowsOf(*query, packAt);
}

}  // namespace

Result<std::vector<SeriesSummary>> Book::seriesOfVehicle(const SeriesFilter& filter) const {
  auto rows = readSeries(*m->opened.connection, filter);
  if (!rows) return rows;
  for (SeriesSummary& row : *rows) {
    if (row.first == row.series) continue;
    const auto begun = beginningOf(*this, row.series);
    if (!begun) return failAs(begun);
    row.first = begun->id;
    row.doneAt = begun->doneAt;
  }
  std::sort(rows->begin(), rows->end(), [](const SeriesSummary& a, const SeriesSummary& b) {
    return std::tie(a.doneAt.utcMilliseconds, a.first) <
           std::tie(b.doneAt.utcMilliseconds, b.first);
  });
  return rows;
}

Result<std::vector<PackSummary>> Book::packsOfVehicle(model::VehicleId vehicle) const {
  auto rows = readPacks(*m->opened.connection, vehicle);
  if (!rows) return rows;
  for (PackSummary& row : *rows) {
    if (row.first == row.entry) continue;
    const auto begun = beginningOf(*this, row.first);
    if (!begun) return failAs(begun);
    row.first = begun->id;
  }
  std::sort(rows->begin(), rows->end(),
            [](const PackSummary& a, const PackSummary& b) { return a.first < b.first; });
  return rows;
}

}  // namespace sw::store
