// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/json.h"
#include "store/book.h"
#include "workshop/job_state.h"

// The lists of a book: vehicles, jobs, rechecks due; each as rows, as a text table and as JSON.

namespace sw::report {

struct VehicleRow {
  model::VehicleId vehicle;
  std::string registration, makeModel, vin, owner;
  std::size_t jobs = 0;
  std::size_t openJobs = 0;
  std::optional<Timestamp> lastOpened;
};
[[nodiscard]] std::vector<VehicleRow> vehicleRows(const workshop::ShopState& shop,
                                                  std::span<const store::JobSummary> jobs);

struct JobRow {
  model::JobId job;
  std::string registration;
  Timestamp openedAt;
  std::optional<Timestamp> closedAt;
  std::string state;                    ///< "open" or the word of the outcome
  std::string step;                     ///< where an open job goes on: "Procedure: step (side)"
  std::vector<std::string> handTight;   ///< "Caliper bolts (left)": not torqued yet
  std::vector<std::string> holdsToAsk;  ///< holds to be asked again before work goes on
};
/// A closed job needs no more than its summary; `vehicle` may be null.
[[nodiscard]] JobRow closedJobRow(const store::JobSummary& summary, const model::Vehicle* vehicle);
[[nodiscard]] JobRow openJobRow(const workshop::JobState& job);

struct DueRow {
  std::string registration;
  model::JobId job;
  model::EntryId entry;  ///< to name it when it is done
  std::string what;
  std::optional<Date> on;
  std::optional<TypedQuantity> atOdometer;
  std::string state;  ///< "overdue" or "coming" by date; "by odometer" without one
};
/// The rechecks a job left that were not done yet, as they stand on `today`. `entries` are the
/// job's facts.
[[nodiscard]] std::vector<DueRow> dueRows(std::span<const model::Entry> entries, model::JobId job,
                                          const std::string& registration, const Date& today);
/// By date, those by odometer alone last.
void sortByDate(std::vector<DueRow>& rows);

[[nodiscard]] model::Json toJson(std::span<const VehicleRow> rows);
[[nodiscard]] model::Json toJson(std::span<const JobRow> rows);
[[nodiscard]] model::Json toJson(std::span<const DueRow> rows);
/// Columns padded with spaces, a head row, one row a line; control characters in texts become
/// spaces.
[[nodiscard]] std::string toText(std::span<const VehicleRow> rows);
[[nodiscard]] std::string toText(std::span<const JobRow> rows);
[[nodiscard]] std::string toText(std::span<const DueRow> rows);

}  // namespace sw::report
