// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/book_lists.h"

namespace sw::report {

namespace {

const model::Vehicle* vehicleOf(const workshop::ShopState& shop, const store::JobSummary& job) {
  const auto* found = shop.vehicle(job.vehicle);
  return found == nullptr ? nullptr : &found->fact;
}

}  // namespace

Result<std::vector<JobRow>> jobRowsOf(const workshop::Workshop& workshop, WhichJobs which) {
  const auto jobs = workshop.book().jobs();
  if (!jobs) return failAs(jobs);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  std::vector<JobRow> rows;
  for (const store::JobSummary& job : *jobs) {
    if (job.closedAt) {
      if (which == WhichJobs::All) rows.push_back(closedJobRow(job, vehicleOf(**shop, job)));
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

Result<std::vector<DueRow>> dueRowsOf(const workshop::Workshop& workshop) {
  const auto jobs = workshop.book().jobs();
  if (!jobs) return failAs(jobs);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  const Date today = localDate(workshop.clock().now());
  std::vector<DueRow> rows;
  for (const store::JobSummary& job : *jobs) {
    const auto entries = workshop.book().jobEntries(job.job);
    if (!entries) return failAs(entries);
    const auto* vehicle = vehicleOf(**shop, job);
    const std::string registration = vehicle == nullptr ? std::string{} : vehicle->registration;
    for (DueRow& row : dueRows(*entries, job.job, registration, today)) {
      rows.push_back(std::move(row));
    }
  }
  sortByDate(rows);
  return rows;
}

}  // namespace sw::report
