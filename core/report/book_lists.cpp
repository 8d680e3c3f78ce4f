// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/book_lists.h"

namespace sw::report {

Result<std::vector<JobRow>> jobRowsOf(const workshop::Workshop& workshop, WhichJobs which) {
  const auto jobs = which == WhichJobs::All ? workshop.book().jobs() : workshop.book().openJobs();
  if (!jobs) return failAs(jobs);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  std::vector<JobRow> rows;
  for (const store::JobSummary& job : *jobs) {
    if (job.closedAt) {
      const auto* vehicle = (*shop)->vehicle(job.vehicle);
      rows.push_back(closedJobRow(job, vehicle == nullptr ? nullptr : &vehicle->fact));
      continue;
    }
    const auto state = workshop.job(job.job);
    if (!state) return failAs(state);
    rows.push_back(openJobRow(*state));
  }
  return rows;
}

Result<std::vector<VehicleRow>> vehicleRowsOf(const workshop::Workshop& workshop) {
  const auto jobs = workshop.book().jobs();
  if (!jobs) return failAs(jobs);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  return vehicleRows(**shop, *jobs);
}

Result<std::vector<DueRow>> dueRowsOf(const workshop::Workshop& workshop, std::size_t most) {
  const auto due = workshop.book().rechecksDue(most);
  if (!due) return failAs(due);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  const Date today = localDate(workshop.clock().now());
  std::vector<DueRow> rows;
  for (const model::Entry& entry : *due) {
    if (!entry.job) continue;
    const auto id = workshop.book().vehicleOfJob(*entry.job);
    if (!id) return failAs(id);
    const auto* vehicle = *id ? (*shop)->vehicle(**id) : nullptr;
    const std::string registration =
        vehicle == nullptr ? std::string{} : vehicle->fact.registration;
    for (DueRow& row : dueRows(std::span(&entry, 1), *entry.job, registration, today)) {
      rows.push_back(std::move(row));
    }
  }
  sortByDate(rows);
  return rows;
}

}  // namespace sw::report
