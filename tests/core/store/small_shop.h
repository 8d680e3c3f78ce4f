// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "model/entry.h"

namespace sw::store {

inline constexpr Timestamp kStart{1'931'978'400'000, 120};  // 2031-03-22T22:40+02:00

inline model::Entry makeEntry(std::int64_t id, model::Payload payload,
                              std::optional<std::int64_t> job = std::nullopt) {
  model::Entry entry;
  entry.id = model::EntryId{id};
  if (job) entry.job = model::JobId{*job};
  entry.doneAt = {kStart.utcMilliseconds + id * 1000, 120};
  entry.enteredAt = {kStart.utcMilliseconds + id * 1000 + 500, 120};
  entry.programVersion = "0.1.0";
  entry.payload = std::move(payload);
  return entry;
}

inline TypedQuantity newtons(std::string number, double si) {
  return {QuantityKind::Force, std::move(number), "N", si};
}

inline model::Entry makeReading(std::int64_t id, std::int64_t series, double newton) {
  model::Reading reading;
  reading.series = model::EntryId{series};
  reading.value = newtons(std::to_string(newton), newton);
  return makeEntry(id, reading, 1);
}

/// The smallest book that holds a series: person 1, instrument 2, vehicle 3, procedure 4, job 5,
/// run 6, series 7, reading 8.
inline std::vector<model::Entry> smallShop() {
  model::Person person{model::PersonId{1}, "A. Mechanic", "AM", true};
  model::Instrument scale;
  scale.instrument = model::InstrumentId{1};
  scale.name = "scale";
  scale.type = model::InstrumentKind::SpringScale;
  scale.graduation = newtons("0.5", 0.5);
  model::Vehicle vehicle;
  vehicle.vehicle = model::VehicleId{1};
  vehicle.registration = "AB 123";
  model::ProcedureText text{"h1", "as_found", 1, "{}"};
  model::JobOpened opened;
  opened.vehicle = model::VehicleId{1};
  opened.request = "shakes";
  model::RunStarted run;
  run.procedure = "as_found";
  run.hash = "h1";
  model::Series series;
  series.instrument = model::EntryId{2};
  std::vector<model::Entry> entries{makeEntry(1, person),    makeEntry(2, scale),
                                    makeEntry(3, vehicle),   makeEntry(4, text),
                                    makeEntry(5, opened, 1), makeEntry(6, run, 1),
                                    makeEntry(7, series, 1), makeReading(8, 7, 18.5)};
  for (std::size_t i = 1; i < entries.size(); ++i) entries[i].by = model::EntryId{1};
  for (std::size_t i = 6; i < entries.size(); ++i) {
    entries[i].run = model::RunId{6};
    entries[i].side = model::Side::Left;
    entries[i].step = "pull";
  }
  return entries;
}

}  // namespace sw::store
