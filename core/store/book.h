// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "model/entry.h"
#include "store/lesson_row.h"
#include "store/search_hit.h"
#include "store/series_summary.h"

namespace sw::store {

enum class OpenMode {
  ReadWrite,  ///< takes the book's lock; refused as BookLocked (details: who, since) when another
              ///< has it
  ViewOnly,   ///< never writes; allowed while another program has the book
};

/// One line of the job list.
struct JobSummary {
  model::JobId job;
  model::VehicleId vehicle;
  Timestamp openedAt;
  std::optional<Timestamp> closedAt;
  std::optional<model::JobOutcome> outcome;
  model::EntryId openedEntry;
};

/// A mutable draft: what was typed but not accepted. No fact.
struct Draft {
  std::string place;  ///< "job/3/run/17/step/pull/left/readings"
  std::string text;
};

struct BookOptions;

/// The SQLite book. One connection, one thread. Facts are appended and never changed.
class Book {
 public:
  /// Makes a new book at `path` (the file must not exist) and opens it ReadWrite.
  /// Errors: Conflict "store.exists", CannotWrite "store.cannot_create", BookOnNetwork.
  [[nodiscard]] static Result<std::unique_ptr<Book>> create(const std::string& path,
                                                            const Clock& clock);
  /// Opens by the ritual. Errors, none of which changes the file: BookMissing "store.missing",
  /// BookForeign "store.foreign", BookDamaged "store.damaged", BookNewer "store.newer" (details:
  /// version, ours, program), BookReadOnly "store.read_only", BookLocked "store.locked" (who,
  /// since), BookOnNetwork "store.on_network" (file_system). An older book is migrated after a
  /// verified backup copy (ReadWrite only).
  [[nodiscard]] static Result<std::unique_ptr<Book>> open(const std::string& path, OpenMode mode,
                                                          const Clock& clock);
  /// The same with other surroundings than the program's own (book_options.h), for tests.
  [[nodiscard]] static Result<std::unique_ptr<Book>> create(const std::string& path,
                                                            const Clock& clock,
                                                            const BookOptions& options);
  [[nodiscard]] static Result<std::unique_ptr<Book>> open(const std::string& path, OpenMode mode,
                                                          const Clock& clock,
                                                          const BookOptions& options);
  Book(const Book&) = delete;
  Book& operator=(const Book&) = delete;
  ~Book();

  [[nodiscard]] const std::string& path() const;
  [[nodiscard]] bool viewOnly() const;
  [[nodiscard]] int schemaVersion() const;

  /// The id the next appended entry gets, and the next number for a job, vehicle, person,
  /// instrument.
  [[nodiscard]] Result<model::EntryId> nextEntryId() const;
  [[nodiscard]] Result<model::JobId> nextJobId() const;
  [[nodiscard]] Result<model::VehicleId> nextVehicleId() const;
  [[nodiscard]] Result<model::PersonId> nextPersonId() const;
  [[nodiscard]] Result<model::InstrumentId> nextInstrumentId() const;

  /// One user action: all entries in one BEGIN IMMEDIATE transaction, durable on return, then
  /// appended to the fsynced day file. Entry ids must be consecutive from nextEntryId(). Errors:
  /// BookReadOnly, CannotWrite "store.disk_full", Conflict (an entry already replaced), Internal.
  [[nodiscard]] Result<void> append(std::span<const model::Entry> entries);
  /// The same with photo pictures (hash -> bytes) stored in the same transaction.
  struct Picture {
    std::string hash;
    std::string mime;
    std::string bytes;
    std::string thumbnail;
  };
  [[nodiscard]] Result<void> append(std::span<const model::Entry> entries,
                                    std::span<const Picture> pictures);
  [[nodiscard]] Result<Picture> picture(const std::string& hash) const;
  /// Why the newest entries are missing from the day file, the second record; they are in the book.
  /// The next append writes the missing lines, too.
  [[nodiscard]] std::optional<Error> dayFileTrouble() const;

  [[nodiscard]] Result<std::optional<model::Entry>> entry(model::EntryId id) const;
  /// All facts of a job in order of id.
  [[nodiscard]] Result<std::vector<model::Entry>> jobEntries(model::JobId job) const;
  /// All facts of the shop (people, instruments, vehicles, spec items, procedure texts), in order
  /// of id.
  [[nodiscard]] Result<std::vector<model::Entry>> shopEntries() const;
  /// The facts of the shop up to and including `last`: what was in force then.
  [[nodiscard]] Result<std::vector<model::Entry>> shopEntriesUpTo(model::EntryId last) const;
  [[nodiscard]] Result<std::vector<JobSummary>> jobs() const;
  [[nodiscard]] Result<std::vector<JobSummary>> openJobs() const;
  [[nodiscard]] Result<std::vector<JobSummary>> jobsOfVehicle(model::VehicleId vehicle) const;
  /// The vehicle a job was opened for; empty where there is no such job.
  [[nodiscard]] Result<std::optional<model::VehicleId>> vehicleOfJob(model::JobId job) const;
  /// Rechecks of all jobs that stand and are not done, by date, those without a date last; at most
  /// `limit`.
  [[nodiscard]] Result<std::vector<model::Entry>> rechecksDue(std::size_t limit) const;
  /// The chain of a value, oldest first: what it replaced and what replaced it.
  [[nodiscard]] Result<std::vector<model::Entry>> history(model::EntryId id) const;

  /// What holds every typed word, whatever its case, in any order: vehicles by plate, then what was
  /// recorded in jobs, the newest job first; at most `limit`, where there is more in jobs what was
  /// recorded last. A vehicle is found by its newest
  /// revision (plate, also without blanks and dashes, make and model, VIN, owner, notes), a job by
  /// what stands in it (owner's words, the newest complaint, part names, notes). No words find
  /// nothing. Errors: InvalidInput "store.bad_text".
  [[nodiscard]] Result<std::vector<SearchHit>> search(const std::string& text,
                                                      std::size_t limit) const;
  /// The judged series of a vehicle over all its jobs, oldest first.
  [[nodiscard]] Result<std::vector<SeriesSummary>> seriesOfVehicle(
      const SeriesFilter& filter) const;
  /// The shim packs recorded for a vehicle over all its jobs, oldest first.
  [[nodiscard]] Result<std::vector<PackSummary>> packsOfVehicle(model::VehicleId vehicle) const;
  /// What ended jobs taught, of one vehicle or of all, the newest `limit`, oldest first.
  [[nodiscard]] Result<std::vector<LessonRow>> lessons(std::optional<model::VehicleId> vehicle,
                                                       std::size_t limit) const;

  [[nodiscard]] Result<void> setDraft(const Draft& draft);
  [[nodiscard]] Result<void> dropDraft(const std::string& place);
  [[nodiscard]] Result<std::vector<Draft>> drafts() const;
  /// Where a person was in a job, to come back to; no fact.
  [[nodiscard]] Result<void> setCursor(model::JobId job, const std::string& place);
  [[nodiscard]] Result<std::optional<std::string>> cursor(model::JobId job) const;
  [[nodiscard]] Result<void> setSetting(const std::string& key, const std::string& value);
  [[nodiscard]] Result<std::optional<std::string>> setting(const std::string& key) const;

 private:
  friend struct BookAccess;  // lets the copies of this folder reach the connection
  struct Impl;
  explicit Book(std::unique_ptr<Impl> impl);

  [[nodiscard]] Result<void> requireWritable() const;
  void recordDays(std::span<const model::Entry> entries);
  void catchUpDays(std::optional<model::EntryId> before = std::nullopt);

  std::unique_ptr<Impl> m;
};

}  // namespace sw::store
